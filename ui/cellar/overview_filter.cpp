// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/cellar/overview_filter.h"

#include <algorithm>

namespace staveline::ui {

OverviewFilter::OverviewFilter(OverviewModel& model, QObject* parent) : QSortFilterProxyModel(parent), model_(model) {
    setSourceModel(&model);
    setSortRole(OverviewModel::sortRole);
    setSortLocaleAware(true);
    setDynamicSortFilter(true);
}

void OverviewFilter::setWhich(Which which) {
    which_ = which;
    invalidateFilter();
}

void OverviewFilter::setWords(const QString& words) {
    words_ = words.split(QLatin1Char(' '), Qt::SkipEmptyParts);
    invalidateFilter();
}

/// What is not read yet is shown: it may be what is looked for.
bool OverviewFilter::filterAcceptsRow(int row, const QModelIndex&) const {
    const desk::VesselSummary* vessel = model_.at(row);
    if (!vessel)
        return true;
    const VesselMood mood = moodOf(*vessel);
    const bool wanted = which_ == Which::all || (which_ == Which::due && isSoon(*vessel)) ||
                        (which_ == Which::faulty && mood == VesselMood::fault) ||
                        (which_ == Which::offTarget && model_.isOffTarget(row));
    const QString said = qs(vessel->name) + QLatin1Char(' ') + model_.cellar().headline(*vessel);
    return wanted && std::all_of(words_.begin(), words_.end(),
                                 [&](const QString& word) { return said.contains(word, Qt::CaseInsensitive); });
}

} // namespace staveline::ui
