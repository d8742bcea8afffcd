// SPDX-License-Identifier: GPL-3.0-or-later
// The liquid's way at a glance: a cell for each step, its litres as the depth of one stream through all of them. A cell
// leads to its step.
#pragma once

#include "quantity/units.h"

#include <QAbstractButton>

#include <vector>

namespace staveline::ui {

struct FlowCell {
    QString name;   ///< "Mash"
    QString amount; ///< "96.4 L"
    QString how;    ///< "hot, 1.041"
    Litres enters{0}, leaves{0};
    QStringList findings; ///< what does not fit there
};

class FlowCellButton : public QAbstractButton {
    Q_OBJECT
public:
    explicit FlowCellButton(QWidget* parent = nullptr);
    void show(const FlowCell& cell, Litres widest);
    [[nodiscard]] const FlowCell& cell() const { return cell_; }
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void paintStream(QPainter& painter) const;
    void paintWords(QPainter& painter) const;

    FlowCell cell_;
    Litres widest_{0};
};

class FlowDiagram : public QWidget {
    Q_OBJECT
public:
    explicit FlowDiagram(int cells, QWidget* parent = nullptr);
    void show(const std::vector<FlowCell>& cells);
    void focusFirst();

Q_SIGNALS:
    void chosen(int cell);

private:
    std::vector<FlowCellButton*> cells_;
};

} // namespace staveline::ui
