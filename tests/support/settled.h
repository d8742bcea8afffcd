// SPDX-License-Identifier: GPL-3.0-or-later
// Where equal cycles lead a vessel.
#pragma once

#include "forward/predict.h"

#include <algorithm>
#include <cmath>

namespace staveline::reference {

/// Repeats the cycle from draw to draw until the scores move by less than 1e-4 points, at most `most` times.
inline forward::Outcome settledOutcome(const forward::Parameters& parameters, const culture::VesselState& start,
                                       const brewing::RefillBeer& beer, forward::Plan plan, int most = 40) {
    plan.toThisDraw = {0};
    auto outcome = outcomeOf(start, parameters);
    for (int i = 0; i < most; ++i) {
        const auto before = outcome.scores;
        outcome = predict(parameters, outcome.state, beer, plan).nextDraw;
        double moved = 0;
        for (const Dimension d : allDimensions)
            moved = std::max(moved, std::abs(outcome.scores[d] - before[d]));
        if (moved < 1e-4)
            break;
    }
    return outcome;
}

} // namespace staveline::reference
