// SPDX-License-Identifier: GPL-3.0-or-later
// What the adviser does with the real model, in vessels whose answer a careful brewer would expect. Which lever is
// chosen follows from our own model: regression values, not evidence.
#include "advice/adviser.h"
#include "advice/board.h"
#include "advice/lever.h"

#include "advice/scenario.h"
#include "support/catch.h"

#include <algorithm>
#include <cmath>

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::brewing;
using namespace staveline::forward;
using namespace staveline::ingredient;
using namespace staveline::tasting;

namespace {

AdviceInput wanting(const Scores& change) {
    auto input = scenario::cask();
    input.draws = 16;
    input.withSettled = false;
    scenario::want(input, change);
    return input;
}

void lockAllBut(AdviceInput& input, const std::set<std::string>& free) {
    for (const auto& lever : levers())
        if (!free.contains(lever.id))
            input.locks.push_back({lever.id, leverValue(input.base, lever.id, *input.pantry)});
}

/// The value a lever has in the first proposal.
LeverValue proposed(const AdviceInput& input, const Advice& advice, const char* lever) {
    REQUIRE(!advice.proposals.empty());
    return leverValue(advice.proposals.front().setting, lever, *input.pantry);
}

/// The answer when only this lever is free.
double only(const char* lever, const Scores& change) {
    auto input = wanting(change);
    input.stepCaps = false;
    input.equipment.mashTun = input.equipment.kettle = input.equipment.fermenter = {1000};
    lockAllBut(input, {lever});
    return number(proposed(input, advise(input).value(), lever));
}

double gapOf(const AdviceInput& input, const Scores& scores) {
    double sum = 0;
    for (auto d : allDimensions)
        sum += std::abs(scores[d] - input.target.windows[d].wanted);
    return sum;
}

/// One cycle as advised; the model is the truth.
void liveThrough(AdviceInput& input, const Setting& setting) {
    const auto recipe = resolve(setting.recipe, *input.pantry, input.equipment.heatingRate).value();
    const Plan plan{input.toThisDraw, {79.0 / 225}, setting.interval, setting.temperature, input.oxygenPerYear};
    auto state = predict(input.parameters, input.state, recipe, plan).nextDraw.state;
    input.state = state;
    input.base = setting;
    input.toThisDraw = {0};
    const auto now = outcomeOf(state, input.parameters).scores;
    for (auto d : allDimensions)
        input.model[d].mean = now[d];
    scenario::taste(input, {}, .3);
}

} // namespace

TEST_CASE("less acidity asks for a cooler mash, more for a hotter one (regression)") {
    CHECK(only("sacch_temperature", {{-1.5, 0, 0}}) < 66);
    CHECK(only("sacch_temperature", {{1.5, 0, 0}}) > 66);
}

TEST_CASE("hops alone take too little acidity to be tasted, and are not proposed (regression)") {
    auto input = wanting({{-2.5, 0, 0}});
    lockAllBut(input, {"bitterness"});
    CHECK(advise(input).value().proposals.empty());
    const auto more = TryBoard(input).trial({{"bitterness", 16.0}}, TrialDepth::settled).value();
    CHECK(more.changeNext[Dimension::acidity] < 0);
    CHECK(more.changeSettled[Dimension::acidity] < more.changeNext[Dimension::acidity]);
}

TEST_CASE("more funk asks for a ferulic rest (regression)") {
    CHECK(only("ferulic_rest", {{0, 1.5, 0}}) >= 15);
}

TEST_CASE("less funk asks for a larger draw or a shorter wait (regression)") {
    CHECK(only("draw", {{0, -2, 0}}) > 74);
    CHECK(only("interval", {{0, -2, 0}}) < 240);
}

TEST_CASE("more body asks for oats and for strength (regression)") {
    CHECK(only("glucan_grain", {{0, 0, 1.8}}) >= 5);
    CHECK(only("gravity", {{0, 0, 1.8}}) > 12);
}

TEST_CASE("a lot more acidity asks for souring part of the refill beforehand (regression)") {
    CHECK(only("presour", {{2.5, 0, 0}}) > 0);
}

TEST_CASE("hops are the last lever: with all others free they are not touched (regression)") {
    for (const auto& change : {Scores{{-1.5, 0, 0}}, Scores{{-1.5, 1.4, 0}}, Scores{{-1, -1, 0}}}) {
        const auto input = wanting(change);
        const auto advice = advise(input).value();
        REQUIRE(!advice.proposals.empty());
        for (const auto& move : advice.proposals.front().moves)
            CHECK(move.lever != "bitterness");
    }
}

TEST_CASE("a vessel that is only a little off is left alone") {
    CHECK(advise(wanting({{.05, -.05, 0}})).value().proposals.empty());
    CHECK_FALSE(advise(wanting({{1.2, -1.2, 0}})).value().proposals.empty());
}

TEST_CASE("what a dimension on target has is not spent on another") {
    auto input = wanting({{-1.5, 1.4, 0}});
    const auto advice = advise(input).value();
    REQUIRE(!advice.proposals.empty());
    for (const auto& proposal : advice.proposals) {
        const auto& window = input.target.windows[Dimension::body];
        CHECK(std::abs(proposal.next[Dimension::body].value - window.wanted) <= window.band);
    }
}

