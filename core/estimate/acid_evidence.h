// SPDX-License-Identifier: GPL-3.0-or-later
// What a titration and a pH say of the acid of a beer, and whether they can be true.
#pragma once

#include "estimate/estimate_constants.h"
#include "estimate/story.h"
#include "tasting/score_map.h"

namespace staveline::estimate {

/// Titratable acidity of this beer at its strong ions and buffer, if its pH were this and lactic acid made it so.
[[nodiscard]] GramsPerLitre acidityAt(Ph ph, const Composition& beer);
/// The pH if lactic acid made the titratable acidity so.
[[nodiscard]] Ph phAt(GramsPerLitre ta, const Composition& beer);

/// Of the acidity map at this acidity, at least the least slope that is counted on [points per g/L].
[[nodiscard]] double acidSlope(GramsPerLitre ta, const Composition& beer, const tasting::ScoreParameters& parameters,
                               const EstimateConstants& by = {});

enum class AcidDoubt {
    none,
    range,  ///< no running vessel has such a value
    balance ///< pH and titratable acidity cannot both be true of this beer
};
[[nodiscard]] AcidDoubt doubtOf(const AcidReading& reading, const EstimateConstants& by = {});

/// What there is to learn from a reading: a titration, or the acidity that a lone pH implies, with its error.
struct AcidSeen {
    GramsPerLitre ta{0}, model{0};
    double sd = .3;    ///< [g/L]
    double slope = .7; ///< of the acidity map at the model's acidity [points per g/L]
};
[[nodiscard]] AcidSeen seenOf(const AcidReading& reading, const tasting::ScoreParameters& parameters,
                              const EstimateConstants& by = {});

} // namespace staveline::estimate
