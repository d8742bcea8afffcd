// SPDX-License-Identifier: GPL-3.0-or-later
// What a plan is measured by: gaps over the coming draws, uncertainty and effort, all in squared bands.
#pragma once

#include "advice/forecaster.h"

#include <span>

namespace staveline::advice {

/// How one dimension counts.
struct Aim {
    double wanted = 5;
    double band = 1;
    /// On hold: charged for being moved away, never paid for being moved nearer than it comes by itself.
    bool hold = false;
};

struct Goal {
    PerDimension<Aim> aims;
    Scores deviation;          ///< tasted minus modelled, added to every prediction
    std::vector<Scores> alone; ///< the coming draws if nothing is changed, deviation added
    double effortWeight = 0;   ///< per unit of effort
    double share = .35;        ///< of the refill, as in use
};

/// From verdicts and target: a nudge aims half-way, hold and wait keep what is there, the rest aims at the target.
[[nodiscard]] Goal goalFrom(const AdviceInput& input, Share share, const Trajectory& alone);

/// Scores of a trajectory with the deviation added.
[[nodiscard]] std::vector<Scores> anchored(const Trajectory& trajectory, const Scores& deviation);

/// Mean over the draws of the sum of squared gaps in bands.
[[nodiscard]] double gapCost(const Goal& goal, std::span<const Scores> draws);
/// The same for a variance at the next draw, which grows over the draws as a kept change does.
[[nodiscard]] double lossCost(const Goal& goal, const Scores& varianceAtNext);

} // namespace staveline::advice
