// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/outlook.h"

#include "advice/scenario.h"
#include "support/catch.h"

#include <cmath>

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::estimate;

namespace {

/// Tastes .8 sourer than the model now, .2 less sour once only refills are left; .3 of it is taste and not acid.
AdviceInput sourNow() {
    auto input = scenario::cask();
    auto& offset = input.offsets[Dimension::acidity];
    offset.mean = {.8, -.2, .3};
    offset.cov = {{{.30, .10, 0}, {.10, .20, 0}, {0, 0, .1}}};
    return input;
}

} // namespace

TEST_CASE("what a vessel lies from the model by goes from what it is now to what its refills settle at") {
    const auto input = sourNow();
    const auto now = carriedTo(input, {.35}, 0), second = carriedTo(input, {.35}, 2), end = carriedForGood(input);
    const double a = .65 * .65;
    CHECK(now.mean[Dimension::acidity] == Approx(.8));
    CHECK(now.variance[Dimension::acidity] == Approx(.30));
    CHECK(second.mean[Dimension::acidity] == Approx(a * .8 - (1 - a) * .2));
    CHECK(second.variance[Dimension::acidity] == Approx(a * a * .3 + 2 * a * (1 - a) * .1 + (1 - a) * (1 - a) * .2));
    CHECK(second.withNow[Dimension::acidity] == Approx(a * .3 + (1 - a) * .1));
    CHECK(end.mean[Dimension::acidity] == Approx(-.2));
    CHECK(end.variance[Dimension::acidity] == Approx(.20));
    const auto ahead = carriedAhead(input, {.35});
    REQUIRE(ahead.size() == 4);
    CHECK(ahead[1].mean == second.mean);
}

TEST_CASE("expected scores are the model's and what the vessel lies from it by, draw by draw") {
    const auto input = sourNow();
    std::vector<forward::Outcome> draws(3);
    draws[1].scores = {{5, 4, 3}};
    const auto ahead = carriedAhead(input, {.35});
    const auto expected = expectedDraws(draws, ahead);
    REQUIRE(expected.size() == 3);
    CHECK(expected[1].mean[Dimension::acidity] == Approx(5 + ahead[1].mean[Dimension::acidity]));
    CHECK(expected[1].mean[Dimension::funk] == Approx(4));
    CHECK(expected[1].variance == ahead[1].variance);
}

TEST_CASE("the acidity that will be measured moves with what is acid, not with what only tastes so") {
    const auto input = sourNow();
    const auto then = outcomeOf(input.state, input.parameters);
    Carried carried;
    carried.mean[Dimension::acidity] = .3; // all of it taste
    CHECK(acidityThen(input, then, carried).gPerL == Approx(then.ta.gPerL));
    carried.mean[Dimension::acidity] = .3 + .4;
    const auto measured = acidityThen(input, then, carried);
    const GramsPerLitre acetic{then.state.beer.acetic};
    const auto score = [&](GramsPerLitre ta) { return acidityScore(ta, acetic, then.alcohol, input.parameters.score); };
    CHECK(score(measured) - score(then.ta) == Approx(.4).margin(.03)); // along the tangent
    carried.mean[Dimension::acidity] = -20;
    CHECK(acidityThen(input, then, carried).gPerL == 0);
}

TEST_CASE("what is shown wanders with the days and the refills") {
    auto input = sourNow();
    input.wander[Dimension::acidity] = {1.2, .3, .2, .1, 0, 0, .8, 240};
    input.toThisDraw = {60};
    const auto sd = wanderedAhead(input, input.base);
    const double f = shareOf(input, input.base).of1, a = 1 - f, now = .30 + .04 * 60 / 240;
    CHECK(sd.thisDraw[Dimension::acidity] == Approx(std::sqrt(now)));
    CHECK(sd.next[Dimension::acidity] == Approx(std::sqrt(a * a * now + 2 * a * f * .1 + f * f * .2 + .04)));
    CHECK(sd.settled[Dimension::acidity] == Approx(std::sqrt(.20 + 8 * .01)));
    input.fillTo = {0}; // nothing goes in: what refills settle at stays as it is known
    CHECK(wanderedAhead(input, input.base).settled[Dimension::acidity] == Approx(std::sqrt(.20)));
}
