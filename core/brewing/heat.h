// SPDX-License-Identifier: GPL-3.0-or-later
// Strike and infusion by heat balance.
#pragma once

#include "quantity/units.h"

namespace staveline {

inline constexpr double maltHeat = 0.41; ///< heat capacity of malt against water [L/kg]

/// Strike water temperature for `target`; the tun (as kg of water) starts at `tunTemperature`.
[[nodiscard]] Celsius strikeTemperature(Celsius target, Kilograms malt, Celsius maltTemperature, Litres water,
                                        Kilograms tun, Celsius tunTemperature);
/// Water at `hot` that lifts the mash from `from` to `to`; hot must be above to.
[[nodiscard]] Litres infusion(Celsius from, Celsius to, Kilograms malt, Litres waterInMash, Kilograms tun, Celsius hot);

} // namespace staveline
