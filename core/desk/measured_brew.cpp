// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/measured_brew.h"

#include "quantity/density.h"

#include <algorithm>

namespace staveline::desk {
namespace {

/// The fermenter has what was measured: the vessel gets what it gives, be it more or less than was wanted.
void takeLitres(brewing::BrewPlan& plan, Litres intoFermenter, const brewing::Equipment& kit) {
    const Litres gives = intoVesselFrom(intoFermenter, kit);
    plan.intoVessel = std::min(plan.intoVessel, gives);
    plan.leftOver = gives - plan.intoVessel;
    // The beer is made: what its litres mean is said beside it, and more cannot be brewed.
    std::erase_if(plan.findings, [](const Message& finding) { return finding.key == "brewing.brew_short"; });
}

void takeFinalGravity(brewing::BrewPlan& plan, SpecificGravity measured) {
    plan.finalGravity = toPlato(measured);
    plan.alcohol = alcoholByVolume(plan.originalGravity, plan.finalGravity);
}

void takeWeights(brewing::BrewPlan& plan, const std::vector<brewing::GristPart>& grist) {
    plan.gristMass = Kilograms{0};
    for (std::size_t i = 0; i < grist.size(); ++i)
        plan.gristMass += plan.grist[i].mass = *grist[i].mass;
}

/// Water and volumes follow the kilograms weighed: by the efficiency at which they give the gravity.
Result<BrewDraft> draftAsWeighed(const Desk& desk, const facts::VesselName& vessel, const advice::Setting& made,
                                 facts::EquipmentFact kit) {
    auto draft = desk.draft(vessel, made, kit);
    if (!draft || !isWeighed(made.recipe))
        return draft;
    Kilograms weighed{0};
    for (const brewing::GristPart& part : made.recipe.grist)
        weighed += *part.mass;
    const double efficiency = kit.equipment.efficiency.of1 * (draft->plan.gristMass / weighed);
    kit.equipment.efficiency = Share{std::clamp(efficiency, leastEfficiency.of1, 1.)};
    if (auto again = desk.draft(vessel, made, kit))
        draft = std::move(again);
    takeWeights(draft->plan, made.recipe.grist);
    return draft;
}

} // namespace

BrewMeasures measuresOf(const facts::BrewFact& brew) {
    return {brew.originalGravity, brew.finalGravity, brew.intoFermenter};
}

Litres intoVesselFrom(Litres intoFermenter, const brewing::Equipment& kit) {
    return std::max(Litres{0}, intoFermenter * (1 - kit.fermenterLoss.of1) - kit.transferLoss);
}

Result<BrewDraft> draftAsBrewed(const Desk& desk, const facts::VesselName& vessel, const advice::Setting& setting,
                                const facts::EquipmentFact& kit, const BrewMeasures& measured) {
    advice::Setting made = setting;
    facts::EquipmentFact on = kit;
    if (measured.originalGravity)
        made.recipe.originalGravity = toPlato(*measured.originalGravity);
    if (measured.intoFermenter)
        on.brewLength = measured.intoFermenter;
    auto draft = draftAsWeighed(desk, vessel, made, on);
    if (!draft)
        return draftAsWeighed(desk, vessel, setting, kit); // whose fault it is, recipe or measure, shows here
    if (measured.intoFermenter)
        takeLitres(draft->plan, *measured.intoFermenter, kit.equipment);
    if (measured.finalGravity)
        takeFinalGravity(draft->plan, *measured.finalGravity);
    return draft;
}

} // namespace staveline::desk
