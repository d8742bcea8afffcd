// SPDX-License-Identifier: GPL-3.0-or-later
// Parts side by side with a handle between them. No part can be made too narrow to read, a double click on the handle
// brings back the usual widths, and only widths that were on the screen are worth keeping.
#pragma once

#include <QSplitter>

namespace staveline::ui {

class Panes : public QSplitter {
    Q_OBJECT
public:
    /// `name`: under which the window keeps the widths.
    explicit Panes(const QString& name, QWidget* parent = nullptr);
    /// Widths in lines of text; `least` 0: as narrow as its content allows. More room is shared as usual.
    void addPane(QWidget* pane, double usual, double least);
    void useUsualWidths();
    /// As they were left; widths that would hide a part, or that are not of these parts, are as good as none.
    void takeWidths(const QList<int>& widths);
    /// None while the panes were never on the screen or one of them is hidden.
    [[nodiscard]] QList<int> madeWidths() const;

protected:
    QSplitterHandle* createHandle() override;
    void showEvent(QShowEvent* event) override;

private:
    QList<double> usual_; ///< lines of text
    bool seen_ = false;
};

} // namespace staveline::ui
