// SPDX-License-Identifier: GPL-3.0-or-later
// A prediction as it is told. The adviser reckons beyond the sheet's scale, so that what the moves bring adds up.
#pragma once

#include "advice/advise.h"

#include <algorithm>

namespace staveline::advice {

/// What lies beyond the scale tastes like its end.
[[nodiscard]] inline double onScale(double score) {
    return std::clamp(score, 0.0, 10.0);
}
[[nodiscard]] inline Band onScale(const Band& band) {
    return {onScale(band.value), onScale(band.low), onScale(band.high)};
}

} // namespace staveline::advice
