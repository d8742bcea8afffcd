// SPDX-License-Identifier: GPL-3.0-or-later
// How sure a sitting is, by who tasted: people whose bias the vessel has learned already count by what they scatter.
#pragma once

#include "estimate/story.h"

namespace staveline::estimate {

[[nodiscard]] Tasters tastersOf(const tasting::Sitting& sitting);
/// What there is to learn from a sitting; `model`: its scores on that day.
[[nodiscard]] Tasting tastingOf(const tasting::Sitting& sitting, const Scores& model, bool learns);
/// Variance of a dimension's score [points^2]. `known`: took part in earlier sittings or set the target; what the
/// tasters differ by among themselves counts by the share of those who did not.
[[nodiscard]] double variance(const tasting::DimensionReading& reading, const Tasters& tasters, const Tasters& known);
/// Of one taster more, who scores every line at both temperatures.
[[nodiscard]] double oneMoreTaster(Dimension dimension, bool known);

} // namespace staveline::estimate
