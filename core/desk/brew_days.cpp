// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/brew_days.h"

#include <algorithm>

namespace staveline::desk {

std::vector<BrewDay> brewDays(const std::vector<VesselSummary>& cellar, Days apart) {
    std::vector<const VesselSummary*> toBrew;
    for (const VesselSummary& vessel : cellar)
        if (!vessel.retired && !vessel.works.brew.done && vessel.due.kind != vessel::DueKind::nothing)
            toBrew.push_back(&vessel);
    std::ranges::stable_sort(toBrew, {}, [](const VesselSummary* vessel) { return vessel->dates.brew; });
    std::vector<BrewDay> days;
    for (const VesselSummary* vessel : toBrew) {
        if (days.empty() || daysBetween(days.back().on, vessel->dates.brew) > apart.d)
            days.push_back({vessel->dates.brew, {}, {}});
        days.back().vessels.push_back(vessel->name);
        days.back().draws = days.back().draws + vessel->draw;
    }
    std::erase_if(days, [](const BrewDay& day) { return day.vessels.size() < 2; });
    return days;
}

} // namespace staveline::desk
