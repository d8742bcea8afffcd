// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/find_bar.h"

#include "ui/widgets/theme.h"

#include <QAbstractItemModel>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QTableView>
#include <QToolButton>

#include <algorithm>

namespace staveline::ui {
namespace {

bool has(const QTableView& table, int row, const QString& words) {
    const QAbstractItemModel& model = *table.model();
    for (int column = 0; column < model.columnCount(); ++column) {
        const QModelIndex cell = model.index(row, column);
        if (table.isColumnHidden(column))
            continue;
        for (const int role : {static_cast<int>(Qt::DisplayRole), static_cast<int>(Qt::ToolTipRole)}) // a note
            if (cell.data(role).toString().contains(words, Qt::CaseInsensitive))
                return true;
    }
    return false;
}

} // namespace

FindBar::FindBar(std::function<QTableView&()> table, QWidget* parent)
    : QWidget(parent), table_(std::move(table)), edit_(new QLineEdit(this)), count_(new QLabel(this)),
      previous_(new QToolButton(this)), next_(new QToolButton(this)) {
    setAccessibleName(tr("Find"));
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(lines(*this, .3));
    auto* label = new QLabel(tr("&Find"), this);
    label->setBuddy(edit_);
    edit_->setAccessibleName(tr("Words to find"));
    edit_->setClearButtonEnabled(true);
    edit_->setMaximumWidth(lines(*this, 16));
    auto* away = new QToolButton(this);
    const auto button = [&](QToolButton& made, const QString& words, const QString& key) {
        made.setText(words);
        made.setToolTip(tr("%1 (%2)").arg(words, key));
        made.setFocusPolicy(Qt::StrongFocus);
    };
    button(*previous_, tr("Previous"), tr("Shift+Enter"));
    button(*next_, tr("Next"), tr("Enter"));
    button(*away, tr("Close"), tr("Esc"));
    away->setAccessibleName(tr("Close find"));
    away->setAutoRaise(true);
    for (QWidget* part : std::initializer_list<QWidget*>{label, edit_, previous_, next_, count_})
        row->addWidget(part);
    row->addStretch(1);
    row->addWidget(away);
    connect(edit_, &QLineEdit::textEdited, this, &FindBar::search);
    connect(previous_, &QToolButton::clicked, this, [this] { step(-1); });
    connect(next_, &QToolButton::clicked, this, [this] { step(1); });
    connect(away, &QToolButton::clicked, this, &FindBar::close);
    setVisible(false);
    tell();
}

void FindBar::open() {
    setVisible(true);
    edit_->setFocus(Qt::ShortcutFocusReason);
    edit_->selectAll();
    tell();
}

void FindBar::close() {
    setVisible(false);
    Q_EMIT closed();
}

QList<int> FindBar::rowsFound() const {
    const QTableView& table = table_();
    QList<int> rows;
    for (int row = 0; row < table.model()->rowCount(); ++row)
        if (has(table, row, edit_->text()))
            rows << row;
    return rows;
}

void FindBar::select(int row) {
    QTableView& table = table_();
    table.selectRow(row);
    table.scrollTo(table.currentIndex());
}

void FindBar::refresh() {
    if (isVisible())
        tell();
}

void FindBar::search() {
    if (edit_->text().isEmpty()) {
        tell();
        return;
    }
    const QList<int> rows = rowsFound();
    const auto at = std::lower_bound(rows.begin(), rows.end(), std::max(table_().currentIndex().row(), 0));
    if (!rows.isEmpty())
        select(at == rows.end() ? rows.front() : *at);
    tell();
}

void FindBar::step(int by) {
    if (!isVisible() || edit_->text().isEmpty()) {
        open();
        return;
    }
    const QList<int> rows = rowsFound();
    const int now = table_().currentIndex().row();
    const auto later =
        by > 0 ? std::upper_bound(rows.begin(), rows.end(), now) : std::lower_bound(rows.begin(), rows.end(), now);
    if (!rows.isEmpty())
        select(by > 0 ? (later == rows.end() ? rows.front() : *later)
                      : (later == rows.begin() ? rows.back() : *(later - 1)));
    tell();
}

void FindBar::tell() {
    const bool asked = !edit_->text().isEmpty();
    const QList<int> rows = asked ? rowsFound() : QList<int>();
    const qsizetype at = asked ? rows.indexOf(table_().currentIndex().row()) : -1;
    if (!asked)
        count_->clear();
    else if (rows.isEmpty())
        count_->setText(tr("not found"));
    else
        count_->setText(at < 0 ? tr("%1 found").arg(rows.size()) : tr("%1 of %2").arg(at + 1).arg(rows.size()));
    edit_->setAccessibleDescription(count_->text());
    previous_->setEnabled(!rows.isEmpty());
    next_->setEnabled(!rows.isEmpty());
}

void FindBar::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape)
        close();
    else if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
        step(event->modifiers() & Qt::ShiftModifier ? -1 : 1);
    else
        QWidget::keyPressEvent(event);
}

QString FindBar::words() const {
    return count_->text();
}

} // namespace staveline::ui
