// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/coming_refill.h"

#include "desk/current_vessel.h"
#include "quantity/constants.h"

#include <algorithm>

namespace staveline::desk {

using facts::BrewFact;

Litres volumeOnDraw(const CurrentVessel& vessel, Day draw) {
    const Day until = std::max(vessel.now().on, draw);
    const vessel::LedgerState* last = &vessel.now(); // an outline has no states after its entries
    for (std::size_t i = 0; i < vessel.entries.size() && vessel.entries[i].on <= until; ++i)
        last = &vessel.replayed.after[i];
    return volumeOn(*last, shapeOf(vessel.record.facts), until) + vessel.drawn.value_or(Litres{0});
}

Litres usualFill(const CurrentVessel& vessel) {
    const Litres capacity = vessel.record.facts.capacity;
    const Litres most = vessel.toFill ? capacity * (1 - constants::desk::headspace) : capacity;
    return vessel.now().lastRefill ? std::min(vessel.now().lastFilled, most) : most;
}

Litres refillWanted(const advice::Setting& setting, const CurrentVessel& vessel) {
    const Litres held = volumeOnDraw(vessel, vessel.dates.draw);
    return usualFill(vessel) - Litres{std::max(0.0, held.l - setting.draw.l)};
}

Result<brewing::BrewPlan> sizedFor(const brewing::BrewInput& input, const brewing::RefillBeer& beer,
                                   const facts::EquipmentFact& kit, Litres intoVessel) {
    return brewing::planBrew(input, beer, kit.equipment, {intoVessel, kit.margin, kit.brewLength});
}

const BrewFact* brewForRefill(const VesselRecord& record, const Cellar& cellar, const vessel::LedgerState& now,
                              Day today) {
    const auto inCycle = [&](Day on) {
        return on <= today && (now.lastRefill ? on > *now.lastRefill : !now.opened || on >= *now.opened);
    };
    const BrewFact* found = nullptr;
    for (const auto& stored : cellar.shared().brews) {
        const BrewFact& brew = stored.fact;
        if (brew.vessel == record.facts.name && inCycle(brew.on) && (!found || brew.on >= found->on) &&
            !cellar.poured(brew.name))
            found = &brew;
    }
    return found;
}

Result<void> notBrewedYet(const VesselRecord& record, const Cellar& cellar, Day day) {
    const BrewFact* brewed = brewForRefill(record, cellar, replayOf(record, cellar.shared(), day).now, day);
    if (!brewed)
        return {};
    return fail({FaultKind::notPossible, "/vessel", say("desk.brewed_already").with("brew", brewed->name),
                 say("desk.brewed_already.remedy")});
}

} // namespace staveline::desk
