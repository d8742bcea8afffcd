// SPDX-License-Identifier: GPL-3.0-or-later
// Advice for recipes, tastings and locks of every legal kind: always an answer or a reason, and moves that add up.
#include "advice/board.h"
#include "advice/lever.h"
#include "advice/scenario.h"
#include "support/catch.h"

#include <array>
#include <cmath>
#include <random>

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::brewing;
using namespace staveline::ingredient;

namespace {

/// The same numbers on every machine, which the distributions of the library do not promise.
class Dice {
public:
    explicit Dice(unsigned seed) : engine_(seed) {}
    double between(double low, double high) {
        return low + (high - low) * static_cast<double>(engine_()) / 4294967296.;
    }
    bool chance(double share) { return between(0, 1) < share; }
    template <class List> const auto& oneOf(const List& list) { return list[engine_() % std::size(list)]; }

private:
    std::mt19937 engine_;
};

std::vector<GristPart> anyGrist(Dice& dice) {
    static constexpr std::array bases = {"pilsner", "pale", "high_enzyme"};
    static constexpr std::array others = {"flaked_oats", "flaked_barley", "raw_wheat", "flaked_rye", "rye_malt",
                                          "oat_malt",    "munich_light",  "vienna",    "roasted"};
    const double other = dice.between(.1, .6), wheat = dice.between(.02, .3);
    std::vector<GristPart> grist{{dice.oneOf(bases), {1 - other - wheat}, false}, {"wheat_malt", {wheat}, false}};
    grist.push_back({dice.oneOf(others), {other}, false});
    return grist;
}

std::vector<MashStep> anyMash(Dice& dice) {
    std::vector<MashStep> mash{{{std::round(dice.between(62, 72))}, {std::round(dice.between(30, 90))}}};
    if (dice.chance(.3))
        mash.insert(mash.begin(), {{std::round(dice.between(43, 52))}, {std::round(dice.between(5, 30))}});
    return mash;
}

Recipe anyRecipe(Dice& dice) {
    Recipe recipe;
    recipe.grist = anyGrist(dice);
    recipe.mash = anyMash(dice);
    recipe.path = dice.chance(.5) ? MashPath::jump : MashPath::ramp;
    recipe.originalGravity = {dice.between(10, 15)};
    recipe.bitterness = {dice.between(0, 25)};
    recipe.yeast = dice.oneOf(builtInPantry().yeasts()).id;
    for (auto& part : recipe.grist)
        part.late = recipe.mash.size() > 1 && dice.chance(.2) && &part != &recipe.grist.front();
    return recipe;
}

LeverValue anyValue(Dice& dice, const Lever& lever, const AdviceInput& input) {
    const auto steps = stepsOf(lever, input.base, input);
    return steps.empty() ? lever.read(input.base, {*input.pantry, input.unavailable}) : dice.oneOf(steps);
}

/// Not every grist has the enzymes to convert itself.
Recipe anyBrewableRecipe(Dice& dice) {
    auto recipe = anyRecipe(dice);
    while (!resolve(recipe, builtInPantry(), jumpRate))
        recipe = anyRecipe(dice);
    return recipe;
}

/// A cask on the recipe with a tasting, a target and now and then a lock or something that is not at hand.
AdviceInput anyQuestion(Dice& dice) {
    auto input = scenario::cask(anyBrewableRecipe(dice));
    input.draws = 4;
    input.withSettled = false;
    scenario::taste(input, {{dice.between(-3, 3), dice.between(-3, 3), dice.between(-2, 2)}}, dice.between(.2, 1.2));
    scenario::want(input, {{dice.between(-3, 3), dice.between(-3, 3), dice.between(-2, 2)}}, dice.between(.3, 1.2));
    for (int i = 0; i < 2; ++i)
        if (dice.chance(.3)) {
            const auto& lever = dice.oneOf(levers());
            input.locks.push_back({lever.id, anyValue(dice, lever, input)});
        }
    if (dice.chance(.15))
        input.unavailable.insert(dice.oneOf(input.base.recipe.grist).grain);
    return input;
}

void checkMovesAddUp(const Proposal& proposal, const Proposal& alone) {
    for (auto d : allDimensions) {
        double sum = 0;
        for (const auto& move : proposal.moves)
            sum += move.forced ? 0 : move.next.value()[d];
        CHECK(sum == Approx(proposal.next[d].value - alone.next[d].value).margin(1e-9));
    }
}

/// Levers in any order, as a brewer would turn them on the try board.
std::vector<TriedValue> anyTrial(Dice& dice, const AdviceInput& input) {
    std::vector<TriedValue> tried;
    for (const auto& lever : levers())
        if (dice.chance(.4))
            tried.insert(tried.begin() + (dice.chance(.5) ? 0 : static_cast<std::ptrdiff_t>(tried.size())),
                         {lever.id, anyValue(dice, lever, input)});
    return tried;
}

} // namespace

TEST_CASE("a new rest with the oats after it is proposed, and what each of the two does") {
    Recipe recipe;
    recipe.grist = {{"pilsner", {.61}, false}, {"wheat_malt", {.25}, false}, {"flaked_oats", {.14}, false}};
    recipe.mash = {{{69}, {45}}};
    recipe.originalGravity = {12.25};
    auto input = scenario::cask(recipe);
    input.draws = 4;
    input.withSettled = false;
    input.equipment.mashTun = {250};
    input.equipment.kettle = {300};
    input.equipment.fermenter = {280};
    for (const auto& lever : levers())
        if (lever.id != "ferulic_rest" && lever.id != "late_unmalted")
            input.locks.push_back({lever.id, leverValue(input.base, lever.id, *input.pantry)});
    scenario::taste(input, {}, .2);
    scenario::want(input, {{0, 1.5, .3}}, .5); // the rest brings funk and takes body; late oats keep some of it
    input.target.windows[Dimension::funk].band = 1.5;
    input.verdicts = scenario::verdictsFor(input);
    const auto advice = advise(input);
    REQUIRE(advice);
    const auto both = std::find_if(advice->proposals.begin(), advice->proposals.end(),
                                   [](const Proposal& proposal) { return proposal.moves.size() == 2; });
    REQUIRE(both != advice->proposals.end());
    for (const auto& proposal : advice->proposals)
        checkMovesAddUp(proposal, advice->leaveAlone);
}

TEST_CASE("any legal recipe, tasting and lock gets advice whose moves add up, or a reason in words") {
    int advised = 0;
    for (unsigned seed = 1; seed <= 150; ++seed) {
        INFO("seed " << seed);
        Dice dice(seed);
        const auto advice = advise(anyQuestion(dice));
        if (!advice) {
            CHECK_FALSE(advice.error().cause.key.empty());
            continue;
        }
        ++advised;
        for (const auto& proposal : advice->proposals)
            checkMovesAddUp(proposal, advice->leaveAlone);
    }
    CHECK(advised > 100);
}

TEST_CASE("any levers tried together are one trial whose parts add up, or a reason in words") {
    int tried = 0;
    for (unsigned seed = 1; seed <= 100; ++seed) {
        INFO("seed " << seed);
        Dice dice(seed);
        const auto input = anyQuestion(dice);
        const auto trial = TryBoard(input).trial(anyTrial(dice, input), TrialDepth::central);
        if (!trial) {
            CHECK_FALSE(trial.error().cause.key.empty());
            continue;
        }
        ++tried;
        for (auto d : allDimensions) {
            double sum = 0;
            for (const auto& part : trial->parts)
                sum += part.next[d];
            CHECK(sum == Approx(trial->changeNext[d]).margin(1e-9));
        }
    }
    CHECK(tried > 50);
}
