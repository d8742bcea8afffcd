// SPDX-License-Identifier: GPL-3.0-or-later
// The few statistics a tasting needs.
#pragma once

#include "quantity/constants.h"

#include <span>
#include <vector>

namespace staveline::tasting {

[[nodiscard]] double normalCdf(double z);
/// 0 for no values.
[[nodiscard]] double meanOf(std::span<const double> values);
/// Sum of squared distances from the mean, corrected for the rounding of the mean.
[[nodiscard]] double sumOfSquares(std::span<const double> values);

/// Scales; about 95 % as efficient as the mean on normal data. A row of resources/data/rules.csv.
inline constexpr double huberTuning = constants::tasting::huberTuning;
/// Huber's weights min(1, 1.5 scale / distance) about the mean they give themselves, each value counting with its
/// precision. `scales` are what one value is expected to scatter before any data, all above 0.
/// Source key: huber_1964.
[[nodiscard]] std::vector<double> huberWeights(std::span<const double> values, std::span<const double> precisions,
                                               std::span<const double> scales);

} // namespace staveline::tasting
