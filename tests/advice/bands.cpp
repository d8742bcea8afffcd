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
        CHECK(bands.settled[d].value == 0);
    }
}

TEST_CASE("the effect of a setting is a paired difference, free of the tasting's error") {
    Bench bench;
    const auto effect = effectOf(bench.input, bench.model, bench.input.base, bench.moved);
    CHECK(effect.settled[Dimension::acidity].value == Approx(1.2));
    CHECK(effect.settled[Dimension::acidity].low == Approx(.6 * 1.2));
    CHECK(effect.settled[Dimension::acidity].high == Approx(1.4 * 1.2));
    CHECK(effect.next[Dimension::acidity].value == Approx(1.2 * bench.model.share()));
    CHECK(effect.next[Dimension::funk].value == 0);
    CHECK(effect.next[Dimension::funk].high == 0);
}

TEST_CASE("trying out the settings in use has no effect; a stronger refill has (regression of the sign only)") {
    auto input = scenario::cask();
    input.draws = 8;
    const auto none = tryOut(input, input.base).value();
    for (auto d : allDimensions) {
        CHECK(none.next[d].value == 0);
        CHECK(none.settled[d].low == 0);
        CHECK(none.settled[d].high == 0);
    }
    auto stronger = input.base;
    stronger.recipe.originalGravity = {14};
    const auto effect = tryOut(input, stronger).value();
    CHECK(effect.next[Dimension::body].value > 0);
    CHECK(effect.settled[Dimension::body].value > effect.next[Dimension::body].value);
    CHECK(effect.settled[Dimension::body].low <= effect.settled[Dimension::body].value);
}

TEST_CASE("trying out a recipe that cannot be brewed is a fault, and stopping stops") {
    auto input = scenario::cask();
    auto broken = input.base;
    broken.recipe.grist.clear();
    REQUIRE_FALSE(tryOut(input, broken));
    CHECK(tryOut(input, broken).error().path.starts_with("/recipe"));
    std::stop_source source;
    source.request_stop();
    REQUIRE_FALSE(tryOut(input, input.base, source.get_token()));
    CHECK(tryOut(input, input.base, source.get_token()).error().kind == FaultKind::notPossible);
}
