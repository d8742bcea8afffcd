// SPDX-License-Identifier: GPL-3.0-or-later
// Bitterness from hops (Tinseth; source key: tinseth). Utilisation is into finished beer: do not deduct losses twice.
#pragma once

#include "quantity/units.h"

namespace staveline::brewing {

/// Utilisation 0..1 at the wort gravity during the boil (mean of start and end). Gravity 1.000..1.200, minutes 0 up.
[[nodiscard]] double tinsethUtilisation(SpecificGravity gravity, Minutes boiled);
/// Volume: wort after the boil, cooled, above 0.
[[nodiscard]] Ibu tinsethIbu(Grams hops, Share alpha, Litres volume, SpecificGravity gravity, Minutes boiled);
/// Grams that bring `wanted`; alpha and minutes must be above 0 unless nothing is wanted.
[[nodiscard]] Grams hopsFor(Ibu wanted, Share alpha, Litres volume, SpecificGravity gravity, Minutes boiled);

/// Alpha acids not yet isomerised against iso-alpha acids made, after a time at boiling; the more the shorter.
[[nodiscard]] double alphaPerIso(Minutes boiled);

} // namespace staveline::brewing
