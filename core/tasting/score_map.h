// SPDX-License-Identifier: GPL-3.0-or-later
// From chemistry to the three scores a trained palate gives, each 0..10.
#pragma once

#include "quantity/composition.h"
#include "quantity/dimension.h"

namespace staveline {

/// Constants of the score maps. Rows in resources/data/parameters.csv.
struct ScoreParameters {
    double ethylGuaiacolThreshold = .13; ///< threshold of 4-ethylguaiacol [mg/L]
    double ethylPhenolThreshold = .30;   ///< threshold of 4-ethylphenol [mg/L]
    double vinylGuaiacolThreshold = .30; ///< threshold of 4-vinylguaiacol [mg/L]
    double vinylPhenolThreshold = .25;   ///< threshold of 4-vinylphenol [mg/L]
    double vinylWeight = .5;             ///< weight of the vinyl phenols in funk
    double funkSteepness = 1.2;          ///< steepness of funk
    double middleFunk = 6.0;             ///< flavour units that score 5 for funk
    double acidityScale = 1.95;          ///< scale of the acidity score [points]
    double acidityExponent = .65;        ///< exponent of the acidity score
    double ownAcidity = 1.5;             ///< titratable acidity of the beer itself that does not taste sour [g/L]
    double carbonation = 2.5;            ///< carbonation the tasting assumes [vol]
    double bodyPerStep = .35;            ///< body for one just noticeable step of viscosity [points]
    double bodyPerExtract = .030;        ///< body for real extract [points/(g/L)]
    double bodyPerAlcohol = .020;        ///< body for alcohol [points/(g/L)]
    double bodyPerGlycerol = .05;        ///< body for glycerol [points/(g/L)]
    double glucanThickening = .25;       ///< intrinsic viscosity of beta-glucan [L/g]
    double arabinoxylanThickening = .10; ///< intrinsic viscosity of arabinoxylan [L/g]
    double lacticThreshold = .55;        ///< lactic acid tasted when added to beer [g/L]
    double aceticThreshold = .130;       ///< acetic acid tasted when added to beer [g/L]
    double aceticWeight = .45;           ///< extra sourness of acetic acid as titratable acidity [g/g]
    double alcoholSoftens = .01;         ///< sourness lost to alcohol above 5 % vol [1/% vol]
    double co2Sharpens = .04;            ///< sourness won by carbonation above 2.4 volumes [1/vol]
    double viscosityStep = 1.093;        ///< ratio of viscosities just told apart
    double waterViscosity = 1.002;       ///< viscosity of water at 20 C [mPa s]
    double alcoholViscosity = .0045;     ///< viscosity for alcohol [mPa s L/g]
    double extractViscosity = .0060;     ///< viscosity for real extract [mPa s L/g]
    double glycerolViscosity = .0026;    ///< viscosity for glycerol [mPa s L/g]
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
