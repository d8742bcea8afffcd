// SPDX-License-Identifier: GPL-3.0-or-later
#include "culture/vessel_state.h"

#include <algorithm>

namespace staveline::culture {
namespace {

/// Culture after a draw and refill: what wood and lees hold does not leave with the beer.
double mixedCulture(double old, double fresh, double share, double held) {
    constexpr double never0 = 1e-6; // a vessel once inoculated is never sterile again
    return std::clamp(old * (1 - share * (1 - held)) + share * fresh, old > 0 ? never0 : 0.0, 1.0);
}

} // namespace

VesselState refill(const VesselState& old, const Composition& fresh, Share share, const CultureParameters& parameters,
                   const Inoculum& brought) {
    const double f = std::min(1.0, std::max(0.0, share.of1)); // NaN: nothing goes in
    if (f == 0)
        return old;
    VesselState out = old;
    out.beer = blend(old.beer, fresh, {f});
    out.lactics = mixedCulture(old.lactics, parameters.refillLactics + brought.lactics, f, parameters.heldBack);
    out.brett = mixedCulture(old.brett, parameters.refillBrett + brought.brett, f, parameters.heldBack);
    out.enzyme = (1 - f) * old.enzyme + f * brought.enzyme;
    return out;
}

VesselState youngVessel(const Composition& beer, const CultureParameters& parameters) {
    return {beer, parameters.startLactics, parameters.startBrett, parameters.hopTolerance};
}

} // namespace staveline::culture
