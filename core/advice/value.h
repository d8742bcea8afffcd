// SPDX-License-Identifier: GPL-3.0-or-later
// What one more taster now is worth: how much cheaper the best plan is expected to be once he has spoken.
#pragma once

#include "advice/loss.h"

namespace staveline::advice {

/// A plan as far as a tasting could change what is thought of it.
struct Weighed {
    std::vector<Expected> draws;
    std::vector<Scores> withNow; ///< covariance of the coming offsets with that of the beer now [points^2]
    double penalty = 0;          ///< effort
};

/// The tasting: variance of what is known now and the taster's error, by dimension [points^2].
struct OneMore {
    Scores now, error;
    PerDimension<bool> tastes{{true, true, true}}; ///< false: its posterior is left as it is
};

struct Worth {
    double best = 0;  ///< of the cheapest plan as things are
    double after = 0; ///< expected of the one that is then the cheapest
    [[nodiscard]] double value() const { return best - after; }
};
/// Five Gauss-Hermite nodes a dimension. `plans` is not empty.
[[nodiscard]] Worth worthOfTasting(const Goal& goal, std::span<const Weighed> plans, const OneMore& tasting);

/// The value for all dimensions that a taster could still help with today, and the one that most of it rests on.
[[nodiscard]] TastingValue valueOfTasting(const AdviceInput& input, const Goal& goal, std::span<const Weighed> plans);

} // namespace staveline::advice
