// SPDX-License-Identifier: GPL-3.0-or-later
// Apparent extract of aged beer, as Balling's linear form gives it, and its inverse.
#pragma once

#include "quantity/composition.h"

namespace staveline {

/// What is left beside alcohol [g/L]; acid and glycerol count above what fresh beer holds anyway.
[[nodiscard]] constexpr double realExtractOf(const Composition& beer) {
    constexpr double usualGlycerol = 2, usualLactic = .2;
    return beer.carbohydrate() + beer.otherExtract + (beer.glycerol - usualGlycerol) + (beer.lactic - usualLactic);
}

[[nodiscard]] constexpr Plato apparentGravity(const Composition& beer, Plato original) {
    return {(realExtractOf(beer) / 10 - .1808 * original.p) / .8192};
}

/// Real extract [g/L] at which the gravity reads `apparent`.
[[nodiscard]] constexpr double realExtractAt(Plato apparent, Plato original) {
    return 10 * (.8192 * apparent.p + .1808 * original.p);
}

} // namespace staveline
