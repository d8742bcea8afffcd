// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/value.h"

#include "advice/scenario.h"
#include "support/catch.h"

using namespace staveline;
using namespace staveline::advice;

namespace {

/// Acidity alone: leaving alone at `alone`, a plan at `with`.
struct OneDimension {
    Goal goal;
    std::vector<Weighed> plans;
    OneMore tasting;

    OneDimension(double alone, double with, double penalty) {
        goal.windows[Dimension::acidity] = {5, 1};
        goal.counts[Dimension::funk] = goal.counts[Dimension::body] = false;
        plans.push_back({{{{{alone, 0, 0}}, {{.30, 0, 0}}}}, {{{.20, 0, 0}}}, 0});
        plans.push_back({{{{{with, 0, 0}}, {{.34, 0, 0}}}}, {{{.20, 0, 0}}}, penalty});
        tasting.now = {{.25, 0, 0}};
        tasting.error = {{.81, 1, 1}};
    }
    [[nodiscard]] Worth worth() const { return worthOfTasting(goal, plans, tasting); }
};

} // namespace

TEST_CASE("one more taster is worth the worked numbers") {
    const auto clear = OneDimension(6.0, 5.2, .02).worth();
    CHECK(clear.best == Approx(.159706).margin(5e-7));
    CHECK(clear.after == Approx(.159647).margin(5e-7));
    CHECK(clear.value() == Approx(.000059).margin(5e-7));
    const auto close = OneDimension(5.55, 5.05, .06).worth();
    CHECK(close.best == Approx(.178989).margin(5e-7));
    CHECK(close.after == Approx(.162517).margin(5e-7));
    CHECK(close.value() == Approx(.016472).margin(5e-7));
}

TEST_CASE("a tasting that can change no plan is worth nothing") {
    auto same = OneDimension(5.55, 5.05, .06);
    same.tasting.tastes[Dimension::acidity] = false;
    CHECK(same.worth().value() == Approx(0).margin(1e-12));
    auto single = OneDimension(5.55, 5.05, .06);
    single.plans.resize(1);
    CHECK(std::abs(single.worth().value()) < 1e-6); // five nodes are not the exact integral
    auto deaf = OneDimension(5.55, 5.05, .06);
    deaf.tasting.error[Dimension::acidity] = 1e9;
    CHECK(deaf.worth().value() == Approx(0).margin(1e-6));
}

namespace {

/// Two plans that a tasting of acidity decides between; funk is certain.
struct Vessel {
    AdviceInput input = scenario::cask();
    Goal goal;
    std::vector<Weighed> plans;

    Vessel() {
        for (auto d : allDimensions)
            input.offsets[d] = scenario::lasting(0, d == Dimension::acidity ? .9 : .05);
        input.target.windows[Dimension::acidity] = {5, 1};
        goal = goalOf(input);
        goal.counts[Dimension::funk] = goal.counts[Dimension::body] = false;
        for (double mean : {5.6, 4.6})
            plans.push_back({{{{{mean, 4, 4}}, {{.81, 0, 0}}}}, {{{.81, 0, 0}}}, mean < 5 ? .05 : 0.0});
    }
    [[nodiscard]] TastingValue value() const { return valueOfTasting(input, goal, plans); }
};

} // namespace

TEST_CASE("the dimension it is worth it for is the one that decides") {
    const Vessel vessel;
    CHECK(vessel.value().value > constants::advice::worthTasting);
    CHECK(vessel.value().dimension == Dimension::acidity);
}

TEST_CASE("no taster is asked for what was tasted today or would tell nothing") {
    Vessel today;
    today.input.tastedToday[Dimension::acidity] = true;
    CHECK_FALSE(today.value().dimension);
    Vessel never;
    never.input.seen[Dimension::acidity] = false;
    CHECK_FALSE(never.value().dimension);
    Vessel waiting;
    waiting.input.verdicts[Dimension::acidity].kind = tasting::VerdictKind::waitUntil;
    CHECK_FALSE(waiting.value().dimension);
    Vessel vague;
    vague.input.oneMoreTaster[Dimension::acidity] = 100;
    CHECK_FALSE(vague.value().dimension);
}
