// SPDX-License-Identifier: GPL-3.0-or-later
// Strike and infusion by heat balance. Litres of water count as kilograms, measured cold. Losses to the air are not in
// it, nor the heat of wetting (below 1 C).
#pragma once

#include "brewing/recipe.h"
#include "quantity/constants.h"
#include "quantity/units.h"

namespace staveline::brewing {

inline constexpr Celsius nearBoiling{constants::plan::nearBoiling}; ///< water from the kettle when it reaches the mash

/// The same where the kit stands.
[[nodiscard]] constexpr Celsius hottestWater(const Equipment& kit) {
    return nearBoiling + (kit.waterBoils - Celsius{constants::plan::seaLevelBoil});
}

/// Heat a mash takes to warm by one degree [kg of water]; the tun counts as kg of water.
[[nodiscard]] constexpr double mashHeat(Kilograms malt, Litres water, Kilograms tun) {
    return constants::plan::maltHeat * malt.kg + water.l + tun.kg;
}

/// Strike water temperature for `target`; the tun (as kg of water) starts at `tunTemperature`. Water above 0.
[[nodiscard]] Celsius strikeTemperature(Celsius target, Kilograms malt, Celsius maltTemperature, Litres water,
                                        Kilograms tun, Celsius tunTemperature);
/// Water at `hot` that lifts the mash from `from` to `to`; hot must be above to.
[[nodiscard]] Litres infusion(Celsius from, Celsius to, Kilograms malt, Litres waterInMash, Kilograms tun, Celsius hot);

} // namespace staveline::brewing
