// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/move_table.h"

#include "ui/adjust/linked_label.h"
#include "ui/widgets/theme.h"

#include <QGridLayout>
#include <QLabel>

namespace staveline::ui {

MoveTable::MoveTable(QWidget* parent) : QWidget(parent), grid_(new QGridLayout(this)) {
    grid_->setContentsMargins(0, 0, 0, 0);
    grid_->setHorizontalSpacing(lines(*this, .8));
    grid_->setVerticalSpacing(lines(*this, .25));
    grid_->setColumnStretch(0, 4);
    grid_->setColumnStretch(1, 4);
    grid_->setColumnStretch(2, 6);
    row(0); // Tab comes here before what is made later
    setMoves({}, {});
}

MoveTable::Row& MoveTable::row(std::size_t at) {
    while (rows_.size() <= at) {
        const int line = static_cast<int>(rows_.size());
        Row made{new QLabel(this), new LinkedLabel(this), new QLabel(this)};
        setType(*made.change, Type::strong);
        int column = 0;
        for (QLabel* part : std::initializer_list<QLabel*>{made.lever, made.change, made.does}) {
            part->setWordWrap(true);
            grid_->addWidget(part, line, column++, Qt::AlignTop);
        }
        connect(made.change, &LinkedLabel::asked, this,
                [this, line](const Origin& origin) { Q_EMIT asked(line, origin); });
        if (line > 0)
            setTabOrder(rows_.back().change, made.change);
        rows_.push_back(made);
    }
    return rows_[at];
}

void MoveTable::setMoves(const std::vector<PlannedMove>& moves, const DisplayUnits& units) {
    shown_ = moves.size();
    for (std::size_t i = 0; i < moves.size(); ++i) {
        const Row& line = row(i);
        line.lever->setText(moves[i].lever);
        line.change->say(moves[i].change, units);
        line.change->setAccessibleName(moves[i].lever + QStringLiteral(": ") + line.change->words());
        line.does->setText(moves[i].does);
        line.does->setForegroundRole(moves[i].tasted ? QPalette::WindowText : QPalette::PlaceholderText);
    }
    for (std::size_t i = 0; i < rows_.size(); ++i)
        for (QLabel* part : std::initializer_list<QLabel*>{rows_[i].lever, rows_[i].change, rows_[i].does})
            part->setVisible(i < shown_);
    setVisible(shown_ > 0);
}

QStringList MoveTable::words() const {
    QStringList all;
    for (std::size_t i = 0; i < shown_; ++i)
        all << tr("%1: %2, %3").arg(rows_[i].lever->text(), rows_[i].change->words(), rows_[i].does->text());
    return all;
}

} // namespace staveline::ui