TEST_CASE("where nothing is drawn and nothing goes in, no lever is moved but time") {
    auto input = wanting({{-1.5, 1.4, 0}});
    input.volumeAtDraw = {0};
    input.fillTo = {0};
    input.base.draw = {0};
    const auto advice = advise(input).value();
    CHECK(advice.leaveAlone.refill.l == 0);
    for (const auto& proposal : advice.proposals)
        for (const auto& move : proposal.moves)
            CHECK(move.lever == "interval"); // time still passes
}

TEST_CASE("locks in another order give the same advice") {
    auto input = wanting({{-1.5, 1.4, 0}});
    input.locks = {{"ferulic_rest", 20.0}, {"yeast", std::string("ale_high")}, {"sacch_path", std::string("ramp")}};
    const auto one = advise(input).value();
    REQUIRE(!one.proposals.empty());
    std::reverse(input.locks.begin(), input.locks.end());
    const auto other = advise(input).value();
    REQUIRE(one.proposals.size() == other.proposals.size());
    for (std::size_t i = 0; i < one.proposals.size(); ++i)
        CHECK(one.proposals[i].setting == other.proposals[i].setting);
}

TEST_CASE("what nobody wanted may be missing without changing the advice") {
    auto input = wanting({{-1.5, 1.4, 0}});
    const auto one = advise(input).value();
    REQUIRE(!one.proposals.empty());
    input.unavailable = {"roasted", "honey", "lager_clean"};
    const auto other = advise(input).value();
    REQUIRE(one.proposals.size() == other.proposals.size());
    for (std::size_t i = 0; i < one.proposals.size(); ++i)
        CHECK(one.proposals[i].setting == other.proposals[i].setting);
}

TEST_CASE("a yeast that would be chosen and is not at hand has its price told") {
    auto input = wanting({{-2, 0, 0}});
    for (const auto* id : {"sacch_temperature", "sugar", "draw", "interval"})
        input.locks.push_back({id, leverValue(input.base, id, *input.pantry)});
    const auto open = advise(input).value();
    REQUIRE(!open.proposals.empty());
    const auto chosen = open.proposals.front().setting.recipe.yeast;
    REQUIRE(chosen != input.base.recipe.yeast);
    input.unavailable = {chosen};
    input.withSettled = true;
    const auto closed = advise(input).value();
    const double best = closed.proposals.empty() ? closed.leaveAlone.cost : closed.proposals.front().cost;
    const auto priced = std::find_if(closed.prices.begin(), closed.prices.end(),
                                     [&](const RestrictionPrice& price) { return price.id == chosen; });
    REQUIRE(priced != closed.prices.end());
    CHECK(priced->cost == Approx(best - open.proposals.front().cost));
    CHECK(std::any_of(closed.notes.begin(), closed.notes.end(),
                      [](const Message& note) { return note.key == "advice.note.missingPrice"; }));
}

TEST_CASE("advice followed for six cycles brings the vessel home where the model is right") {
    auto input = wanting({{-1.2, 1.0, .3}});
    const auto wanted = input.target;
    const double before = gapOf(input, outcomeOf(input.state, input.parameters).scores);
    for (int cycle = 0; cycle < 6; ++cycle) {
        const auto advice = advise(input).value();
        liveThrough(input, advice.proposals.empty() ? advice.leaveAlone.setting : advice.proposals.front().setting);
        input.target = wanted;
    }
    const auto after = outcomeOf(input.state, input.parameters).scores;
    CHECK(gapOf(input, after) < .45 * before);
    for (auto d : allDimensions)
        CHECK(std::abs(after[d] - wanted.windows[d].wanted) <= wanted.windows[d].band);
}

TEST_CASE("a vessel that tastes more sour than modelled is advised as it tastes") {
    auto input = wanting({{0, 0, 0}});
    scenario::taste(input, {{1.6, 0, 0}}, .3);
    const auto advice = advise(input).value();
    CHECK(advice.verdicts[Dimension::acidity].kind == VerdictKind::move);
    CHECK_FALSE(advice.verdicts[Dimension::acidity].up);
    REQUIRE(!advice.proposals.empty());
    CHECK(advice.leaveAlone.next[Dimension::acidity].value > input.target.windows[Dimension::acidity].wanted + 1);
    CHECK(advice.proposals.front().next[Dimension::acidity].value < advice.leaveAlone.next[Dimension::acidity].value);
}

TEST_CASE("a slower vessel is asked for no less effort only because it is slow") {
    auto quick = wanting({{-1.5, 0, 0}}), slow = quick;
    slow.base.draw = {44};
    for (auto* input : {&quick, &slow}) {
        input->stepCaps = false;
        lockAllBut(*input, {"sacch_temperature"});
    }
    CHECK(number(proposed(slow, advise(slow).value(), "sacch_temperature")) <=
          number(proposed(quick, advise(quick).value(), "sacch_temperature")));
}

TEST_CASE("bands of leaving it alone are what is known of the vessel, and a little wider the farther ahead") {
    auto input = wanting({{-1.5, 1.4, 0}});
    input.withSettled = true;
    const auto alone = advise(input).value().leaveAlone;
    for (auto d : allDimensions) {
        const double known = 2 * z80 * input.combined[d].sd;
        const auto wide = [](const Band& band) { return band.high - band.low; };
        CHECK(wide(alone.thisDraw[d]) >= known);
        CHECK(wide(alone.next[d]) > wide(alone.thisDraw[d]));
        CHECK(wide(alone.settled[d]) > wide(alone.next[d]));
        CHECK(wide(alone.settled[d]) < known * 1.6);
    }
}
