// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/contributions.h"

#include "advice/fake_forecaster.h"
#include "advice/scenario.h"
#include "support/catch.h"
#include "support/property.h"

using namespace staveline;
using namespace staveline::advice;

namespace {

LeverMove move(const AdviceInput& input, const char* id, LeverValue to) {
    return {findLever(id), leverValue(input.base, id, *input.pantry), std::move(to)};
}

struct Bench {
    AdviceInput input = scenario::cask();
    FakeForecaster model{input};
    Stock stock{*input.pantry, input.unavailable};

    Bench() {
        model.perUnit = {{"gravity", {{.6, .2, .5}}}, {"sugar", {{-.2, -.1, -.2}}}};
        model.pair = {"gravity", "sugar"};
        model.together = {{.1, 0, -.3}};
    }
    Contributions of(const std::vector<LeverMove>& chosen) {
        return contributionsOf(input, model, prepare(input).value(), chosen);
    }
    double change(const std::vector<LeverMove>& moves, Dimension d) {
        const auto base = prepare(input).value().start;
        return model.settledScores(applied(base, moves, stock), 0)[d] - model.settledScores(base, 0)[d];
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

namespace {

/// Flaked oats and one rest: they can only go in late once there is a rest before it.
AdviceInput oats() {
    auto recipe = scenario::plainRecipe();
    recipe.grist = {{"pilsner", {.6}, false}, {"wheat_malt", {.25}, false}, {"flaked_oats", {.15}, false}};
    auto input = scenario::cask(recipe);
    input.draws = 4;
    input.withSettled = false;
    return input;
}

Scores nextDraw(Forecaster& model, const AdviceInput& input, const std::vector<LeverMove>& moves) {
    return model.trajectory(applied(input.base, moves, {*input.pantry, input.unavailable}), 0, 1)->draws[0].scores;
}

} // namespace

TEST_CASE("late grain counts on top of the rest it depends on, whichever is named first") {
    const auto input = oats();
    ModelForecaster model(input);
    const auto rest = move(input, "ferulic_rest", 20.0);
    const auto late = move(input, "late_unmalted", std::string("after rest"));
    const auto baseline = prepare(input).value();
    const auto one = contributionsOf(input, model, baseline, {rest, late});
    const auto other = contributionsOf(input, model, baseline, {late, rest});
    const auto none = nextDraw(model, input, {}), half = nextDraw(model, input, {rest}),
               both = nextDraw(model, input, {rest, late});
    for (auto d : allDimensions) {
        CHECK(one.chosen[0].next[d] == Approx(half[d] - none[d]).margin(1e-12));
        CHECK(one.chosen[1].next[d] == Approx(both[d] - half[d]).margin(1e-12));
        CHECK(other.chosen[1].next[d] == one.chosen[0].next[d]);
        CHECK(other.chosen[0].next[d] == one.chosen[1].next[d]);
    }
}

TEST_CASE("new oats and a new rest add up, though the order in which they are put in decides when the oats go in") {
    auto input = scenario::cask();
    ModelForecaster model(input);
    const std::vector<LeverMove> moves{move(input, "ferulic_rest", 20.0), move(input, "glucan_grain", 15.0)};
    const auto does = contributionsOf(input, model, prepare(input).value(), moves);
    const auto none = nextDraw(model, input, {}), both = nextDraw(model, input, moves);
    for (auto d : allDimensions)
        CHECK(does.chosen[0].next[d] + does.chosen[1].next[d] == Approx(both[d] - none[d]).margin(1e-12));
}

TEST_CASE("locks that need each other are forced in either order") {
    auto input = oats();
    input.locks = {{"late_unmalted", std::string("after rest")}, {"ferulic_rest", 20.0}};
    const auto advice = advise(input);
    REQUIRE(advice);
    CHECK(advice->leaveAlone.moves.size() == 2);
}

TEST_CASE("a recipe in use that cannot be brewed is a fault, also where a lock would mend it") {
    auto input = oats();
    input.base.recipe.grist.back().late = true;
    input.locks = {{"ferulic_rest", 20.0}};
    const auto advice = advise(input);
    REQUIRE_FALSE(advice);
    CHECK(advice.error().path == "/recipe/grist/2/late");
}
