// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/present/cellar_model.h"
#include "desk/ledger.h"
#include "vessel/schedule.h"

#include <QElapsedTimer>
#include <QTimer>

#include <algorithm>
#include <limits>
#include <set>

namespace staveline::ui {

using desk::VesselSummary;

namespace {

constexpr int soonDays = 10;
constexpr int sliceMs = 12; // of reading in one go, well within a key's time

/// A vessel that cannot be read says why in its line.
VesselSummary summaryOf(const desk::Desk& desk, const facts::VesselName& name) {
    if (auto vessel = desk.vessel(name); vessel)
        return std::move(*vessel);
    else {
        VesselSummary unread;
        unread.name = name;
        unread.headline = vessel.error().cause;
        return unread;
    }
}

} // namespace

bool isSoon(const VesselSummary& vessel) {
    return vessel.due.kind != vessel::DueKind::nothing && vessel.due.inDays <= soonDays;
}

VesselMood moodOf(const VesselSummary& vessel) {
    if (!vessel.fault.empty())
        return VesselMood::fault;
    if (!isSoon(vessel))
        return VesselMood::calm;
    return vessel.due.inDays < 0 ? VesselMood::overdue : VesselMood::soon;
}

CellarModel::CellarModel(Session& session, QObject* parent)
    : QAbstractListModel(parent), session_(session), reader_(new QTimer(this)) {
    connect(reader_, &QTimer::timeout, this, &CellarModel::readSome);
    connect(&session, &Session::changed, this, &CellarModel::refresh);
    connect(&session, &Session::unitsChanged, this, &CellarModel::refresh);
    refresh();
}

void CellarModel::refresh() {
    const auto vessels = session_.desk().vessels();
    if (!vessels) { // a busy disk is no empty cellar
        Q_EMIT session_.failed(vessels.error());
        return;
    }
    std::vector<Row> fresh;
    for (const facts::VesselFact& vessel : *vessels)
        if (!vessel.retired)
            fresh.push_back({vessel.name, {}});
    take(std::move(fresh));
    if (wanted_ || crowded())
        readAll();
}

/// Rows that stay keep their place and their selection.
void CellarModel::take(std::vector<Row> fresh) {
    const auto names = [](const std::vector<Row>& rows) {
        std::set<facts::VesselName> all;
        for (const Row& row : rows)
            all.insert(row.name);
        return all;
    };
    if (names(fresh) == names(rows_)) {
        for (Row& row : rows_)
            row.stale = true;
        if (!rows_.empty())
            Q_EMIT dataChanged(index(0), index(rowCount() - 1));
        return;
    }
    beginResetModel();
    rows_ = std::move(fresh);
    endResetModel();
}

void CellarModel::readAll() {
    wanted_ = true;
    reader_->start(0);
}

bool CellarModel::isAllRead() const {
    return std::ranges::none_of(rows_, &Row::stale);
}

void CellarModel::readSome() {
    QElapsedTimer sliced;
    sliced.start();
    for (int row = 0; row < rowCount() && sliced.elapsed() < sliceMs; ++row)
        (void)at(row);
    if (rowCount() > 0)
        Q_EMIT dataChanged(index(0), index(rowCount() - 1)); // some were read where they were looked at
    if (!isAllRead())
        return;
    reader_->stop();
    sortByDue();
    Q_EMIT allRead();
}

/// A cellar that is seen at once stays as the brewer made it.
void CellarModel::sortByDue() {
    const auto daysLeft = [](const Row& row) { return row.read->dueIn().value_or(std::numeric_limits<int>::max()); };
    if (!crowded() || std::ranges::is_sorted(rows_, {}, daysLeft))
        return;
    Q_EMIT layoutAboutToBeChanged();
    const QModelIndexList before = persistentIndexList();
    std::vector<facts::VesselName> names;
    for (const QModelIndex& index : before)
        names.push_back(rows_[static_cast<std::size_t>(index.row())].name);
    std::ranges::stable_sort(rows_, {}, daysLeft);
    for (int i = 0; i < before.size(); ++i)
        changePersistentIndex(before[i], index(rowOf(names[static_cast<std::size_t>(i)])));
    Q_EMIT layoutChanged();
}

int CellarModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

const VesselSummary* CellarModel::at(int row) const {
    if (row < 0 || row >= rowCount())
        return nullptr;
    const Row& asked = rows_[static_cast<std::size_t>(row)];
    if (asked.stale)
        asked.read = summaryOf(session_.desk(), asked.name);
    asked.stale = false;
    return &*asked.read;
}

const VesselSummary* CellarModel::known(int row) const {
    if (row < 0 || row >= rowCount())
        return nullptr;
    const auto& read = rows_[static_cast<std::size_t>(row)].read;
    return read ? &*read : nullptr;
}

int CellarModel::rowOf(const facts::VesselName& name) const {
    const auto found = std::ranges::find(rows_, name, &Row::name);
    return found == rows_.end() ? -1 : static_cast<int>(found - rows_.begin());
}

QString CellarModel::held(const VesselSummary& vessel) const {
    return tr("%1 of %2").arg(session_.amount(vessel.now.volume), session_.amount(vessel.facts.capacity));
}

QString CellarModel::headline(const VesselSummary& vessel) const {
    return session_.words(vessel.headline.key.empty() ? vessel.due.text : vessel.headline);
}

QVariant CellarModel::data(const QModelIndex& index, int role) const {
    const VesselSummary* vessel = at(index.row());
    if (!vessel)
        return {};
    switch (role) {
    case Qt::DisplayRole:
        return qs(vessel->name);
    case Qt::AccessibleTextRole:
        return tr("%1, %2").arg(qs(vessel->name), headline(*vessel));
    case Qt::AccessibleDescriptionRole:
        return held(*vessel);
    case Qt::ToolTipRole: // name and headline may be cut
        return QStringList{qs(vessel->name), headline(*vessel), held(*vessel)}.join(QLatin1Char('\n'));
    default:
        return {};
    }
}

} // namespace staveline::ui
