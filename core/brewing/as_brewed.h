// SPDX-License-Identifier: GPL-3.0-or-later
// What was measured corrects what was computed.
#pragma once

#include "brewing/refill_beer.h"

#include <optional>

namespace staveline::brewing {

/// Every grain of it was weighed out.
[[nodiscard]] bool isWeighed(const Recipe& recipe);

/// As a scale of its size reads: from 10 kg on to 10 g, below to the gram.
[[nodiscard]] Kilograms asScaleReads(Kilograms mass);
/// The shares follow the kilograms where every grain was weighed and they are others; else the recipe stays as it is.
[[nodiscard]] Recipe asWeighed(Recipe recipe);
/// As a plan has it: the kilograms belong to the brew they were weighed for.
[[nodiscard]] Recipe withoutWeights(Recipe recipe);

/// Extract that came into the kettle from the mash against what this mash could give.
struct WonExtract {
    Share efficiency{0}; ///< in the terms of a kit; above 1 where a measure cannot be right
    Share error{0};      ///< one standard deviation: gravity, litres and malt, the rows "brew." of rules.csv
};
/// Of a brew that was weighed, its original gravity as measured, `intoFermenter` litres of it; `beer`: of the same
/// input. None: not weighed, or nothing was mashed.
[[nodiscard]] std::optional<WonExtract> wonExtract(const BrewInput& brewed, const RefillBeer& beer,
                                                   const Equipment& kit, Litres intoFermenter);

/// The beer with its residual extract as measured: fermentable and dextrin pools are scaled so that the apparent
/// gravity after primary is `finalGravity`, the alcohol follows from the Balling balance. What cannot be met (below
/// the gravity with nothing left, above the original gravity) is met as far as it can be.
[[nodiscard]] RefillBeer withFinalGravity(const RefillBeer& beer, Plato originalGravity, Plato finalGravity,
                                          const BrewParameters& parameters = {});

} // namespace staveline::brewing
