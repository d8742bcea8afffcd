// SPDX-License-Identifier: GPL-3.0-or-later
#include "vessel/age_plan.h"

#include "vessel/routine.h"

#include <algorithm>
#include <cmath>

namespace staveline::vessel {
namespace {

constexpr double asGoodAs = 1e-6; // [d] of a day that is reached: sums of ages do not come out even

} // namespace

Day ageReached(const LedgerState& now, Days wanted) {
    const double missing = std::clamp(wanted.d - now.meanAge.d, -longestAge, longestAge);
    return now.on + std::chrono::days{std::lround(std::ceil(missing - asGoodAs))};
}

Exchange exchangeOn(const LedgerState& now, const AgeAim& aim, Day draw, Days refillAge) {
    const Days until{static_cast<double>(daysBetween(now.on, draw))};
    return {volumeOn(now, aim.shape, draw) + aim.drawn, aim.filled, Days{now.meanAge.d + until.d}, refillAge};
}

Days ageAfter(const Exchange& exchange, Litres draw) {
    const double stays = std::clamp((exchange.held.l - draw.l) / exchange.filled.l, 0.0, 1.0);
    return {stays * exchange.age.d + (1 - stays) * exchange.refillAge.d};
}

std::optional<Litres> drawToReach(const Exchange& exchange, Days wanted) {
    const auto share = shareToReach(exchange.age, wanted, exchange.refillAge);
    if (!share)
        return std::nullopt;
    const Litres draw = exchange.held - exchange.filled * (1 - share->of1);
    return draw.l >= 0 ? std::optional(draw) : std::nullopt;
}

} // namespace staveline::vessel
