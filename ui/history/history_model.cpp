// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/history/history_model.h"

#include "desk/history.h"
#include "ui/history/history_charts.h"
#include "ui/present/choice_words.h"
#include "ui/present/text.h"

#include <algorithm>

namespace staveline::ui {

using desk::HistoryRow;

namespace {

QVariant alignment(bool numeric) {
    return QVariant::fromValue(Qt::Alignment(Qt::AlignVCenter | (numeric ? Qt::AlignRight : Qt::AlignLeft)));
}

// Columns of the promises: made, for, which, then told / tasted / how it came out / against no change for each
// dimension.
constexpr int leading = 3, perDimension = 4;

Dimension dimensionOf(int column) {
    return allDimensions.at(static_cast<std::size_t>((column - leading) / perDimension));
}

QString verdictOn(const std::optional<bool>& good, const QString& yes, const QString& no) {
    return !good ? QString() : *good ? yes : no;
}

} // namespace

void HistoryModel::show(const std::vector<HistoryRow>& rows, const DisplayUnits& units) {
    beginResetModel();
    rows_ = rows;
    columns_ = historyColumns(units);
    endResetModel();
}

int HistoryModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}
int HistoryModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(columns_.size());
}

const HistoryRow* HistoryModel::at(int row) const {
    return row >= 0 && row < rowCount() ? &rows_[static_cast<std::size_t>(row)] : nullptr;
}

bool HistoryModel::isEmptyColumn(int column) const {
    const auto& shown = columns_.at(static_cast<std::size_t>(column)).shown;
    return std::all_of(rows_.begin(), rows_.end(), [&](const HistoryRow& row) { return shown(row).isEmpty(); });
}

int HistoryModel::rowOf(Day day) const {
    const auto at = std::lower_bound(rows_.begin(), rows_.end(), day,
                                     [](const HistoryRow& row, Day other) { return row.on < other; });
    return std::min(static_cast<int>(at - rows_.begin()), rowCount() - 1);
}

QVariant HistoryModel::data(const QModelIndex& index, int role) const {
    const HistoryRow* row = at(index.row());
    if (!row || index.column() >= columnCount())
        return {};
    const HistoryColumn& column = columns_[static_cast<std::size_t>(index.column())];
    switch (role) {
    case Qt::DisplayRole:
        return column.shown(*row);
    case Qt::TextAlignmentRole:
        return alignment(column.numeric);
    case Qt::ToolTipRole:
        return column.key == "note" ? column.shown(*row) : QVariant();
    default:
        return {};
    }
}

QVariant HistoryModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section < 0 || section >= columnCount())
        return {};
    const HistoryColumn& column = columns_[static_cast<std::size_t>(section)];
    if (role == Qt::TextAlignmentRole)
        return alignment(column.numeric);
    if (role == Qt::AccessibleTextRole)
        return QString(column.title).replace(QLatin1Char('\n'), QLatin1Char(' '));
    return role == Qt::DisplayRole ? column.title : QVariant();
}

void PromiseModel::show(const std::vector<desk::PromiseOutcome>& promises) {
    beginResetModel();
    promises_.assign(promises.rbegin(), promises.rend());
    endResetModel();
}

int PromiseModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(promises_.size());
}
int PromiseModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : leading + perDimension * static_cast<int>(allDimensions.size());
}

QString PromiseModel::cell(const desk::PromiseOutcome& promise, int column) const {
    switch (column) {
    case 0:
        return dayWords(promise.made);
    case 1:
        return dayWords(promise.forDay);
    case 2:
        return choiceName(promise.proposal);
    default:
        break;
    }
    const Dimension d = dimensionOf(column);
    switch ((column - leading) % perDimension) {
    case 0:
        return estimateWords(promise.told[d]);
    case 1:
        return promise.tasted[d] ? estimateWords(*promise.tasted[d]) : tr("not yet");
    case 2:
        return verdictOn(promise.inside[d], tr("inside"), tr("outside"));
    default:
        return verdictOn(promise.nearer(d), tr("nearer"), tr("farther"));
    }
}

QVariant PromiseModel::data(const QModelIndex& index, int role) const {
    if (index.row() < 0 || index.row() >= rowCount() || index.column() >= columnCount())
        return {};
    if (role == Qt::DisplayRole)
        return cell(promises_[static_cast<std::size_t>(index.row())], index.column());
    return role == Qt::TextAlignmentRole ? alignment(false) : QVariant();
}

QVariant PromiseModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section < 0 || section >= columnCount())
        return {};
    if (role == Qt::TextAlignmentRole)
        return alignment(false);
    if (role == Qt::AccessibleTextRole)
        return headerData(section, orientation, Qt::DisplayRole)
            .toString()
            .replace(QLatin1Char('\n'), QLatin1Char(' '));
    if (role != Qt::DisplayRole)
        return {};
    switch (section) {
    case 0:
        return tr("Made");
    case 1:
        return tr("For the\ndraw of");
    case 2:
        return tr("Chosen");
    default:
        break;
    }
    const QString dimension = nameOf(dimensionOf(section));
    switch ((section - leading) % perDimension) {
    case 0:
        return tr("%1\npromised").arg(dimension);
    case 1:
        return tr("%1\ntasted").arg(dimension);
    case 2:
        return tr("%1\nrange").arg(dimension);
    default:
        return tr("%1\nagainst no change").arg(dimension);
    }
}

} // namespace staveline::ui
