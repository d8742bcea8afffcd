// SPDX-License-Identifier: GPL-3.0-or-later
// Whether shares add up to one, in words, and a key that gives the rest to one of them.
#pragma once

#include "quantity/units.h"

#include <QWidget>

class QLabel;
class QPushButton;

namespace staveline::ui {

class ShareLine : public QWidget {
    Q_OBJECT
public:
    explicit ShareLine(QWidget* parent = nullptr);
    void say(Share sum, std::size_t parts);
    void setLocked(bool locked);
    /// '=' in this field gives its row the rest; the button gives it to the row visited last.
    void watch(QWidget* field, std::size_t row);
    [[nodiscard]] QString words() const;
    [[nodiscard]] QPushButton& button() const { return *button_; }

Q_SIGNALS:
    void restAsked(int row);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    QLabel* words_;
    QPushButton* button_;
    int row_ = -1; ///< visited last; -1: none
    bool locked_ = false;
};

/// What is missing to one.
[[nodiscard]] Share restOf(Share sum);
/// Shares meet one closely enough to brew.
[[nodiscard]] bool addsUp(Share sum);

} // namespace staveline::ui
