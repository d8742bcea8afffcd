// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/measured_brew.h"

#include "quantity/density.h"

#include <algorithm>

namespace staveline {
namespace {

/// The fermenter has what was measured: the vessel gets what it gives, be it more or less than was wanted.
void takeLitres(BrewPlan& plan, Litres intoFermenter, const Equipment& kit) {
    const Litres gives = intoVesselFrom(intoFermenter, kit);
    plan.intoVessel = std::min(plan.intoVessel, gives);
    plan.leftOver = gives - plan.intoVessel;
}

void takeFinalGravity(BrewPlan& plan, SpecificGravity measured) {
    plan.finalGravity = toPlato(measured);
    plan.alcohol = alcoholByVolume(plan.originalGravity, plan.finalGravity);
}

} // namespace

BrewMeasures measuresOf(const BrewFact& brew) {
    return {brew.originalGravity, brew.finalGravity, brew.intoFermenter};
}

Litres intoVesselFrom(Litres intoFermenter, const Equipment& kit) {
    return std::max(Litres{0}, intoFermenter * (1 - kit.fermenterLoss.of1) - kit.transferLoss);
}

Result<BrewDraft> draftAsBrewed(const Desk& desk, const VesselName& vessel, const Setting& setting,
                                const EquipmentFact& kit, const BrewMeasures& measured) {
    Setting made = setting;
    EquipmentFact on = kit;
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

} // namespace staveline
