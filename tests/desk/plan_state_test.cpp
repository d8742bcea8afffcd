// SPDX-License-Identifier: GPL-3.0-or-later
// What is to be done about the coming refill, in one word.
#include "desk/plan_state.h"
#include "desk/support.h"

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::tasting;
using namespace staveline::testing;

TEST_CASE("verdicts come to one word, the worst first", "[desk][plan]") {
    advice::Advice advice;
    const auto say = [&](VerdictKind kind) {
        for (const Dimension d : allDimensions)
            advice.verdicts[d].kind = VerdictKind::hold;
        advice.verdicts[Dimension::funk].kind = kind;
        return planState(advice);
    };
    CHECK(say(VerdictKind::hold) == PlanState::leaveAlone);
    CHECK(say(VerdictKind::move) == PlanState::helps);
    CHECK(say(VerdictKind::leaveAlone) == PlanState::leaveAlone);
    CHECK(say(VerdictKind::tasteAgain) == PlanState::tasteAgain);
    CHECK(say(VerdictKind::neverTasted) == PlanState::tasteFirst);
    CHECK(say(VerdictKind::waitUntil) == PlanState::wait);
    advice.faultFirst = true;
    CHECK(say(VerdictKind::move) == PlanState::wait);
}

TEST_CASE("what is brewed or adopted is known without asking", "[desk][plan]") {
    AdviceJob job;
    CHECK(planState(job) == PlanState::tasteFirst);
    job.estimates.tastedOn = day(2026, 3, 2);
    CHECK_FALSE(planState(job));
    job.open.emplace();
    CHECK(planState(job) == PlanState::adopted);
    job.brewed.emplace();
    CHECK(planState(job) == PlanState::brewed);
}
