// SPDX-License-Identifier: GPL-3.0-or-later
// What each move of a plan does, so that the moves add up exactly to what the plan does.
#pragma once

#include "advice/baseline.h"
#include "advice/outlook.h"

namespace staveline::advice {

struct Contribution {
    Scores next, settled;
};

/// Forced moves one after another, from the settings before them; then the chosen ones, each as the mean of being moved
/// in their order and in the reverse order (for two that is the Shapley value). A move that cannot be brewed before
/// another (late grain before the rest it goes in after) counts on top of it in both. The forecaster takes
/// `baseline.before`, `baseline.start` and the chosen moves together.
struct Contributions {
    std::vector<Contribution> forced, chosen; ///< settled ones are 0 where the input does not ask for them
};
[[nodiscard]] Contributions contributionsOf(const AdviceInput& input, Forecaster& forecaster, const Baseline& baseline,
                                            const std::vector<LeverMove>& chosen);

} // namespace staveline::advice
