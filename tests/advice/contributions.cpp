// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/contributions.h"

#include "advice/fake_forecaster.h"
#include "advice/scenario.h"
#include "support/catch.h"
#include "support/property.h"

using namespace staveline;

namespace {

LeverMove move(const AdviceInput& input, const char* id, LeverValue to) {
    return {findLever(id), leverValue(input.base, id, *input.pantry), std::move(to)};
}

struct Bench {
    AdviceInput input = scenario::cask();
    FakeForecaster model{input};
    Larder larder{*input.pantry, input.unavailable};

    Bench() {
        model.perUnit = {{"gravity", {{.6, .2, .5}}}, {"sugar", {{-.2, -.1, -.2}}}};
        model.pair = {"gravity", "sugar"};
        model.together = {{.1, 0, -.3}};
    }
    Contributions of(const std::vector<LeverMove>& chosen) {
        return contributionsOf(model, prepare(input).value(), chosen, larder, true);
    }
    double change(const std::vector<LeverMove>& moves, Dimension d) {
        const auto base = prepare(input).value().start;
        return model.keptUp(applied(base, moves, larder), 0)[d] - model.keptUp(base, 0)[d];
    }
};

} // namespace

TEST_CASE("a single move contributes all of the change") {
    Bench bench;
    const auto gravity = move(bench.input, "gravity", 13.5);
    const auto does = bench.of({gravity});
    REQUIRE(does.chosen.size() == 1);
    CHECK(does.chosen[0].settled[Dimension::acidity] == Approx(1.2));
    CHECK(does.chosen[0].next[Dimension::acidity] == Approx(1.2 * bench.model.share()));
}

TEST_CASE("two moves share what they do together in halves") {
    Bench bench;
    // Two units each: 1.2 and -.4 alone, .1 x 2 x 2 = .4 together.
    const auto does = bench.of({move(bench.input, "gravity", 13.5), move(bench.input, "sugar", 10.0)});
    CHECK(does.chosen[0].settled[Dimension::acidity] == Approx(1.2 + .2));
    CHECK(does.chosen[1].settled[Dimension::acidity] == Approx(-.4 + .2));
}

TEST_CASE("contributions do not depend on the order of the moves") {
    Bench bench;
    const auto gravity = move(bench.input, "gravity", 11.0), sugar = move(bench.input, "sugar", 7.5);
    const auto one = bench.of({gravity, sugar}), other = bench.of({sugar, gravity});
    for (auto d : allDimensions) {
        CHECK(one.chosen[0].next[d] == Approx(other.chosen[1].next[d]).margin(1e-12));
        CHECK(one.chosen[1].settled[d] == Approx(other.chosen[0].settled[d]).margin(1e-12));
    }
}

TEST_CASE("forced moves come first, from the settings before them") {
    Bench bench;
    bench.input.locks = {{"gravity", 13.5}};
    const auto does = bench.of({move(bench.input, "sugar", 10.0)});
    REQUIRE(does.forced.size() == 1);
    CHECK(does.forced[0].settled[Dimension::acidity] == Approx(1.2));
    CHECK(does.chosen[0].settled[Dimension::acidity] == Approx(-.4 + .4));
}

TEST_CASE("contributions add up to the whole") {
    CHECK_PROPERTY("for any two moves", [] {
        Bench bench;
        const double gravity = 10.5 + .25 * *rc::gen::inRange(0, 15), sugar = 2.5 * *rc::gen::inRange(0, 7);
        const std::vector<LeverMove> moves{move(bench.input, "gravity", gravity), move(bench.input, "sugar", sugar)};
        const auto does = bench.of(moves);
        for (auto d : allDimensions)
            RC_ASSERT(std::abs(does.chosen[0].settled[d] + does.chosen[1].settled[d] - bench.change(moves, d)) < 1e-9);
    });
}
