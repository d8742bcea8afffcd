// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/bands.h"

#include "advice/fake_forecaster.h"
#include "advice/scenario.h"
#include "support/catch.h"

#include <cmath>

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::tasting;

namespace {

struct Bench {
    AdviceInput input = scenario::cask();
    FakeForecaster model{input};
    Setting moved = input.base;

    Bench() {
        model.base = {{6, 4, 4}};
        model.perUnit["gravity"] = {{.6, 0, 0}};
        model.draws = 65;
        model.spread = .5;
        moved.recipe.originalGravity = {13.5}; // two units
        for (auto d : allDimensions) {
            input.model[d] = {model.base[d], 1};
            input.combined[d] = {model.base[d] + .3, .4};
            input.offsets[d].mean = {.3, .1, 0};
            input.offsets[d].cov = {{{.16, .1, 0}, {.1, .25, 0}, {0, 0, 0}}};
            input.wander[d] = {};
        }
    }
    [[nodiscard]] double left() const { return 1 - model.share(); }
    [[nodiscard]] double sdAtNext() const {
        const double a = left(), f = 1 - a, days = input.toThisDraw.d / 240;
        const double now = .16 + .04 * days;
        return std::sqrt(a * a * now + 2 * a * f * .1 + f * f * .25 + .04 * input.base.interval.d / 240);
    }
};

} // namespace

TEST_CASE("quantiles lie between order statistics") {
    CHECK(quantileOf({1, 2, 3, 4, 5}, .5) == 3);
    CHECK(quantileOf({1, 2, 3, 4, 5}, .1) == Approx(1.4));
    CHECK(quantileOf({1, 2, 3, 4, 5}, 0) == 1);
    CHECK(quantileOf({1, 2, 3, 4, 5}, 1) == 5);
    CHECK(quantileOf({7}, .9) == 7);
}

TEST_CASE("the value is the model's and what the vessel lies from it by, as much of it as is then there") {
    Bench bench;
    const auto bands = bandsOf(bench.input, bench.model, bench.moved);
    const double f = bench.model.share();
    CHECK(bands.thisDraw[Dimension::acidity].value == Approx(6.3));
    CHECK(bands.next[Dimension::acidity].value == Approx(6 + .3 * (1 - f) + .1 * f + f * 1.2));
    CHECK(bands.settled[Dimension::acidity].value == Approx(6 + .1 + 1.2));
}

TEST_CASE("the band of leaving alone is what is known of the vessel, carried on and wandering") {
    Bench bench;
    const auto bands = bandsOf(bench.input, bench.model, bench.input.base);
    for (auto d : allDimensions) {
        CHECK(bands.thisDraw[d].high - bands.thisDraw[d].value ==
              Approx(z80 * std::sqrt(.16 + .04 * bench.input.toThisDraw.d / 240)));
        CHECK(bands.next[d].high - bands.next[d].value == Approx(z80 * bench.sdAtNext()));
        CHECK(bands.next[d].value - bands.next[d].low == Approx(z80 * bench.sdAtNext()));
        CHECK(bands.settled[d].high - bands.settled[d].value == Approx(z80 * std::sqrt(.25 + 8 * .01)));
    }
}

TEST_CASE("the draws widen the band by the 80 % interval of the change, never of the level") {
    Bench bench;
    for (auto d : allDimensions) {
        bench.input.offsets[d] = {};
        bench.input.wander[d] = {0, 0, 0, 0, 0, 0, 0, 240};
    }
    const auto settled = bandsOf(bench.input, bench.model, bench.moved).settled[Dimension::acidity];
    // Factors lie evenly from .5 to 1.5: the middle 80 % is .6 to 1.4 of an effect of 1.2.
    CHECK(settled.high - settled.value == Approx(.4 * 1.2));
    CHECK(settled.value - settled.low == Approx(.4 * 1.2));
    const auto alone = bandsOf(bench.input, bench.model, bench.input.base).settled[Dimension::acidity];
    CHECK(alone.high == alone.low);
}

TEST_CASE("both errors add in squares") {
    Bench bench;
    const auto next = bandsOf(bench.input, bench.model, bench.moved).next[Dimension::acidity];
    const double draws = .4 * 1.2 * bench.model.share(), known = z80 * bench.sdAtNext();
    CHECK(next.high - next.value == Approx(std::hypot(draws, known)));
}

TEST_CASE("the value lies inside its band, and settled columns stay empty when not asked for") {
    Bench bench;
    bench.input.withSettled = false;
    const auto bands = bandsOf(bench.input, bench.model, bench.moved);
    for (auto d : allDimensions) {
        CHECK(bands.next[d].low <= bands.next[d].value);
        CHECK(bands.next[d].value <= bands.next[d].high);
        for (double settled : {bands.settled[d].value, bands.settled[d].low, bands.settled[d].high})
            CHECK(settled == 0);
    }
}
