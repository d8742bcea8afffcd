// SPDX-License-Identifier: GPL-3.0-or-later
#include "brewing/brew_volumes.h"

#include <algorithm>

namespace staveline::brewing {
namespace {

Litres boiledAway(const Equipment& equipment, Minutes boil) {
    return {equipment.boilOff.lPerH * boil.min / 60};
}

} // namespace

BrewVolumes brewVolumes(const BatchNeed& need, const Equipment& equipment, Minutes boil) {
    const double kept = 1 - equipment.fermenterLoss.of1;
    const double hot = 1 / (1 - equipment.shrinkage.of1);
    BrewVolumes v;
    v.intoFermenter =
        need.fixedBrewLength.value_or((need.intoVessel * (1 + need.margin.of1) + equipment.transferLoss) / kept);
    v.delivered = v.intoFermenter * kept - equipment.transferLoss;
    v.cooled = v.intoFermenter + equipment.kettleLoss;
    v.postBoilHot = v.cooled * hot;
    v.boiledAway = boiledAway(equipment, boil);
    v.preBoilHot = v.postBoilHot + v.boiledAway;
    v.preBoil = v.preBoilHot / hot;
    return v;
}

Litres kettleFits(const Equipment& equipment, Minutes boil) {
    return (equipment.kettle - boiledAway(equipment, boil)) * (1 - equipment.shrinkage.of1) - equipment.kettleLoss;
}

Litres mostAtOnce(const Equipment& equipment, Minutes boil) {
    return std::clamp(kettleFits(equipment, boil), Litres{0}, std::max(Litres{0}, equipment.fermenter));
}

} // namespace staveline::brewing
