// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/present/cellar_model.h"

#include <algorithm>

namespace staveline::ui {
namespace {

constexpr int soonDays = 10;

} // namespace

VesselMood moodOf(const VesselSummary& vessel) {
    if (!vessel.fault.empty())
        return VesselMood::fault;
    if (vessel.due.kind == DueKind::nothing || vessel.due.inDays > soonDays)
        return VesselMood::calm;
    return vessel.due.inDays < 0 ? VesselMood::overdue : VesselMood::soon;
}

CellarModel::CellarModel(Session& session, QObject* parent) : QAbstractListModel(parent), session_(session) {
    connect(&session, &Session::changed, this, &CellarModel::refresh);
    connect(&session, &Session::unitsChanged, this, &CellarModel::refresh);
    refresh();
}

void CellarModel::refresh() {
    auto fresh = session_.desk().cellar();
    std::erase_if(fresh, [](const VesselSummary& vessel) { return vessel.retired; });
    const bool sameRows =
        fresh.size() == vessels_.size() && std::equal(fresh.begin(), fresh.end(), vessels_.begin(),
                                                      [](const auto& a, const auto& b) { return a.name == b.name; });
    // Rows that stay keep their selection.
    if (sameRows) {
        vessels_ = std::move(fresh);
        if (!vessels_.empty())
            Q_EMIT dataChanged(index(0), index(rowCount() - 1));
        return;
    }
    beginResetModel();
    vessels_ = std::move(fresh);
    endResetModel();
}

int CellarModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(vessels_.size());
}

const VesselSummary* CellarModel::at(int row) const {
    return row >= 0 && row < rowCount() ? &vessels_[static_cast<std::size_t>(row)] : nullptr;
}

int CellarModel::rowOf(const VesselName& name) const {
    const auto found =
        std::find_if(vessels_.begin(), vessels_.end(), [&](const VesselSummary& v) { return v.name == name; });
    return found == vessels_.end() ? -1 : static_cast<int>(found - vessels_.begin());
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
    case Qt::ToolTipRole:
        return tr("%1 of %2").arg(session_.amount(vessel->now.volume), session_.amount(vessel->facts.capacity));
    default:
        return {};
    }
}

} // namespace staveline::ui
