// SPDX-License-Identifier: GPL-3.0-or-later
#include "brewing/mash_kinetics.h"

#include "brewing/adaptive.h"
#include "quantity/arrhenius.h"
#include "quantity/constants.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace staveline::brewing {
namespace {

namespace k = constants::mash;
constexpr double stepTolerance = 1e-5; ///< of a starch fraction or an activity
constexpr double noEnzyme = 1e-30;     ///< stands for none, so that its logarithm is finite

// Places in the state. Enzymes are carried as logarithms: at a constant temperature they fall in a straight line,
// which any method follows exactly. The five extents say how much starch has gone through each reaction; every pool is
// a sum of extents, so that mass balances by construction.
enum Place : std::size_t {
    logAlpha,
    logBeta,
    logBetaStable,
    logLimit,
    largeLeft,
    smallLeft,
    alphaOnPolymer,
    betaOnPolymer,
    betaOnOpen,
    alphaOnOpen,
    limitOnBranched
};

/// Activity against pH, 1 at pH 5.5 where the rates were fitted.
double bell(Ph ph, double optimum, double width) {
    const auto at = [&](double x) { return std::exp(-.5 * std::pow((x - optimum) / width, 2)); };
    return at(ph.ph) / at(5.5);
}

/// Share of granules that stay closed at this temperature.
double closedShare(double celsius, double mean, double spread) {
    return .5 * std::erfc((celsius - mean) / (spread * std::numbers::sqrt2));
}

/// Extract [%] in the liquor of a mash of pale malt.
double liquorExtract(double litresPerKilogram) {
    return 76.5 / (litresPerKilogram + .81);
}

/// An error in the logarithm of an activity matters as much as that activity.
template <class State> double errorSize(const State& y, const State& error) {
    double size = 0;
    for (std::size_t i = 0; i < y.size(); ++i)
        size = std::max(size, std::abs(error[i]) * (i <= logLimit ? std::exp(y[i]) : 1));
    return size;
}

double perSecond(double halfLifeMinutes) {
    return std::numbers::ln2 / 60 / halfLifeMinutes;
}

} // namespace

struct MashKinetics::Rates {
    double gelatinise, largeClosed, smallClosed;
    double alphaPolymer, alphaOpen, betaPolymer, betaOpen, limit;
    double alphaDeath, betaDeath, betaStableDeath, limitDeath;
};

MashKinetics::MashKinetics(Portion first, Ph ph, LitresPerKilogram liquor, const BrewParameters& parameters)
    : alphaBell_(bell(ph, k::alphaPh, k::alphaPhWidth)), betaBell_(bell(ph, k::betaPh, k::betaPhWidth)),
      limitBell_(bell(ph, k::limitPh, k::limitPhWidth)),
      thickness_(std::pow(liquor.lPerKg / 2.5, k::thicknessExponent)),
      shift_(k::gelatiniseSlope * (liquorExtract(liquor.lPerKg) - liquorExtract(3.0)) + parameters.gelatinisationShift),
      betaHalfLife_(parameters.betaHalfLife65), betaStableShare_(parameters.betaStableShare),
      betaStableHalfLife_(parameters.betaStableHalfLife), limitRate_(k::limit * parameters.limitDextrinaseRate) {
    state_[logAlpha] = state_[logBeta] = state_[logBetaStable] = state_[logLimit] = std::log(noEnzyme);
    add(first);
}

void MashKinetics::add(Portion late) {
    const auto put = [&](Place enzyme, double activity) {
        state_[enzyme] = std::log(std::max(noEnzyme, std::exp(state_[enzyme]) + activity));
    };
    put(logAlpha, late.enzyme);
    put(logBeta, (1 - betaStableShare_) * late.enzyme);
    put(logBetaStable, betaStableShare_ * late.enzyme);
    put(logLimit, late.enzyme);
    large_ += (1 - k::smallGranules) * late.starch;
    small_ += k::smallGranules * late.starch;
    state_[largeLeft] += (1 - k::smallGranules) * late.starch;
    state_[smallLeft] += k::smallGranules * late.starch;
}

MashKinetics::Rates MashKinetics::ratesAt(double celsius) const {
    const double alpha = alphaBell_ * arrhenius(k::alphaEnergy, 65, celsius);
    const double beta = betaBell_ * arrhenius(k::betaEnergy, 65, celsius);
    const double limit = limitBell_ * arrhenius(k::limitEnergy, 65, celsius);
    return {.gelatinise = k::gelatinise60 * arrhenius(k::gelatiniseEnergy, 60, celsius),
            .largeClosed = closedShare(celsius, k::largeMean + shift_, k::largeSpread),
            .smallClosed = closedShare(celsius, k::smallMean + shift_, k::smallSpread),
            .alphaPolymer = k::alphaPolymer * alpha,
            .alphaOpen = k::alphaOpen * alpha,
            .betaPolymer = k::betaPolymer * beta,
            .betaOpen = k::betaOpen * beta,
            .limit = limitRate_ * limit,
            .alphaDeath = perSecond(k::alphaHalfLife) * arrhenius(k::alphaDeathEnergy, 65, celsius),
            .betaDeath = thickness_ * perSecond(betaHalfLife_) * arrhenius(k::betaDeathEnergy, 65, celsius),
            .betaStableDeath =
                thickness_ * perSecond(betaStableHalfLife_) * arrhenius(k::betaStableDeathEnergy, 65, celsius),
            .limitDeath = thickness_ * perSecond(k::limitHalfLife) * arrhenius(k::limitDeathEnergy, 65, celsius)};
}

