// SPDX-License-Identifier: GPL-3.0-or-later
#include "brewing/mash_schedule.h"

#include <cmath>

namespace staveline::brewing {

std::vector<MashSegment> scheduleOf(const BrewInput& input) {
    const auto& rests = input.recipe.mash;
    std::vector<MashSegment> segments;
    segments.reserve(2 * rests.size());
    for (std::size_t i = 0; i < rests.size(); ++i) {
        const double temperature = rests[i].temperature.c;
        if (i > 0) {
            const double before = rests[i - 1].temperature.c;
            if (temperature != before)
                segments.push_back({before, temperature, std::abs(temperature - before) / input.ramp.cPerMin, false});
        }
        segments.push_back({temperature, temperature, rests[i].minutes.min, i + 1 == rests.size()});
    }
    return segments;
}

} // namespace staveline::brewing
