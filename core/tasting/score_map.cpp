// SPDX-License-Identifier: GPL-3.0-or-later
#include "tasting/score_map.h"

#include "quantity/acid_base.h"

#include <algorithm>
#include <cmath>

namespace staveline::tasting {
namespace {

/// How much alcohol and carbonation change sourness at the same acid.
double sournessFactor(PercentVol alcohol, const ScoreParameters& p) {
    const double softened = 1 - p.alcoholSoftens * std::max(0.0, alcohol.pct - 5);
    return std::max(.1, softened) * (1 + p.co2Sharpens * (p.carbonation - 2.4));
}

double realExtract(const Composition& beer) {
    return beer.carbohydrate() + beer.otherExtract;
}

/// Relative thickening by one gum: Huggins form of its intrinsic viscosity times concentration.
double thickening(double intrinsicTimesConcentration) {
    return 1 + intrinsicTimesConcentration + .4 * intrinsicTimesConcentration * intrinsicTimesConcentration;
}

/// What is in solution beside the water [g/L]; the ordinary 5 % beer is the zero point of the body scale.
struct BodyOf {
    double extract, ethanol, glycerol, betaGlucan, arabinoxylan;
};
constexpr BodyOf ordinaryBeer(const ScoreParameters& p) {
    return {40, 39.5, 2, .15, p.ordinaryArabinoxylan};
}

double viscosity(const BodyOf& b, const ScoreParameters& p) {
    const double thin = p.waterViscosity + p.alcoholViscosity * b.ethanol + p.extractViscosity * b.extract +
                        p.glycerolViscosity * b.glycerol;
    return thin * thickening(p.glucanThickening * b.betaGlucan) * thickening(p.arabinoxylanThickening * b.arabinoxylan);
}

BodyOf bodyOf(const Composition& beer) {
    return {realExtract(beer), beer.ethanol, beer.glycerol, beer.betaGlucan, beer.arabinoxylan};
}

double bodyScore(const Composition& beer, const ScoreParameters& p) {
    constexpr double fullestAlcohol = 79; // g/L, about 10 % vol: more does not add to body
    const BodyOf b = bodyOf(beer), ordinary = ordinaryBeer(p);
    const double steps = std::log(viscosity(b, p) / viscosity(ordinary, p)) / std::log(p.viscosityStep);
    const double score = 5 + p.bodyPerStep * steps + p.bodyPerExtract * (b.extract - ordinary.extract) +
                         p.bodyPerAlcohol * (std::min(b.ethanol, fullestAlcohol) - ordinary.ethanol) +
                         p.bodyPerGlycerol * (b.glycerol - ordinary.glycerol);
    return std::clamp(score, 0.0, 10.0);
}

double funkScore(const FunkParts& parts, const ScoreParameters& p) {
    const double units = std::max(parts.spice + parts.horse, 1e-9);
    return 10 / (1 + std::pow(p.middleFunk / units, p.funkSteepness));
}

} // namespace

Scores scores(const Composition& beer, const ScoreParameters& parameters) {
    Scores out;
    out[Dimension::acidity] = acidityScore(titratableAcidity(beer), {beer.acetic}, beer.alcohol(), parameters);
    out[Dimension::funk] = funkScore(funkParts(beer, parameters), parameters);
    out[Dimension::body] = bodyScore(beer, parameters);
    return out;
}

FunkParts funkParts(const Composition& beer, const ScoreParameters& p) {
    return {beer.ethylGuaiacol / p.ethylGuaiacolThreshold +
                p.vinylWeight * beer.vinylGuaiacol / p.vinylGuaiacolThreshold,
            beer.ethylPhenol / p.ethylPhenolThreshold + p.vinylWeight * beer.vinylPhenol / p.vinylPhenolThreshold};
}

AcidParts acidParts(const Composition& beer, const ScoreParameters& p) {
    return {beer.lactic / p.lacticThreshold, beer.acetic / p.aceticThreshold};
}

double viscosity(const Composition& beer, const ScoreParameters& parameters) {
    return viscosity(bodyOf(beer), parameters);
}

double acidityScore(GramsPerLitre ta, GramsPerLitre acetic, PercentVol alcohol, const ScoreParameters& p) {
    const double aboveOwn = std::max(0.0, ta.gPerL + p.aceticWeight * acetic.gPerL - p.ownAcidity);
    const double plain = std::min(10.0, p.acidityScale * std::pow(aboveOwn, p.acidityExponent));
    return std::clamp(plain * sournessFactor(alcohol, p), 0.0, 10.0);
}

GramsPerLitre titratableAcidityFor(double score, GramsPerLitre acetic, PercentVol alcohol, const ScoreParameters& p) {
    const double plain = std::clamp(score / sournessFactor(alcohol, p), 0.0, 10.0);
    const double effective = p.ownAcidity + std::pow(plain / p.acidityScale, 1 / p.acidityExponent);
    return {std::max(0.0, effective - p.aceticWeight * acetic.gPerL)};
}

} // namespace staveline::tasting
