// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/forecaster.h"

#include "advice/scenario.h"
#include "support/catch.h"
#include "support/settled.h"

#include <cmath>

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::brewing;
using namespace staveline::culture;
using namespace staveline::forward;

namespace {

AdviceInput quick() {
    auto input = scenario::cask();
    input.draws = 6;
    return input;
}

BrewInput resolved(const AdviceInput& input, const Setting& setting) {
    return resolve(setting.recipe, *input.pantry, input.equipment.heatingRate).value();
}

Plan planOf(const AdviceInput& input, const Setting& setting, Days toThisDraw) {
    return {toThisDraw, shareOf(input, setting), setting.interval, setting.temperature, input.oxygenPerYear};
}

void checkNear(const Scores& a, const Scores& b, double tolerance) {
    for (auto d : allDimensions)
        CHECK(std::abs(a[d] - b[d]) <= tolerance);
}

} // namespace

TEST_CASE("litres and share of the refill follow from what is in, what is drawn and what is wanted") {
    AdviceInput input;
    input.volumeAtDraw = {220};
    input.fillTo = {225};
    Setting setting;
    setting.draw = {74};
    CHECK(refillOf(input, setting).l == Approx(79));
    CHECK(shareOf(input, setting).of1 == Approx(79.0 / 225));
    setting.draw = {0};
    input.fillTo = {200};
    CHECK(refillOf(input, setting).l == 0);
    CHECK(shareOf(input, setting).of1 == 0);
    input.fillTo = {0};
    CHECK(shareOf(input, setting).of1 == 0);
}

TEST_CASE("a trajectory is the forward model, draw after draw") {
    const auto input = quick();
    ModelForecaster model(input);
    auto setting = input.base;
    setting.recipe.originalGravity = {13};
    setting.draw = {100};
    setting.interval = {180};
    const auto trajectory = model.trajectory(setting, 0, 2).value();
    const auto recipe = resolved(input, setting);
    const auto first = predict(input.parameters, input.state, recipe, planOf(input, setting, input.toThisDraw));
    const auto second = predict(input.parameters, first.nextDraw.state, recipe, planOf(input, setting, {0}));
    checkNear(trajectory.thisDraw.scores, first.thisDraw.scores, 1e-9);
    checkNear(trajectory.draws[0].scores, first.nextDraw.scores, 1e-9);
    checkNear(trajectory.draws[1].scores, second.nextDraw.scores, 1e-9);
    CHECK(trajectory.draws[1].ta.gPerL == Approx(second.nextDraw.ta.gPerL));
}

TEST_CASE("asking twice, in any order and for any number of draws, has one answer") {
    const auto input = quick();
    ModelForecaster one(input), other(input);
    const auto three = one.trajectory(input.base, 2, 3).value();
    CHECK(three.draws.size() == 3);
    const auto first = other.trajectory(input.base, 2, 1).value();
    CHECK(first.draws.size() == 1);
    checkNear(first.draws[0].scores, three.draws[0].scores, 0);
    checkNear(other.trajectory(input.base, 2, 3)->draws[2].scores, three.draws[2].scores, 0);
    CHECK(one.trajectory(input.base, 2, 1)->draws.size() == 1);
}

TEST_CASE("parameter sets are the central one and the draws") {
    const auto input = quick();
    ModelForecaster model(input);
    CHECK(model.sets() == 6);
    const auto draws = parameterDraws(input.parameters, 6);
    const auto recipe = resolved(input, input.base);
    for (std::size_t set = 0; set <= 6; ++set) {
        const auto& parameters = set == 0 ? input.parameters : draws[set - 1];
        const auto expected = predict(parameters, input.state, recipe, planOf(input, input.base, input.toThisDraw));
        checkNear(model.trajectory(input.base, set, 1)->draws[0].scores, expected.nextDraw.scores, 1e-9);
    }
    CHECK(std::abs(model.trajectory(input.base, 1, 1)->draws[0].scores[Dimension::funk] -
                   model.trajectory(input.base, 2, 1)->draws[0].scores[Dimension::funk]) > 1e-3);
}

