// SPDX-License-Identifier: GPL-3.0-or-later
// Apparent extract of fresh or aged beer and its inverse.
#pragma once

#include "quantity/composition.h"
#include "quantity/constants.h"
#include "quantity/density.h"

namespace staveline::brewing {

/// What is left beside alcohol [g/L]; acid and glycerol count above what fresh beer holds anyway.
[[nodiscard]] constexpr double realExtractOf(const Composition& beer) {
    return beer.carbohydrate() + beer.otherExtract + (beer.glycerol - constants::primary::everydayGlycerol) +
           (beer.lactic - constants::primary::everydayLactic);
}

[[nodiscard]] inline Plato apparentGravity(const Composition& beer) {
    return apparentExtract(beer.originalGravity(), {realExtractOf(beer) / 10});
}

/// Real extract [g/L] at which the gravity reads `apparent`.
[[nodiscard]] inline double realExtractAt(Plato apparent, Plato original) {
    return 10 * realExtract(original, apparent).p;
}

} // namespace staveline::brewing