MashKinetics::State MashKinetics::change(const Rates& r, const State& y) const {
    const double polymer = large_ - y[largeLeft] + small_ - y[smallLeft] - y[alphaOnPolymer] - y[betaOnPolymer];
    const double branched = k::branched * y[alphaOnPolymer] + k::lateBranched * y[alphaOnOpen] - y[limitOnBranched];
    const double open = (1 - k::branched - k::maltose - k::maltotriose - k::glucose) * y[alphaOnPolymer] -
                        y[betaOnOpen] - y[alphaOnOpen] + y[limitOnBranched];
    const double alpha = std::exp(y[logAlpha]), limit = std::exp(y[logLimit]);
    const double beta = std::exp(y[logBeta]) + std::exp(y[logBetaStable]);
    return {-r.alphaDeath,
            -r.betaDeath,
            -r.betaStableDeath,
            -r.limitDeath,
            -r.gelatinise * std::max(0., y[largeLeft] - r.largeClosed * large_),
            -r.gelatinise * std::max(0., y[smallLeft] - r.smallClosed * small_),
            r.alphaPolymer * alpha * polymer,
            r.betaPolymer * beta * polymer,
            r.betaOpen * beta * open,
            r.alphaOpen * alpha * open,
            r.limit * limit * branched};
}

void MashKinetics::advance(const MashSegment& segment) {
    const double seconds = 60 * segment.minutes;
    if (segment.isRest()) {
        const Rates rates = ratesAt(segment.from);
        integrate(
            state_, seconds, stepTolerance, [&](double, const State& y) { return change(rates, y); }, errorSize<State>);
    } else
        integrate(
            state_, seconds, stepTolerance,
            [&](double t, const State& y) { return change(ratesAt(segment.at(t / 60)), y); }, errorSize<State>);
}

StarchPools MashKinetics::pools() const {
    const auto& y = state_;
    const double r1 = y[alphaOnPolymer], r2 = y[betaOnPolymer], r3 = y[betaOnOpen], r4 = y[alphaOnOpen],
                 r5 = y[limitOnBranched];
    const double lateMade = (1 - k::lateBranched) * r4;
    StarchPools out;
    out.granules = y[largeLeft] + y[smallLeft];
    out.polymer = large_ + small_ - out.granules - r1 - r2;
    out.open = (1 - k::branched - k::maltose - k::maltotriose - k::glucose) * r1 - r3 - r4 + r5;
    out.branched = k::branched * r1 + k::lateBranched * r4 - r5;
    out.maltose = k::maltose * r1 + r2 + (1 - k::openMaltotriose - k::openGlucose) * r3 +
                  (1 - k::lateMaltotriose - k::lateGlucose) * lateMade;
    out.maltotriose = k::maltotriose * r1 + k::openMaltotriose * r3 + k::lateMaltotriose * lateMade;
    out.glucose = k::glucose * r1 + k::openGlucose * r3 + k::lateGlucose * lateMade;
    return out;
}

std::array<double, 3> MashKinetics::enzymes() const {
    return {std::exp(state_[logAlpha]), std::exp(state_[logBeta]) + std::exp(state_[logBetaStable]),
            std::exp(state_[logLimit])};
}

MaltExtract extractOf(const StarchPools& pools) {
    // Water taken up when starch is split: anhydroglucose to sugar.
    constexpr double toGlucose = 180. / 162, toMaltose = 342. / 324, toMaltotriose = 504. / 486, toDextrin = 1.012;
    // The steps leave a hundred-thousandth of error, which must not make a pool negative.
    const auto dry = [](double pool, double hydration) {
        return k::starchShare / k::starchHydration * hydration * std::max(0., pool);
    };
    return {.sugar = k::sugarShare,
            .glucose = dry(pools.glucose, toGlucose),
            .maltose = dry(pools.maltose, toMaltose),
            .maltotriose = dry(pools.maltotriose, toMaltotriose),
            .dextrin = dry(pools.polymer + pools.open + pools.branched, toDextrin),
            .other = 1 - k::starchShare - k::sugarShare};
}

} // namespace staveline::brewing
