// SPDX-License-Identifier: GPL-3.0-or-later
#include "brewing/glucan.h"

#include "brewing/adaptive.h"
#include "quantity/arrhenius.h"
#include "quantity/constants.h"

#include <algorithm>
#include <cmath>

namespace staveline::brewing {
namespace {

namespace k = constants::glucan;
constexpr double stepTolerance = 2e-5; ///< g per kg of grist, or of the enzyme's activity
constexpr double noEnzyme = 1e-30;     ///< stands for none, so that its logarithm is finite

// Places in the state. The enzyme is a logarithm: at a constant temperature it falls in a straight line, exactly.
// "Whole" is what has not been cut in the grain, loose or not; "inside" is the part of it still in the grain.
enum Place : std::size_t { logGlucanase, maltWhole, maltInside, rawWhole, rawInside, loose };

/// An error in the logarithm of the enzyme matters as much as the enzyme.
template <class State> double errorSize(const State& y, const State& error) {
    double size = std::abs(error[logGlucanase]) * std::exp(y[logGlucanase]);
    for (std::size_t i = maltWhole; i < y.size(); ++i)
        size = std::max(size, std::abs(error[i]));
    return size;
}

} // namespace

struct GlucanRelease::Rates {
    double cut, attack, death, maltClosed, rawClosed;
};

GlucanRelease::GlucanRelease(const GlucanPortion& first) {
    state_[logGlucanase] = std::log(noEnzyme);
    add(first);
}

void GlucanRelease::add(const GlucanPortion& late) {
    state_[logGlucanase] = std::log(std::max(noEnzyme, std::exp(state_[logGlucanase]) + late.glucanase));
    for (auto malt : {maltWhole, maltInside})
        state_[malt] += late.malt;
    for (auto raw : {rawWhole, rawInside})
        state_[raw] += late.raw;
}

GlucanRelease::Rates GlucanRelease::ratesAt(double celsius) {
    const double warm = arrhenius(k::cutEnergy, 45, celsius);
    return {.cut = k::cut45 * warm,
            .attack = k::attack45 * warm,
            .death = k::glucanaseDeath60 * arrhenius(k::deathEnergy, 60, celsius),
            .maltClosed = 1 - std::clamp(k::maltAt45 + k::maltPerC * (celsius - 45), k::maltLow, k::maltHigh),
            .rawClosed = 1 - std::clamp(k::rawAt45 + k::rawPerC * (celsius - 45), k::rawLow, k::rawHigh)};
}

GlucanRelease::State GlucanRelease::change(const Rates& r, const State& y) {
    const double glucanase = std::exp(y[logGlucanase]);
    const double maltLoose = k::release * std::max(0., y[maltInside] - r.maltClosed * y[maltWhole]);
    const double rawLoose = k::release * std::max(0., y[rawInside] - r.rawClosed * y[rawWhole]);
    const double maltCut = r.attack * glucanase * y[maltInside];
    const double rawCut = k::rawAttack * r.attack * glucanase * y[rawInside];
    return {-r.death, -maltCut,           -maltLoose - maltCut,
            -rawCut,  -rawLoose - rawCut, maltLoose + rawLoose - r.cut * glucanase * y[loose]};
}

void GlucanRelease::advance(const MashSegment& segment) {
    if (segment.isRest()) {
        const Rates rates = ratesAt(segment.from);
        integrate(
            state_, segment.minutes, stepTolerance, [&](double, const State& y) { return change(rates, y); },
            errorSize<State>);
    } else
        integrate(
            state_, segment.minutes, stepTolerance,
            [&](double t, const State& y) { return change(ratesAt(segment.at(t)), y); }, errorSize<State>);
}

} // namespace staveline::brewing
