// SPDX-License-Identifier: GPL-3.0-or-later
// The parts of a page, side by side: the one in front is told by weight too. No button group: Tab would pass over all
// but one of them.
#pragma once

#include <QWidget>

#include <vector>

class QHBoxLayout;
class QPushButton;

namespace staveline::ui {

class PartChoice : public QWidget {
    Q_OBJECT
public:
    /// The first is in front.
    PartChoice(const QStringList& names, QWidget* parent = nullptr);
    void setFront(int part);
    [[nodiscard]] QPushButton& button(int part) const { return *buttons_[static_cast<std::size_t>(part)]; }
    void addBeside(QWidget* widget); ///< at the other end of the row

Q_SIGNALS:
    void chosen(int part);

private:
    QHBoxLayout* row_;
    std::vector<QPushButton*> buttons_;
};

} // namespace staveline::ui
