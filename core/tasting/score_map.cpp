// SPDX-License-Identifier: GPL-3.0-or-later
#include "tasting/score_map.h"

#include "quantity/acid_base.h"

#include <algorithm>
#include <cmath>

namespace staveline {
namespace {

/// How much alcohol and carbonation change sourness at the same acid.
double sournessFactor(PercentVol alcohol, const ScoreParameters& p) {
    const double softened = 1 - p.alcoholSoftens * std::max(0.0, alcohol.pct - 5);
    return std::max(.1, softened) * (1 + p.co2Sharpens * (p.co2v - 2.4));
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
constexpr BodyOf ordinaryBeer{40, 39.5, 2, .15, .5};

double viscosity(const BodyOf& b, const ScoreParameters& p) {
    const double thin = p.etaWater + p.etaAlcohol * b.ethanol + p.etaExtract * b.extract + p.etaGlycerol * b.glycerol;
    return thin * thickening(p.ivBg * b.betaGlucan) * thickening(p.ivAx * b.arabinoxylan);
}

BodyOf bodyOf(const Composition& beer) {
    return {realExtract(beer), beer.ethanol, beer.glycerol, beer.betaGlucan, beer.arabinoxylan};
}

double bodyScore(const Composition& beer, const ScoreParameters& p) {
    constexpr double fullestAlcohol = 79; // g/L, about 10 % vol: more does not add to body
    const BodyOf b = bodyOf(beer);
    const double steps = std::log(viscosity(b, p) / viscosity(ordinaryBeer, p)) / std::log(p.jnd);
    const double score = 5 + p.bJnd * steps + p.bRe * (b.extract - ordinaryBeer.extract) +
                         p.bAl * (std::min(b.ethanol, fullestAlcohol) - ordinaryBeer.ethanol) +
                         p.bGl * (b.glycerol - ordinaryBeer.glycerol);
    return std::clamp(score, 0.0, 10.0);
}

double funkScore(const FunkParts& parts, const ScoreParameters& p) {
    const double units = std::max(parts.spice + parts.horse, 1e-9);
    return 10 / (1 + std::pow(p.sK / units, p.sn));
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
    return {beer.ethylGuaiacol / p.thrEG + p.wV * beer.vinylGuaiacol / p.thrVG,
            beer.ethylPhenol / p.thrEP + p.wV * beer.vinylPhenol / p.thrVP};
}

AcidParts acidParts(const Composition& beer, const ScoreParameters& p) {
    return {beer.lactic / p.thrLactic, beer.acetic / p.thrAcetic};
}

double viscosity(const Composition& beer, const ScoreParameters& parameters) {
    return viscosity(bodyOf(beer), parameters);
}

double acidityScore(GramsPerLitre ta, GramsPerLitre acetic, PercentVol alcohol, const ScoreParameters& p) {
    const double aboveOwn = std::max(0.0, ta.gPerL + p.wAcetic * acetic.gPerL - p.s0);
    const double plain = std::min(10.0, p.sa * std::pow(aboveOwn, p.se));
    return std::clamp(plain * sournessFactor(alcohol, p), 0.0, 10.0);
}

GramsPerLitre titratableAcidityFor(double score, GramsPerLitre acetic, PercentVol alcohol, const ScoreParameters& p) {
    const double plain = std::clamp(score / sournessFactor(alcohol, p), 0.0, 10.0);
    const double effective = p.s0 + std::pow(plain / p.sa, 1 / p.se);
    return {std::max(0.0, effective - p.wAcetic * acetic.gPerL)};
}

} // namespace staveline