TEST_CASE("if kept up is the eighth of equal cycles, which is all but the fixed point") {
    const auto input = quick();
    ModelForecaster model(input);
    auto setting = input.base;
    setting.recipe.mash[0] = {{63}, {75}};
    const auto recipe = resolved(input, setting);
    const auto sets = parameterDraws(input.parameters, 6);
    for (std::size_t set = 0; set <= 6; ++set) {
        const auto& parameters = set == 0 ? input.parameters : sets[set - 1];
        auto state = predict(parameters, input.state, recipe, planOf(input, setting, input.toThisDraw)).nextDraw.state;
        for (int cycle = 2; cycle <= 8; ++cycle)
            state = predict(parameters, state, recipe, planOf(input, setting, {0})).nextDraw.state;
        checkNear(model.settledScores(setting, set), outcomeOf(state, parameters).scores, 1e-9);
    }
    const auto beer = brew(recipe, input.parameters.brew);
    const auto end =
        reference::settledOutcome(input.parameters, input.state, beer, planOf(input, setting, {0}), 200).scores;
    checkNear(model.settledScores(setting, 0), end, .02);
}

TEST_CASE("what was soured beforehand is in the first refill only") {
    const auto input = quick();
    ModelForecaster model(input);
    auto soured = input.base, mild = input.base;
    soured.recipe.preSoured = {.3};
    const auto with = model.trajectory(soured, 0, 6).value(), without = model.trajectory(mild, 0, 6).value();
    const auto first =
        predict(input.parameters, input.state, resolved(input, soured), planOf(input, soured, input.toThisDraw));
    const auto second =
        predict(input.parameters, first.nextDraw.state, resolved(input, mild), planOf(input, mild, {0}));
    checkNear(with.draws[0].scores, first.nextDraw.scores, 1e-9);
    checkNear(with.draws[1].scores, second.nextDraw.scores, 1e-9);
    const auto more = [&](std::size_t h) {
        return with.draws[h].scores[Dimension::acidity] - without.draws[h].scores[Dimension::acidity];
    };
    CHECK(more(0) > .05);
    for (std::size_t h = 1; h < 6; ++h)
        CHECK(std::abs(more(h)) < std::abs(more(h - 1)));
}

TEST_CASE("a recipe that cannot be resolved is a fault below /recipe") {
    const auto input = quick();
    ModelForecaster model(input);
    auto setting = input.base;
    setting.recipe.grist.clear();
    REQUIRE_FALSE(model.trajectory(setting, 0, 1));
    CHECK(model.trajectory(setting, 0, 1).error().path.starts_with("/recipe"));
    CHECK_FALSE(model.sizing(setting).converted);
}

TEST_CASE("sizing tells what does not fit the kit") {
    auto input = quick();
    ModelForecaster model(input);
    CHECK(model.sizing(input.base).over.l < 0);
    CHECK(model.sizing(input.base).converted);
    input.equipment.kettle = {60};
    ModelForecaster small(input);
    const auto sizing = small.sizing(input.base);
    CHECK(sizing.over.l > 0);
    CHECK(!sizing.findings.empty());
    input.fillTo = {100}; // nothing to fill in
    ModelForecaster nothing(input);
    CHECK(nothing.sizing(input.base).over.l <= 0);
}

TEST_CASE("recipes that differ in one number have different hashes") {
    const auto base = scenario::plainRecipe();
    const RecipeHash hash;
    std::set<std::size_t> seen{hash(base)};
    const auto vary = [&](auto change) {
        auto recipe = base;
        change(recipe);
        CHECK(seen.insert(hash(recipe)).second);
    };
    vary([](Recipe& r) { r.bitterness = {11}; });
    vary([](Recipe& r) { r.originalGravity = {12.25}; });
    vary([](Recipe& r) { r.yeast = "saison"; });
    vary([](Recipe& r) { r.path = MashPath::ramp; });
    vary([](Recipe& r) { r.mash[0].temperature = {66.5}; });
    vary([](Recipe& r) { r.grist[1].late = true; });
    vary([](Recipe& r) { r.preSoured = {.1}; });
}
