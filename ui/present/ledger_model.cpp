// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/present/ledger_model.h"

#include <algorithm>

namespace staveline::ui {

using desk::LedgerLine;

QString measuredWords(const facts::Measured& measured, const DisplayUnits& units) {
    QStringList parts;
    if (measured.gravity)
        parts << qs(show(*measured.gravity, units));
    if (measured.ph)
        parts << LedgerModel::tr("pH %1").arg(qs(show(*measured.ph, units)));
    if (measured.ta)
        parts << LedgerModel::tr("TA %1").arg(qs(show(*measured.ta, units)));
    if (measured.temperature)
        parts << qs(show(*measured.temperature, units));
    if (measured.bitterness)
        parts << qs(show(*measured.bitterness, units));
    return parts.join(QStringLiteral(", "));
}

QString entryWords(const LedgerLine& line, const DisplayUnits& units) {
    const QString what = text(line.text, units), measured = measuredWords(line.measured, units);
    return measured.isEmpty() ? what : LedgerModel::tr("%1: %2").arg(what, measured);
}

LedgerModel::LedgerModel(Session& session, QObject* parent) : QAbstractTableModel(parent), session_(session) {}

void LedgerModel::show(desk::LedgerView view) {
    beginResetModel();
    view_ = std::move(view);
    endResetModel();
}

int LedgerModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(view_.lines.size());
}
int LedgerModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : columnCount_;
}

std::size_t LedgerModel::indexOf(int row) const {
    return view_.lines.size() - 1 - static_cast<std::size_t>(row);
}

const LedgerLine* LedgerModel::at(int row) const {
    return row >= 0 && row < rowCount() ? &view_.lines[indexOf(row)] : nullptr;
}

const vessel::LedgerState* LedgerModel::stateAt(int row) const {
    return row >= 0 && row < rowCount() && indexOf(row) < view_.states.size() ? &view_.states[indexOf(row)] : nullptr;
}

int LedgerModel::rowOf(std::int64_t id, const std::string& table) const {
    for (int row = 0; row < rowCount(); ++row)
        if (at(row)->id == id && at(row)->table == table)
            return row;
    return -1;
}

QStringList LedgerModel::findings(int row) const {
    QStringList words;
    if (const LedgerLine* line = at(row))
        for (const Message& finding : line->findings)
            words << session_.words(finding);
    return words;
}

QString LedgerModel::cell(const LedgerLine& line, int column) const {
    switch (column) {
    case day:
        return line.at.empty() ? dayWords(line.on) : tr("%1, %2").arg(dayWords(line.on), qs(line.at));
    case entry:
        return entryWords(line, session_.units());
    case level:
        return session_.amount(line.volumeAfter);
    case age:
        return spanWords(line.meanAgeAfter);
    default:
        return {};
    }
}

QVariant LedgerModel::data(const QModelIndex& index, int role) const {
    const LedgerLine* line = at(index.row());
    if (!line)
        return {};
    switch (role) {
    case Qt::DisplayRole:
        return cell(*line, index.column());
    case Qt::TextAlignmentRole:
        return QVariant::fromValue(Qt::Alignment(
            Qt::AlignVCenter | (index.column() == level || index.column() == age ? Qt::AlignRight : Qt::AlignLeft)));
    case Qt::AccessibleDescriptionRole:
    case Qt::ToolTipRole: {
        QStringList words = findings(index.row());
        if (!line->note.empty())
            words << qs(line->note);
        return words.join(QLatin1Char('\n'));
    }
    default:
        return {};
    }
}

QVariant LedgerModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal)
        return {};
    if (role == Qt::TextAlignmentRole)
        return QVariant::fromValue(
            Qt::Alignment(Qt::AlignVCenter | (section == level || section == age ? Qt::AlignRight : Qt::AlignLeft)));
    if (role != Qt::DisplayRole)
        return {};
    switch (section) {
    case day:
        return tr("Date");
    case entry:
        return tr("Entry");
    case level:
        return tr("Level after");
    case age:
        return tr("Mean age");
    default:
        return {};
    }
}

} // namespace staveline::ui
