// SPDX-License-Identifier: GPL-3.0-or-later
// What was measured corrects what was computed.
#pragma once

#include "brewing/refill_beer.h"

#include <optional>

namespace staveline::brewing {

/// The beer with its residual extract as measured: fermentable and dextrin pools are scaled so that the apparent
/// gravity after primary is `finalGravity`, the alcohol follows from the Balling balance. What cannot be met (below
/// the gravity with nothing left, above the original gravity) is met as far as it can be.
[[nodiscard]] RefillBeer withFinalGravity(const RefillBeer& beer, Plato originalGravity, Plato finalGravity,
                                          const BrewParameters& parameters = {});

} // namespace staveline::brewing
