// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/goal.h"

#include "advice/scenario.h"
#include "support/catch.h"
#include "support/property.h"

#include <cmath>

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::tasting;

namespace {

Verdict verdictOf(VerdictKind kind, double gap = 0) {
    Verdict verdict;
    verdict.kind = kind;
    verdict.gap = gap;
    return verdict;
}

Trajectory trajectoryAt(std::initializer_list<Scores> draws) {
    Trajectory trajectory;
    for (const auto& scores : draws) {
        trajectory.draws.emplace_back();
        trajectory.draws.back().scores = scores;
    }
    return trajectory;
}

/// Wants 5, 4, 4 within 1; two draws at 6, 4, 4.
struct Desk {
    AdviceInput input;
    Trajectory alone = trajectoryAt({{{6, 4, 4}}, {{6, 4, 4}}});
    Desk() {
        input.target = {};
        for (auto d : allDimensions)
            input.verdicts[d] = verdictOf(VerdictKind::move);
    }
    [[nodiscard]] Goal goal() const { return goalFrom(input, {.35}, alone); }
};

double cost(const Goal& goal, const Scores& everyDraw) {
    const std::vector<Scores> draws(goal.alone.size(), everyDraw);
    return gapCost(goal, draws);
}

} // namespace

TEST_CASE("the cost is the mean over the draws of squared gaps in bands") {
    Desk desk;
    desk.input.target.windows[Dimension::acidity] = {5, .5};
    const auto goal = desk.goal();
    CHECK(gapCost(goal, std::vector<Scores>{{{6, 4, 4}}, {{5.5, 4, 5}}}) == Approx(((4) + (1 + 1)) / 2.0));
    CHECK(cost(goal, {{5, 4, 4}}) == 0);
}

TEST_CASE("what was tasted beside the model is added to every draw") {
    Desk desk;
    desk.input.model[Dimension::funk] = {3, 1};
    desk.input.combined[Dimension::funk] = {3.7, .4};
    const auto goal = desk.goal();
    CHECK(goal.deviation[Dimension::funk] == Approx(.7));
    CHECK(goal.alone[1][Dimension::funk] == Approx(4.7));
    CHECK(goal.alone[1][Dimension::acidity] == Approx(6));
}

TEST_CASE("a nudge aims half-way between the estimate and the target") {
    Desk desk;
    desk.input.verdicts[Dimension::acidity] = verdictOf(VerdictKind::nudge, -1.2);
    CHECK(desk.goal().aims[Dimension::acidity].wanted == Approx(5.6));
    desk.input.verdicts[Dimension::acidity] = verdictOf(VerdictKind::move, -1.2);
    CHECK(desk.goal().aims[Dimension::acidity].wanted == Approx(5));
}

TEST_CASE("a dimension on hold is charged for leaving and not paid for coming nearer") {
    for (auto kind : {VerdictKind::hold, VerdictKind::waitUntil}) {
        Desk desk;
        desk.input.verdicts[Dimension::acidity] = verdictOf(kind);
        desk.alone = trajectoryAt({{{5.6, 4, 4}}, {{5.6, 4, 4}}});
        const auto goal = desk.goal();
        const double there = cost(goal, {{5.6, 4, 4}});
        CHECK(cost(goal, {{5.2, 4, 4}}) == there);
        CHECK(cost(goal, {{5.0, 4, 4}}) == there);
        CHECK(cost(goal, {{4.4, 4, 4}}) == Approx(there));
        CHECK(cost(goal, {{5.8, 4, 4}}) > there);
        CHECK(cost(goal, {{4.2, 4, 4}}) > there);
    }
}

TEST_CASE("a dimension on hold that would drift out of its band is worth holding back") {
    Desk desk;
    desk.input.verdicts[Dimension::acidity] = verdictOf(VerdictKind::hold);
    desk.alone = trajectoryAt({{{6.8, 4, 4}}, {{7, 4, 4}}});
    const auto goal = desk.goal();
    CHECK(cost(goal, {{6, 4, 4}}) < cost(goal, {{6.8, 4, 4}}));
    CHECK(cost(goal, {{5.5, 4, 4}}) == Approx(cost(goal, {{6, 4, 4}})));
}

TEST_CASE("effort weighs as much as the horizon lets a change show") {
    Desk desk;
    desk.input.lambda = .03;
    CHECK(goalFrom(desk.input, {1}, desk.alone).effortWeight == Approx(.03));
    CHECK(goalFrom(desk.input, {.5}, desk.alone).effortWeight == Approx(.03 * .75 * .75));
    CHECK(goalFrom(desk.input, {.2}, desk.alone).effortWeight < goalFrom(desk.input, {.3}, desk.alone).effortWeight);
}

TEST_CASE("uncertainty costs its variance, grown over the draws as a kept change grows") {
    Desk desk;
    auto goal = goalFrom(desk.input, {.5}, desk.alone);
    // .5 of the change shows at the first draw, .75 at the second: 1 and 1.5 squared.
    CHECK(lossCost(goal, {{.2, 0, 0}}) == Approx(.2 * (1 + 2.25) / 2));
    goal.aims[Dimension::acidity].band = 2;
    CHECK(lossCost(goal, {{.2, 0, 0}}) == Approx(.2 * (1 + 2.25) / 2 / 4));
    CHECK(lossCost(goal, {}) == 0);
}

TEST_CASE("costs are never negative and fall when every band is widened") {
    CHECK_PROPERTY("gap cost", [](double a, double b, double c) {
        Desk desk;
        const auto in = [](double x) { return std::isfinite(x) ? 5 + 5 * std::sin(x) : 5.0; };
        const Scores somewhere{{in(a), in(b), in(c)}};
        const auto narrow = desk.goal();
        for (auto d : allDimensions)
            desk.input.target.windows[d].band *= 1.7;
        const double before = cost(narrow, somewhere), after = cost(desk.goal(), somewhere);
        RC_ASSERT(before >= 0);
        RC_ASSERT(std::abs(after - before / (1.7 * 1.7)) < 1e-9);
    });
}
