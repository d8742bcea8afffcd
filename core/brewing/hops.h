// SPDX-License-Identifier: GPL-3.0-or-later
// Bitterness from hops (Tinseth).
#pragma once

#include "quantity/units.h"

namespace staveline {

/// Utilisation 0..1 at the wort gravity during the boil.
[[nodiscard]] double tinsethUtilisation(SpecificGravity gravity, Minutes boiled);
[[nodiscard]] Ibu tinsethIbu(Grams hops, Share alpha, Litres volume, SpecificGravity gravity, Minutes boiled);
/// Grams that bring `wanted`; alpha must be above 0.
[[nodiscard]] Grams hopsFor(Ibu wanted, Share alpha, Litres volume, SpecificGravity gravity, Minutes boiled);

} // namespace staveline
