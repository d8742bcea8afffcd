// SPDX-License-Identifier: GPL-3.0-or-later
// From chemistry to the three scores a trained palate gives.
#pragma once

#include "quantity/composition.h"
#include "quantity/dimension.h"

namespace staveline {

struct ScoreParameters {
    double thrEG = .13, thrEP = .30, thrVG = .30, thrVP = .25; ///< thresholds [mg/L]
    double wV = .5;                                            ///< weight of the vinyl phenols
    double sn = 1.2, sK = 6.0;
    double sa = 1.95, se = .65, s0 = 1.5, co2v = 2.5;
    double bJnd = .35, bRe = .030, bAl = .020, bGl = .05, ivBg = .25, ivAx = .10;
    bool operator==(const ScoreParameters&) const = default;
};

[[nodiscard]] Scores scores(const Composition& beer, const ScoreParameters& parameters = {});

/// The two parts shown under funk: spice and smoke (guaiacols), horse and barnyard (phenols); flavour units.
struct FunkParts {
    double spice = 0, horse = 0;
};
[[nodiscard]] FunkParts funkParts(const Composition& beer, const ScoreParameters& parameters = {});

/// Acidity score of a titratable acidity, and its inverse [g/L as lactic]; alcohol in % vol.
[[nodiscard]] double acidityScore(GramsPerLitre ta, GramsPerLitre acetic, PercentVol alcohol,
                                  const ScoreParameters& parameters = {});
[[nodiscard]] GramsPerLitre titratableAcidityFor(double score, GramsPerLitre acetic, PercentVol alcohol,
                                                 const ScoreParameters& parameters = {});

} // namespace staveline
