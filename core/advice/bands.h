// SPDX-License-Identifier: GPL-3.0-or-later
// 80 % bands from the parameter draws and from the tasting's own error.
#pragma once

#include "advice/forecaster.h"

namespace staveline::advice {

struct Bands {
    PerDimension<Band> thisDraw, next, settled;
};

/// Anchored scores of a setting. A draw counts with its change from today under its own parameters; the tasting's error
/// stays with the part of today's beer that is still there. The setting is one that the forecaster takes.
[[nodiscard]] Bands bandsOf(const AdviceInput& input, Forecaster& forecaster, const Setting& setting);

/// Paired differences of two settings, draw by draw.
[[nodiscard]] Effect effectOf(const AdviceInput& input, Forecaster& forecaster, const Setting& base,
                              const Setting& setting);

/// Linear between order statistics; `sorted` is not empty, q 0..1.
[[nodiscard]] double quantileOf(const std::vector<double>& sorted, double q);

} // namespace staveline::advice
