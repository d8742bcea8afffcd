// SPDX-License-Identifier: GPL-3.0-or-later
// Private to the room: shares of a whole that come nearest to aims, none below 0 and none above what there is.
#pragma once

#include <optional>
#include <vector>

namespace staveline::finishing {

struct ShareProblem {
    std::vector<std::vector<double>> rows; ///< for each aim what each source has, in errors of the aim
    std::vector<double> aims;              ///< the same unit
    std::vector<double> most;              ///< of each source, above 0; at most five sources
};

/// Least squares over x with 0 <= x <= most and a sum of 1, exact: every set of active limits is tried, which five
/// sources make 243 small systems. Of many answers the one with the evenest shares. None: the limits do not reach 1.
[[nodiscard]] std::optional<std::vector<double>> nearestShares(const ShareProblem& problem);

/// Sum of the squared misses.
[[nodiscard]] double squaredMiss(const ShareProblem& problem, const std::vector<double>& shares);

} // namespace staveline::finishing
