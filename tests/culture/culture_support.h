// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "culture/vessel_state.h"
#include "support/neutral_parameters.h"
#include "support/property.h"
#include "support/reference_beers.h"

#include <cmath>

namespace staveline::culture_test {

inline constexpr culture::CultureParameters usual;                                 ///< as shipped
inline constexpr culture::CultureParameters neutral = reference::neutralCulture(); ///< as the vectors have it

inline double uniform(double low, double high) {
    return low + (high - low) * *rc::gen::inRange(0, 1001) / 1000.0;
}

/// A vessel somewhere between freshly filled and long settled.
inline culture::VesselState anyVessel() {
    culture::VesselState state = reference::settledVessel;
    state.beer = blend(state.beer, reference::refillBeer, {uniform(0, 1)});
    state.beer.isoCis = uniform(0, 20);
    state.lactics = uniform(.01, 1);
    state.brett = uniform(.01, 1);
    state.hopTolerance = uniform(8, 60);
    return state;
}

/// Oxygen as acetic acid, and the alcohol it costs [g/L per day].
inline constexpr double aceticPerDay(const culture::AgeConditions& c, const culture::CultureParameters& p) {
    return p.oxygenToAcetic * 1.877 * c.oxygenPerYear / 365e3;
}

/// Every number of a state, for comparisons pool by pool.
inline std::vector<double> numbers(const culture::VesselState& state) {
    std::vector<double> all;
    for (const auto pool : compositionPools)
        all.push_back(state.beer.*pool);
    all.insert(all.end(), {state.lactics, state.brett, state.hopTolerance, state.enzyme});
    return all;
}

/// The largest difference relative to the larger value, small values against `floor`.
inline double relativeDifference(const culture::VesselState& a, const culture::VesselState& b, double floor = 1e-3) {
    const auto x = numbers(a), y = numbers(b);
    double worst = 0;
    for (std::size_t i = 0; i < x.size(); ++i)
        worst = std::max(worst, std::abs(x[i] - y[i]) / std::max({std::abs(x[i]), std::abs(y[i]), floor}));
    return worst;
}

} // namespace staveline::culture_test
