// SPDX-License-Identifier: GPL-3.0-or-later
// What a plan is measured by: the loss to be expected over the coming draws, which is flat near the target, and effort.
// All in squared bands.
#pragma once

#include "advice/outlook.h"
#include "quantity/constants.h"

namespace staveline::advice {

/// Distance from the wanted score that costs nothing [bands].
inline constexpr double slack = constants::advice::slack;

/// E[max(0, |x| - free)^2] of a normal x with this mean and variance.
[[nodiscard]] double expectedHinge(double mean, double variance, double free);

struct Goal {
    PerDimension<tasting::TargetWindow> windows;
    PerDimension<bool> counts{{true, true, true}}; ///< false: nothing is known of it, so it steers nothing
    double effortWeight = 0;                       ///< per unit of effort
};
[[nodiscard]] Goal goalOf(const AdviceInput& input);
/// lambda, times the square of what `horizon` refills of `share` let a kept change show.
[[nodiscard]] double effortWeight(double lambda, Share share, int horizon);

/// Of one dimension at one draw, 0 where it does not count.
[[nodiscard]] double lossAt(const Goal& goal, Dimension dimension, double mean, double variance);
/// By dimension, mean over the draws.
[[nodiscard]] Scores lossOf(const Goal& goal, std::span<const Expected> draws);
[[nodiscard]] double total(const Scores& loss);

} // namespace staveline::advice
