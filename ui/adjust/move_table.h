// SPDX-License-Identifier: GPL-3.0-or-later
// What a plan moves, one line a lever: from what to what, and what that does next and over the years.
#pragma once

#include "ui/adjust/plan_in_view.h"

#include <QWidget>

class QGridLayout;
class QLabel;

namespace staveline::ui {

class LinkedLabel;

class MoveTable : public QWidget {
    Q_OBJECT
public:
    explicit MoveTable(QWidget* parent = nullptr);
    void setMoves(const std::vector<PlannedMove>& moves, const DisplayUnits& units);
    [[nodiscard]] QStringList words() const; ///< a sentence a move

Q_SIGNALS:
    void asked(int move, const Origin& origin);

private:
    struct Row {
        QLabel* lever = nullptr;
        LinkedLabel* change = nullptr;
        QLabel* does = nullptr;
    };
    Row& row(std::size_t at);

    QGridLayout* grid_;
    std::vector<Row> rows_; ///< as many as were ever needed: Tab keeps its order
    std::size_t shown_ = 0;
};

} // namespace staveline::ui
