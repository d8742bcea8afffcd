// SPDX-License-Identifier: GPL-3.0-or-later
// From chemistry to the three scores a trained palate gives, each 0..10.
#pragma once

#include "quantity/composition.h"
#include "quantity/constants.h"
#include "quantity/dimension.h"

namespace staveline::tasting {

/// Constants of the score maps. Rows of resources/data/parameters.csv.
struct ScoreParameters {
    double ethylGuaiacolThreshold = constants::ethylGuaiacolThreshold; ///< threshold of 4-ethylguaiacol [mg/L]
    double ethylPhenolThreshold = constants::ethylPhenolThreshold;     ///< threshold of 4-ethylphenol [mg/L]
    double vinylGuaiacolThreshold = constants::vinylGuaiacolThreshold; ///< threshold of 4-vinylguaiacol [mg/L]
    double vinylPhenolThreshold = constants::vinylPhenolThreshold;     ///< threshold of 4-vinylphenol [mg/L]
    double vinylWeight = constants::vinylWeight;                       ///< weight of the vinyl phenols in funk
    double funkSteepness = constants::funkSteepness;                   ///< steepness of funk
    double middleFunk = constants::middleFunk;                         ///< flavour units that score 5 for funk
    double acidityScale = constants::acidityScale;                     ///< scale of the acidity score [points]
    double acidityExponent = constants::acidityExponent;               ///< exponent of the acidity score
    double ownAcidity = constants::ownAcidity; ///< titratable acidity of the beer itself that does not taste sour [g/L]
    double carbonation = constants::carbonation;           ///< carbonation the tasting assumes [vol]
    double bodyPerStep = constants::bodyPerStep;           ///< body for one just noticeable step of viscosity [points]
    double bodyPerExtract = constants::bodyPerExtract;     ///< body for real extract [points/(g/L)]
    double bodyPerAlcohol = constants::bodyPerAlcohol;     ///< body for alcohol [points/(g/L)]
    double bodyPerGlycerol = constants::bodyPerGlycerol;   ///< body for glycerol [points/(g/L)]
    double glucanThickening = constants::glucanThickening; ///< intrinsic viscosity of beta-glucan [L/g]
    double arabinoxylanThickening = constants::arabinoxylanThickening; ///< intrinsic viscosity of arabinoxylan [L/g]
    double ordinaryArabinoxylan = constants::ordinaryArabinoxylan;     ///< of the beer that scores 5 for body [g/L]
    double lacticThreshold = constants::lacticThreshold;               ///< lactic acid tasted when added to beer [g/L]
    double aceticThreshold = constants::aceticThreshold;               ///< acetic acid tasted when added to beer [g/L]
    double aceticWeight = constants::aceticWeight;     ///< extra sourness of acetic acid as titratable acidity [g/g]
    double alcoholSoftens = constants::alcoholSoftens; ///< sourness lost to alcohol above 5 % vol [1/% vol]
    double co2Sharpens = constants::co2Sharpens;       ///< sourness won by carbonation above 2.4 volumes [1/vol]
    double viscosityStep = constants::viscosityStep;   ///< ratio of viscosities just told apart
    double waterViscosity = constants::waterViscosity; ///< viscosity of water at 20 C [mPa s]
    double alcoholViscosity = constants::alcoholViscosity;   ///< viscosity for alcohol [mPa s L/g]
    double extractViscosity = constants::extractViscosity;   ///< viscosity for real extract [mPa s L/g]
    double glycerolViscosity = constants::glycerolViscosity; ///< viscosity for glycerol [mPa s L/g]
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

} // namespace staveline::tasting
