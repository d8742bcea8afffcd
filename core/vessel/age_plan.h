// SPDX-License-Identifier: GPL-3.0-or-later
// Planning by age: when the beer in a vessel is as old as it is wanted at the draw, and what a draw and its refill make
// of that. Mean ages are weighted by volume and count from the brew day of what went in: a day makes all of it a day
// older, and what evaporates is as old as what stays.
#pragma once

#include "vessel/ledger.h"

namespace staveline::vessel {

struct AgeAim {
    Days wanted{0};     ///< mean age at the draw, above 0
    Litres draw{0};     ///< for the coming refill, in all
    Litres drawn{0};    ///< of it out of the vessel already
    Litres filled{225}; ///< held after the refill, above 0
    VesselShape shape;
};

/// The first day on which the beer is that old if nothing but time passes; of older beer, the day on which it was.
[[nodiscard]] Day ageReached(const LedgerState& now, Days wanted);

/// A vessel on the day of a draw, and what goes in for it.
struct Exchange {
    Litres held{0};     ///< before the draw
    Litres filled{225}; ///< after the refill, above 0
    Days age{0};        ///< mean, before the draw
    Days refillAge{0};  ///< mean, of what goes in
};
[[nodiscard]] Exchange exchangeOn(const LedgerState& now, const AgeAim& aim, Day draw, Days refillAge);
/// Mean age once `draw` was taken and the vessel filled again.
[[nodiscard]] Days ageAfter(const Exchange& exchange, Litres draw);
/// The draw that makes it `wanted`; none: what evaporated takes more than that, or what goes in is no younger.
[[nodiscard]] std::optional<Litres> drawToReach(const Exchange& exchange, Days wanted);

} // namespace staveline::vessel
