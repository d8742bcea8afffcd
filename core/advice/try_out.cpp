// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/adviser.h"
#include "advice/bands.h"
#include "advice/search.h"

namespace staveline::advice {

Result<Effect> tryOut(const AdviceInput& input, const Setting& setting, std::stop_token stop) {
    ModelForecaster forecaster(input);
    for (const auto* tried : {&input.base, &setting}) {
        if (stop.stop_requested())
            return fail(cancelled());
        if (const auto trajectory = forecaster.trajectory(*tried, 0, 1); !trajectory)
            return fail(trajectory.error());
    }
    return effectOf(input, forecaster, input.base, setting);
}

} // namespace staveline::advice
