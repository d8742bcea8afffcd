// SPDX-License-Identifier: GPL-3.0-or-later
// Keeps the first column of a wide grid of fields in sight while the rest scrolls under it, and the field in hand clear
// of it.
#pragma once

#include <QObject>

class QGridLayout;
class QScrollArea;
class QWidget;

namespace staveline::ui {

class HeldColumn : public QObject {
    Q_OBJECT
public:
    /// `grid` lays out the widget that `scroll` shows; its column 0 is held.
    HeldColumn(QScrollArea& scroll, QGridLayout& grid);
    ~HeldColumn() override;

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void hold();
    void uncover(QWidget*, QWidget* focus);
    [[nodiscard]] int width() const;

    QScrollArea& scroll_;
    QGridLayout& grid_;
};

} // namespace staveline::ui
