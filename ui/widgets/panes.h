// SPDX-License-Identifier: GPL-3.0-or-later
// Parts side by side with a handle between them; one above the other where the window is too narrow for that. No part
// can be made too narrow to read, a double click on the handle brings back the usual widths, and only widths that were
// on the screen are worth keeping.
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
    [[nodiscard]] bool stacked() const { return orientation() == Qt::Vertical; }
    [[nodiscard]] QSize minimumSizeHint() const override; ///< as narrow as the widest of its parts

protected:
    QSplitterHandle* createHandle() override;
    void showEvent(QShowEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    bool event(QEvent* event) override;

private:
    [[nodiscard]] int leastBeside() const; ///< the width from which all stand side by side
    void share();                          ///< the room there is, as usual
    void stack(bool above);
    void fit(); ///< the parts as they are now into the width there is

    QList<double> usual_, least_; ///< lines of text
    QList<int> beside_;           ///< the widths before they were stacked
    bool own_ = false;            ///< widths are the reader's own
    bool seen_ = false;
};

} // namespace staveline::ui
