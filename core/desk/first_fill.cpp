// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/first_fill.h"

#include "desk/coming_refill.h"
#include "desk/current_vessel.h"
#include "desk/measured_brew.h"

#include <algorithm>
#include <cmath>

namespace staveline::desk {
namespace {

Message cultureNote(const VesselRecord& record, Day today) {
    const facts::CultureFact* culture = record.latest<facts::CultureFact>(today);
    if (!culture)
        return say("desk.first_fill.no_culture");
    if (culture->name.empty())
        return say("desk.first_fill.culture");
    return say("desk.first_fill.culture_named").with("culture", culture->name);
}

/// What the kit cannot do at one go, or does more of than the vessel takes.
void addFit(const facts::EquipmentFact& kit, const CurrentVessel& vessel, const brewing::BrewPlan& plan,
            std::vector<Message>& notes) {
    const Litres wort = mostAtOnce(kit.equipment, vessel.inUse.recipe.boil);
    const Litres atOnce = intoVesselFrom(std::min(wort, kit.brewLength.value_or(wort)), kit.equipment);
    if (atOnce.l > 0 && plan.intoVessel > atOnce)
        notes.push_back(say("desk.first_fill.several")
                            .with("once", atOnce)
                            .with("brews", static_cast<std::int64_t>(std::ceil(plan.intoVessel / atOnce - 1e-9))));
    else if (kit.brewLength && plan.leftOver > plan.intoVessel * kit.margin.of1)
        notes.push_back(say("desk.first_fill.too_much").with("length", *kit.brewLength).with("left", plan.leftOver));
}

} // namespace

std::vector<Message> firstFillNotes(const CurrentVessel& vessel, const SharedFacts& shared,
                                    const facts::EquipmentFact& kit, const brewing::BrewPlan& plan) {
    std::vector<Message> notes;
    if (vessel.toFill)
        notes = {say("desk.first_fill.litres")
                     .with("fill", plan.intoVessel)
                     .with("capacity", vessel.record.facts.capacity)
                     .with("on", vessel.dates.draw),
                 cultureNote(vessel.record, vessel.today)};
    if (!shared.kitKnown(vessel.today, vessel.record.facts.name))
        notes.push_back(say("desk.no_kit"));
    if (vessel.toFill)
        addFit(kit, vessel, plan, notes);
    return notes;
}

namespace {

/// Beer that is known by its level alone.
bool ofUnknownBeer(const CurrentVessel& vessel) {
    return std::none_of(vessel.entries.begin(), vessel.entries.end(), [](const vessel::LedgerEntry& entry) {
        const vessel::Flow flow = vessel::traitsOf(entry.kind).flow;
        return !entry.outOfThisVessel && (flow == vessel::Flow::opens || flow == vessel::Flow::in);
    });
}

} // namespace

Result<void> holdsBeer(const CurrentVessel& vessel) {
    if (!vessel.toFill && ofUnknownBeer(vessel))
        return fail({FaultKind::notPossible, "/vessel",
                     say("desk.dip_alone").with("vessel", vessel.record.facts.name).with("volume", vessel.now().volume),
                     say("desk.dip_alone.remedy")});
    if (!vessel.toFill)
        return {};
    return fail({FaultKind::notPossible, "/vessel", say("desk.empty").with("vessel", vessel.record.facts.name),
                 say(vessel.brewed ? "desk.empty.fill" : "desk.empty.brew")
                     .with("fill", usualFill(vessel))
                     .with("on", vessel.dates.draw)});
}

} // namespace staveline::desk
