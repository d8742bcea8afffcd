// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/model_table.h"

#include "ui/present/text.h"

#include <QAbstractItemModel>

#include <algorithm>

namespace staveline::ui {
namespace {

/// Nothing was recorded: unlike an empty cell it is no space to write in.
constexpr const char* nothing = "\u00a0";

std::string cell(const QAbstractItemModel& model, int row, int column) {
    const QString words = model.index(row, column).data().toString();
    return words.isEmpty() ? nothing : toStd(words);
}

std::string unbroken(const std::string& words) {
    return toStd(qs(words).replace(QLatin1Char(' '), QChar::Nbsp));
}

bool isNumeric(const QAbstractItemModel& model, int column) {
    const auto alignment = model.headerData(column, Qt::Horizontal, Qt::TextAlignmentRole).value<Qt::Alignment>();
    return alignment.testFlag(Qt::AlignRight);
}

} // namespace

sheet::Table tableOf(const QAbstractItemModel& model, const std::vector<int>& columns, int leading) {
    sheet::Table table;
    for (const int column : columns) {
        const QString head = model.headerData(column, Qt::Horizontal).toString();
        table.columns.push_back(toStd(QString(head).replace(QLatin1Char('\n'), QLatin1Char(' '))));
        table.numeric.push_back(isNumeric(model, column));
    }
    for (int row = 0; row < model.rowCount(); ++row) {
        std::vector<std::string> cells;
        for (const int column : columns)
            cells.push_back(cell(model, row, column));
        for (int i = 0; i < leading; ++i) // what names the row stands on one line
            cells[static_cast<std::size_t>(i)] = unbroken(cells[static_cast<std::size_t>(i)]);
        if (std::any_of(cells.begin() + leading, cells.end(), [](const auto& words) { return words != nothing; }))
            table.rows.push_back(std::move(cells));
    }
    return table;
}

} // namespace staveline::ui
