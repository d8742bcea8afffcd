// SPDX-License-Identifier: GPL-3.0-or-later
// Scores to be shown, with 80 % bands: what is known of the vessel, carried on and wandering, and how sure the model is
// of the change that a plan makes. Of the level it need not be sure: that is what the vessel's offset is for.
#pragma once

#include "advice/outlook.h"

namespace staveline::advice {

struct Bands {
    PerDimension<Band> thisDraw, next, settled;
};

/// Anchored scores of a setting; the spread is that of its difference to the base over the parameter draws. The
/// forecaster takes both.
[[nodiscard]] Bands bandsOf(const AdviceInput& input, Forecaster& forecaster, const Setting& setting);

/// Linear between order statistics; `sorted` is not empty, q 0..1.
[[nodiscard]] double quantileOf(const std::vector<double>& sorted, double q);

} // namespace staveline::advice
