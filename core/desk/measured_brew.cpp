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
}

void takeFinalGravity(brewing::BrewPlan& plan, SpecificGravity measured) {
    plan.finalGravity = toPlato(measured);
    plan.alcohol = alcoholByVolume(plan.originalGravity, plan.finalGravity);
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
    auto draft = desk.draft(vessel, made, on);
    if (!draft)
        return desk.draft(vessel, setting, kit); // whose fault it is, recipe or measure, shows here
    if (measured.intoFermenter)
        takeLitres(draft->plan, *measured.intoFermenter, kit.equipment);
    if (measured.finalGravity)
        takeFinalGravity(draft->plan, *measured.finalGravity);
    return draft;
}

} // namespace staveline::desk
