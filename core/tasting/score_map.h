// SPDX-License-Identifier: GPL-3.0-or-later
// From chemistry to the three scores a trained palate gives, each 0..10.
#pragma once

#include "quantity/composition.h"
#include "quantity/dimension.h"

namespace staveline {

/// Constants of the score maps. Rows in resources/data/parameters.csv.
struct ScoreParameters {
    double thrEG = .13, thrEP = .30, thrVG = .30, thrVP = .25; ///< thresholds [mg/L]
    double wV = .5;                                            ///< weight of the vinyl phenols
    double sn = 1.2, sK = 6.0;
    double sa = 1.95, se = .65, s0 = 1.5, co2v = 2.5;
    double bJnd = .35, bRe = .030, bAl = .020, bGl = .05, ivBg = .25, ivAx = .10;
    double thrLactic = .55, thrAcetic = .130; ///< taste thresholds when added to beer [g/L]
    double wAcetic = .45;                     ///< extra sourness of acetic acid [g/L TA per g/L]
    double alcoholSoftens = .01;              ///< sourness lost per % vol above 5
    double co2Sharpens = .04;                 ///< sourness won per volume of CO2 above 2.4
    double jnd = 1.093;                       ///< viscosity ratio just noticed
    double etaWater = 1.002;                  ///< viscosity at 20 C [mPa s]
    double etaAlcohol = .0045, etaExtract = .0060, etaGlycerol = .0026; ///< [mPa s per g/L]
    bool operator==(const ScoreParameters&) const = default;
};

[[nodiscard]] Scores scores(const Composition& beer, const ScoreParameters& parameters = {});

/// The two parts shown under funk: spice and smoke (guaiacols), horse and barnyard (phenols); flavour units.
struct FunkParts {
    double spice = 0, horse = 0;
};
[[nodiscard]] FunkParts funkParts(const Composition& beer, const ScoreParameters& parameters = {});

/// The two acids shown under acidity, in multiples of their taste threshold.
struct AcidParts {
    double milk = 0, vinegar = 0;
};
[[nodiscard]] AcidParts acidParts(const Composition& beer, const ScoreParameters& parameters = {});

/// Viscosity at 20 C [mPa s] from alcohol, real extract, glycerol and the two gums.
[[nodiscard]] double viscosity(const Composition& beer, const ScoreParameters& parameters = {});

/// Acidity score of a titratable acidity, and its inverse [g/L as lactic]; alcohol in % vol.
/// The inverse is exact for scores above 0 and below 10; at 0 it gives the highest TA that still scores 0, at 10 and
/// above the lowest that reaches the top of the scale.
[[nodiscard]] double acidityScore(GramsPerLitre ta, GramsPerLitre acetic, PercentVol alcohol,
                                  const ScoreParameters& parameters = {});
[[nodiscard]] GramsPerLitre titratableAcidityFor(double score, GramsPerLitre acetic, PercentVol alcohol,
                                                 const ScoreParameters& parameters = {});

} // namespace staveline
