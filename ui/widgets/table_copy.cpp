// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/table_copy.h"

#include <QAction>
#include <QClipboard>
#include <QGuiApplication>
#include <QHeaderView>
#include <QKeyEvent>
#include <QTableView>

#include <algorithm>
#include <utility>

namespace staveline::ui {
namespace {

QString oneLine(QString words) {
    return words.replace(QLatin1Char('\n'), QLatin1Char(' ')).replace(QLatin1Char('\t'), QLatin1Char(' '));
}

QString headWords(const QTableView& table, int section, Qt::Orientation orientation) {
    const QVariant full = table.model()->headerData(section, orientation, Qt::AccessibleTextRole);
    return oneLine((full.isValid() ? full : table.model()->headerData(section, orientation)).toString());
}

QString textOf(const QTableView& table, QModelIndexList cells) {
    std::sort(cells.begin(), cells.end());
    const bool several = cells.size() > 1;
    const bool named = several && !table.verticalHeader()->isHidden(); // rows have names as columns have
    QList<QStringList> lines;
    if (several)
        lines << (named ? QStringList{QString()} : QStringList());
    for (const QModelIndex& cell : std::as_const(cells))
        if (several && cell.row() == cells.front().row())
            lines.back() << headWords(table, cell.column(), Qt::Horizontal);
    int row = -1;
    for (const QModelIndex& cell : std::as_const(cells)) {
        if (std::exchange(row, cell.row()) != row)
            lines << (named ? QStringList{headWords(table, row, Qt::Vertical)} : QStringList());
        lines.back() << oneLine(cell.data().toString());
    }
    QStringList text;
    for (const QStringList& line : std::as_const(lines))
        text << line.join(QLatin1Char('\t'));
    return text.join(QLatin1Char('\n'));
}

void copy(const QTableView& table, QModelIndexList cells) {
    cells.removeIf([&](const QModelIndex& cell) { return table.isColumnHidden(cell.column()); });
    if (!cells.isEmpty())
        QGuiApplication::clipboard()->setText(textOf(table, std::move(cells)));
}

} // namespace

TableCopy::TableCopy(QTableView& table) : QObject(&table), table_(table) {
    const auto add = [this](const QString& words, auto act) {
        auto* action = new QAction(words, &table_);
        connect(action, &QAction::triggered, this, act);
        table_.addAction(action);
    };
    add(tr("&Copy") + QLatin1Char('\t') + QKeySequence(QKeySequence::Copy).toString(QKeySequence::NativeText),
        &TableCopy::copyChosen);
    add(tr("Copy the &whole table"), &TableCopy::copyAll);
    table_.setContextMenuPolicy(Qt::ActionsContextMenu);
    table_.installEventFilter(this);
}

void TableCopy::copyChosen() const {
    copy(table_, table_.selectionModel()->selectedIndexes());
}

void TableCopy::copyAll() const {
    QModelIndexList all;
    for (int row = 0; row < table_.model()->rowCount(); ++row)
        for (int column = 0; column < table_.model()->columnCount(); ++column)
            all << table_.model()->index(row, column);
    copy(table_, std::move(all));
}

bool TableCopy::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::KeyPress || !static_cast<QKeyEvent*>(event)->matches(QKeySequence::Copy))
        return QObject::eventFilter(watched, event);
    copyChosen();
    return true;
}

} // namespace staveline::ui
