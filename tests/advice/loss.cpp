// SPDX-License-Identifier: GPL-3.0-or-later
// The loss that plans are measured by, against the worked vectors of the study it comes from.
#include "advice/loss.h"

#include "advice/scenario.h"
#include "support/catch.h"
#include "support/property.h"

#include <cmath>

using namespace staveline;
using namespace staveline::advice;

namespace {

/// Acidity 5 and funk 4.5 are wanted, within 1; body steers nothing.
Goal twoDimensions() {
    Goal goal;
    goal.windows[Dimension::acidity] = {5, 1};
    goal.windows[Dimension::funk] = {4.5, 1};
    goal.counts[Dimension::body] = false;
    goal.effortWeight = effortWeight(.03, {.35}, 2);
    return goal;
}

std::vector<Expected> twoDraws(Scores first, Scores second) {
    return {{first, {{.20, .25, 9}}}, {second, {{.22, .27, 9}}}};
}

double costOf(const Goal& goal, const std::vector<Expected>& draws, double effort) {
    return total(lossOf(goal, draws)) + goal.effortWeight * effort;
}

/// Midpoints over eight standard deviations.
double integratedHinge(double mean, double variance, double free) {
    const double sd = std::sqrt(variance), step = 16 * sd / 40000;
    double sum = 0;
    for (int i = 0; i < 40000; ++i) {
        const double z = -8 + 16 * (i + .5) / 40000;
        const double over = std::max(0.0, std::abs(mean + z * sd) - free);
        sum += over * over * std::exp(-z * z / 2) / std::sqrt(2 * 3.141592653589793) * step / sd;
    }
    return sum;
}

} // namespace

TEST_CASE("the expected hinge gives the worked numbers") {
    CHECK(expectedHinge(0, .25, .5) == Approx(.037670).margin(5e-7));
    CHECK(expectedHinge(.8, .25, .5) == Approx(.296951).margin(5e-7));
    CHECK(expectedHinge(-1.7, .09, .5) == Approx(1.530000).margin(5e-7));
    CHECK(expectedHinge(.4, 1, 1) == Approx(.202471).margin(5e-7));
    CHECK(expectedHinge(2, .0001, .5) == Approx(2.250100).margin(5e-7));
}

TEST_CASE("without doubt it is the hinge itself, with doubt its integral") {
    CHECK(expectedHinge(.3, 0, .5) == 0);
    CHECK(expectedHinge(-1.5, 0, .5) == Approx(1));
    CHECK(expectedHinge(0, 1e-8, .5) == 0);
    for (double mean : {-2.0, -.4, 0.0, .35, 1.1})
        for (double variance : {.01, .3, 2.0})
            CHECK(expectedHinge(mean, variance, .35) == Approx(integratedHinge(mean, variance, .35)).margin(1e-7));
}

TEST_CASE("plans cost what the worked example says, and the first one wins") {
    const auto goal = twoDimensions();
    CHECK(goal.effortWeight / .03 == Approx(.333506).margin(5e-7));
    CHECK(costOf(goal, twoDraws({{6.2, 3.6, 0}}, {{6.1, 3.7, 0}}), 0) == Approx(1.341746).margin(5e-7));
    const auto first = twoDraws({{5.9, 3.8, 0}}, {{5.6, 4.1, 0}});
    const auto second = twoDraws({{5.7, 3.5, 0}}, {{5.2, 3.9, 0}});
    CHECK(costOf(goal, first, 0) == Approx(.618131).margin(5e-7));
    CHECK(costOf(goal, first, 1) == Approx(.628136).margin(5e-7));
    CHECK(costOf(goal, second, 0) == Approx(.656961).margin(5e-7));
    CHECK(costOf(goal, second, 2.5) == Approx(.681974).margin(5e-7));
}

TEST_CASE("loss is told by dimension, in squared bands, and not of what was never tasted") {
    auto goal = twoDimensions();
    const auto draws = twoDraws({{6.2, 3.6, 9}}, {{6.1, 3.7, 9}});
    const auto loss = lossOf(goal, draws);
    CHECK(loss[Dimension::body] == 0);
    CHECK(loss[Dimension::acidity] > 0);
    CHECK(total(loss) == Approx(loss[Dimension::acidity] + loss[Dimension::funk]));
    // Twice the band with everything twice as wide is the same loss.
    goal.windows[Dimension::acidity].band = 2;
    CHECK(lossAt(goal, Dimension::acidity, 5 + 2 * 1.2, 4 * .2) ==
          Approx(lossAt(twoDimensions(), Dimension::acidity, 6.2, .2)));
}

TEST_CASE("effort weighs as much as the draws planned for let a change show") {
    CHECK(effortWeight(.03, {1}, 4) == Approx(.03));
    CHECK(effortWeight(.03, {.5}, 2) == Approx(.03 * .75 * .75));
    CHECK(effortWeight(.03, {0}, 4) == 0);
    auto input = scenario::cask();
    input.locks = {{"draw", 100.0}}; // the scale is that of the refill in use
    const double f = shareOf(input, input.base).of1;
    CHECK(goalOf(input).effortWeight == Approx(.03 * std::pow(1 - std::pow(1 - f, 4), 2)));
}

TEST_CASE("more distance and more doubt never cost less") {
    CHECK_PROPERTY("hinge", [](int gap, int spread) {
        const double mean = .01 * std::abs(gap % 300), variance = .001 + .01 * std::abs(spread % 200);
        RC_ASSERT(expectedHinge(mean + .1, variance, .35) >= expectedHinge(mean, variance, .35));
        RC_ASSERT(expectedHinge(mean, variance + .1, .35) >= expectedHinge(mean, variance, .35));
        RC_ASSERT(std::abs(expectedHinge(mean, variance, .35) - expectedHinge(-mean, variance, .35)) < 1e-12);
    });
}
