// SPDX-License-Identifier: GPL-3.0-or-later
// A mash as a row of rests and heatings, the form the kinetics walk through.
#pragma once

#include "brewing/refill_beer.h"

namespace staveline::brewing {

/// Temperature runs in a straight line from `from` to `to`.
struct MashSegment {
    double from = 66, to = 66;  ///< C
    double minutes = 60;        ///< above 0
    bool opensLastRest = false; ///< late grain goes in at its start
    [[nodiscard]] bool isRest() const { return from == to; }
    [[nodiscard]] double at(double minute) const { return from + (to - from) * (minute / minutes); }
};

/// The rests of the recipe joined by heatings at `input.ramp`.
[[nodiscard]] std::vector<MashSegment> scheduleOf(const BrewInput& input);

} // namespace staveline::brewing
