// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forward/predict.h"
#include "support/neutral_parameters.h"
#include "support/property.h"
#include "support/reference_beers.h"
#include "support/reference_pantry.h"

#include <cmath>

namespace staveline::forward_test {

inline const forward::Parameters usual;                                    ///< as shipped
inline const forward::Parameters neutral = reference::neutralParameters(); ///< as the vectors have it

/// The refill of the vectors as a brewed beer.
inline brewing::RefillBeer vectorRefill() {
    brewing::RefillBeer beer;
    beer.beer = reference::refillBeer;
    return beer;
}

inline brewing::BrewInput baseInput() {
    return reference::inputFor(reference::baseRecipe());
}

inline double uniform(double low, double high) {
    return low + (high - low) * *rc::gen::inRange(0, 1001) / 1000.0;
}

inline bool sound(const culture::VesselState& state) {
    for (const auto pool : compositionPools)
        if (!std::isfinite(state.beer.*pool))
            return false;
    return std::isfinite(state.lactics) && std::isfinite(state.brett) && std::isfinite(state.hopTolerance);
}

/// Any double, ordinary or not.
inline double anyNumber() {
    constexpr double inf = std::numeric_limits<double>::infinity();
    const double odd[] = {std::numeric_limits<double>::quiet_NaN(), inf, -inf, 0, -1, 1e300, -1e300, 1e-300};
    const auto pick = *rc::gen::inRange<std::size_t>(0, 12);
    return pick < std::size(odd) ? odd[pick] : *rc::gen::arbitrary<double>();
}

} // namespace staveline::forward_test
