// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/plan_state.h"

#include <algorithm>

namespace staveline::desk {

using tasting::VerdictKind;

std::optional<PlanState> planState(const AdviceJob& job) {
    if (job.brewed)
        return PlanState::brewed;
    if (job.open)
        return PlanState::adopted;
    return job.estimates.tastedOn ? std::nullopt : std::optional(PlanState::tasteFirst);
}

PlanState planState(const advice::Advice& advice) {
    const auto any = [&](VerdictKind kind) {
        return std::ranges::any_of(allDimensions, [&](Dimension d) { return advice.verdicts[d].kind == kind; });
    };
    if (advice.faultFirst || any(VerdictKind::waitUntil))
        return PlanState::wait;
    if (any(VerdictKind::move))
        return PlanState::helps;
    if (any(VerdictKind::tasteAgain))
        return PlanState::tasteAgain;
    return any(VerdictKind::neverTasted) ? PlanState::tasteFirst : PlanState::leaveAlone;
}

} // namespace staveline::desk
