// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/refits.h"

#include "desk/rooms.h"
#include "vessel/materials.h"

namespace staveline::desk {

using facts::RefitFact;
using facts::VesselFact;

namespace {

/// One of factWords::clearable.
void clear(VesselFact& vessel, std::string_view field) {
    if (field == "evaporation_per_year")
        vessel.evaporationPerYear.reset();
    else if (field == "oxygen_mg_l_year")
        vessel.oxygenPerYear.reset();
    else
        vessel.cultureHeldBack.reset();
}

} // namespace

std::optional<RefitFact> refitIn(const facts::VesselEditFact& edit, Day today) {
    RefitFact nothing;
    nothing.vessel = edit.vessel;
    nothing.on = edit.on.value_or(today);
    RefitFact refit = nothing;
    refit.capacity = edit.capacity;
    refit.material = edit.material;
    refit.temperature = edit.temperature;
    refit.room = edit.room;
    refit.evaporationPerYear = edit.evaporationPerYear;
    refit.cultureHeldBack = edit.cultureHeldBack;
    refit.oxygenPerYear = edit.oxygenPerYear;
    refit.clear = edit.clear;
    std::erase(refit.clear, facts::factWords::wantedAge);
    return refit == nothing ? std::nullopt : std::optional(refit);
}

void apply(const RefitFact& refit, VesselFact& vessel) {
    vessel.capacity = refit.capacity.value_or(vessel.capacity);
    vessel.material = refit.material.value_or(vessel.material);
    vessel.temperature = refit.temperature.value_or(vessel.temperature);
    if (refit.room)
        vessel.room = *refit.room;
    else if (refit.temperature)
        vessel.room.clear();
    for (const std::string& field : refit.clear)
        clear(vessel, field);
    if (refit.evaporationPerYear)
        vessel.evaporationPerYear = refit.evaporationPerYear;
    if (refit.cultureHeldBack)
        vessel.cultureHeldBack = refit.cultureHeldBack;
    if (refit.oxygenPerYear)
        vessel.oxygenPerYear = refit.oxygenPerYear;
}

VesselFact vesselOn(const VesselRecord& record, Day day) {
    VesselFact vessel = record.made;
    for (const auto& stored : record.of<RefitFact>())
        if (stored.fact.on <= day)
            apply(stored.fact, vessel);
    takeRoom(vessel, *record.rooms, day);
    return vessel;
}

vessel::VesselShape shapeOf(const VesselFact& facts) {
    return {facts.capacity,
            facts.evaporationPerYear.value_or(
                vessel::materialFacts(wordOf(facts.material)).value_or(vessel::MaterialFacts{}).evaporationPerYear)};
}

vessel::ShapeHistory shapesOf(const VesselRecord& record) {
    VesselFact vessel = record.made;
    vessel::ShapeHistory shapes = shapeOf(vessel);
    for (const auto& stored : record.of<RefitFact>()) {
        apply(stored.fact, vessel);
        shapes.changes.push_back({stored.fact.on, shapeOf(vessel)});
    }
    return shapes;
}

} // namespace staveline::desk
