// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/search.h"

#include "advice/fake_forecaster.h"
#include "advice/scenario.h"
#include "support/catch.h"
#include "support/property.h"

#include <cmath>

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::ingredient;
using namespace staveline::tasting;

namespace {

const auto anything = [](const OptionSet&) { return true; };

/// A search over the fake model, with everything that must outlive it.
struct Bench {
    AdviceInput input = scenario::cask();
    FakeForecaster model{input};
    Baseline baseline;
    Goal goal;
    std::optional<Search> search;

    Bench() {
        input.equipment.mashTun = {1000};
        model.base = {{6, 4, 4}};
        for (auto d : allDimensions) {
            input.model[d] = input.combined[d] = {model.base[d], .3};
            input.target.windows[d] = {model.base[d], 1};
            input.verdicts[d].kind = VerdictKind::move;
        }
    }
    Search& open(std::stop_token stop = {}) {
        baseline = prepare(input).value();
        goal = goalFrom(input, {model.share()}, model.trajectory(baseline.start, 0, input.horizon).value());
        search.emplace(input, baseline, model, goal, std::move(stop));
        return *search;
    }
    Search& surveyed() {
        open();
        REQUIRE(search->survey());
        return *search;
    }
};

std::map<std::string, LeverValue> movesOf(const Search& search, const Scored& plan) {
    std::map<std::string, LeverValue> moves;
    for (const auto& move : search.moves(plan.options))
        moves.emplace(move.lever->id, move.to);
    return moves;
}

} // namespace

TEST_CASE("the lever that closes the gap is found at the step that closes it") {
    Bench bench;
    bench.input.lambda = 0;
    bench.model.perUnit["sacch_temperature"] = {{.5, 0, 0}}; // a unit is 2 C
    bench.input.target.windows[Dimension::acidity].wanted = 6 - .5 * .7;
    auto& search = bench.surveyed();
    const auto best = search.best(anything, 50).value().value();
    const auto moves = movesOf(search, best);
    REQUIRE(moves.contains("sacch_temperature"));
    // Over three draws at f .35 the kept change shows .351, .579, .727 of itself: 1.5 units would be best, 66 - 3 C.
    const double f = bench.model.share();
    double top = 0, bottom = 0;
    for (int h = 1; h <= 3; ++h) {
        const double reached = 1 - std::pow(1 - f, h);
        top += .35 * reached;
        bottom += .5 * reached * reached;
    }
    const double exact = 66 - 2 * top / bottom;
    CHECK(std::abs(number(moves.at("sacch_temperature")) - exact) <= .25);
}

TEST_CASE("where levers only add up, screening finds the best plan of all") {
    Bench bench;
    bench.model.perUnit = {{"sacch_temperature", {{.5, -.1, .1}}}, {"bitterness", {{-.4, 0, 0}}},
                           {"ferulic_rest", {{0, .5, -.05}}},      {"sugar", {{-.2, -.1, -.2}}},
                           {"glucan_grain", {{0, -.1, .3}}},       {"draw", {{-.1, -.3, .1}}}};
    bench.model.choices[{"yeast", "ale_high"}] = {{-.5, 0, 0}};
    for (const auto& wanted : {Scores{{5, 5, 4}}, Scores{{7, 3, 5}}, Scores{{5.2, 4.2, 4.6}}}) {
        for (auto d : allDimensions)
            bench.input.target.windows[d].wanted = wanted[d];
        auto& search = bench.surveyed();
        CHECK(search.plans() > 1300);
        const auto best = search.best(anything, 10).value().value();
        const auto first = search.exhaustive(anything).value().value();
        CHECK(best.cost == Approx(first.cost).epsilon(1e-12));
        CHECK(best.options == first.options);
    }
}

TEST_CASE("two levers that help each other are still found within a thousandth") {
    Bench bench;
    bench.model.perUnit = {{"ferulic_rest", {{0, .4, 0}}}, {"precursor_malt", {{0, .2, 0}}}, {"draw", {{0, -.3, 0}}}};
    bench.model.pair = {"ferulic_rest", "precursor_malt"};
    bench.model.together = {{0, .08, 0}};
    bench.input.target.windows[Dimension::funk].wanted = 5.5;
    auto& search = bench.surveyed();
    const double best = search.best(anything, 50).value()->cost;
    const double first = search.exhaustive(anything).value()->cost;
    CHECK(best >= first);
    CHECK(best <= first * 1.001);
}

TEST_CASE("no plan moves more than it may, nor one lever twice") {
    Bench bench;
    bench.model.perUnit["gravity"] = {{.4, .3, .5}};
    for (int most : {1, 2}) {
        bench.input.maxMoved = most;
        auto& search = bench.surveyed();
        REQUIRE(search.best(
            [&](const OptionSet& options) {
                CHECK(static_cast<int>(options.size()) <= most);
                if (options.size() == 2)
                    CHECK(search.option(options[0]).move.lever != search.option(options[1]).move.lever);
                return true;
            },
            5));
    }
}

TEST_CASE("locked and unproposed levers are in no plan") {
    Bench bench;
    bench.input.locks = {{"ferulic_rest", 0.0}, {"draw", 74.0}};
    auto& search = bench.surveyed();
    std::set<std::string> seen;
    REQUIRE(search.exhaustive([&](const OptionSet& options) {
        for (auto i : options)
            seen.insert(search.option(i).move.lever->id);
        return false;
    }));
    CHECK(seen.contains("yeast"));
    for (const auto* id : {"ferulic_rest", "draw", "smoked_malt", "cellar_temperature", "sacch_path"})
        CHECK_FALSE(seen.contains(id));
}

TEST_CASE("a lever that needs another comes only with it") {
    Bench bench;
    auto& search = bench.surveyed();
    int together = 0;
    REQUIRE(search.exhaustive([&](const OptionSet& options) {
        for (auto i : options)
            if (search.option(i).move.lever->id == "sacch_path") {
                REQUIRE(options.size() == 2);
                CHECK(search.option(options[0]).move.lever->id == "ferulic_rest");
                ++together;
            }
        return false;
    }));
    CHECK(together == 8); // eight rests of 5 to 40 min
}

TEST_CASE("what does not fit the kit or leaves the alcohol range is never best") {
    Bench bench;
    bench.input.lambda = 0;
    bench.model.perUnit = {{"gravity", {{0, 0, .5}}}, {"draw", {{0, 0, .4}}}, {"glucan_grain", {{0, 0, .1}}}};
    bench.input.target.windows[Dimension::body].wanted = 7;
    bench.input.target.alcoholHigh = {6.5};
    bench.model.tooLarge = {"draw"};
    auto& search = bench.surveyed();
    const auto best = search.best(anything, 50).value().value();
    const auto moves = movesOf(search, best);
    CHECK_FALSE(moves.contains("draw"));
    REQUIRE(moves.contains("gravity"));
    CHECK(number(moves.at("gravity")) == 13); // 6 % + .5 a degree
    CHECK(best.trajectory.draws.back().alcohol.pct <= 6.5 + 1e-9);
    CHECK(moves.contains("glucan_grain"));
}

TEST_CASE("two levers that want the same base malt never take more than there is") {
    Bench bench;
    bench.input.base.recipe.grist = {{"pilsner", {.25}, false}, {"wheat_malt", {.75}, false}};
    bench.model.perUnit = {{"glucan_grain", {{0, 0, .3}}}, {"precursor_malt", {{0, .4, 0}}}};
    bench.input.target.windows[Dimension::body].wanted = 6;
    bench.input.target.windows[Dimension::funk].wanted = 6;
    auto& search = bench.surveyed();
    const auto best = search.exhaustive(anything).value().value();
    double sum = 0;
    for (const auto& part : best.setting.recipe.grist) {
        CHECK(part.share.of1 >= 0);
        sum += part.share.of1;
    }
    CHECK(sum == Approx(1));
    const auto moves = movesOf(search, best);
    if (moves.contains("glucan_grain") && moves.contains("precursor_malt"))
        CHECK(number(moves.at("glucan_grain")) + number(moves.at("precursor_malt")) <= 25 + 1e-9);
}

TEST_CASE("an uncertain lever is moved less than a sure one") {
    Bench bench;
    bench.model.perUnit["gravity"] = {{0, .5, 0}};
    bench.input.target.windows[Dimension::funk].wanted = 4.5;
    bench.model.draws = 16;
    double sure = 0;
    for (double spread : {0.0, .5, 1.0}) {
        bench.model.spread = spread;
        auto& search = bench.surveyed();
        const auto best = search.best(anything, 50).value().value();
        const double moved = number(movesOf(search, best).at("gravity")) - 12;
        if (spread == 0)
            sure = moved;
        else
            CHECK(moved < sure);
    }
}

TEST_CASE("the cost of a plan is gaps, uncertainty and effort") {
    Bench bench;
    bench.model.perUnit["gravity"] = {{0, .5, 0}};
    bench.model.draws = 16;
    bench.model.spread = .4;
    bench.input.target.windows[Dimension::funk].wanted = 4.6;
    auto& search = bench.surveyed();
    const auto best = search
                          .best(
                              [&](const OptionSet& o) {
                                  const auto& move = search.option(o[0]).move;
                                  return o.size() == 1 && move.lever->id == "gravity" && number(move.to) == 13.5;
                              },
                              5)
                          .value()
                          .value();
    // Two units of .5 at full strength; f of it shows at the next draw.
    const double f = bench.model.share();
    double gaps = 0, growth = 0, variance = 0;
    for (int h = 1; h <= 3; ++h) {
        const double reached = 1 - std::pow(1 - f, h);
        gaps += std::pow(.6 - reached, 2) / 3;
        growth += std::pow(reached / f, 2) / 3;
    }
    for (int k = 0; k < 16; ++k)
        variance += std::pow(f * .4 * (2.0 * k / 15 - 1), 2) / 15;
    const double effort = .03 * std::pow(1 - std::pow(1 - f, 3), 2) * 2;
    CHECK(best.cost == Approx(gaps + variance * growth + effort));
    CHECK(best.effort == Approx(2));
}

TEST_CASE("each lever's own best is what one-lever plans give") {
    Bench bench;
    bench.model.perUnit = {{"gravity", {{0, .5, 0}}}, {"sugar", {{0, -.3, 0}}}};
    bench.input.target.windows[Dimension::funk].wanted = 4.5;
    auto& search = bench.surveyed();
    const auto singles = search.bestOfEachLever().value();
    std::set<const Lever*> levers;
    for (const auto& plan : singles) {
        REQUIRE(plan.options.size() == 1);
        levers.insert(search.option(plan.options[0]).move.lever);
    }
    CHECK(levers.size() == singles.size());
    CHECK(levers.contains(findLever("gravity")));
}

TEST_CASE("a search that is told to stop stops") {
    Bench bench;
    std::stop_source source;
    auto& search = bench.open(source.get_token());
    source.request_stop();
    const auto surveyed = search.survey();
    REQUIRE_FALSE(surveyed);
    CHECK(surveyed.error().kind == FaultKind::notPossible);
    CHECK(bench.model.asked < 5);
}

TEST_CASE("screening agrees with full prediction whatever the effects") {
    CHECK_PROPERTY("additive effects", [] {
        Bench bench;
        const auto effect = [] { return .1 * *rc::gen::inRange(-6, 7); };
        for (const auto* id : {"sacch_temperature", "ferulic_rest", "sugar", "interval"})
            bench.model.perUnit[id] = {{effect(), effect(), effect()}};
        for (const auto* id : {"gravity", "glucan_grain", "precursor_malt", "presour", "mash_ph", "bitterness"})
            bench.input.locks.push_back({id, leverValue(bench.input.base, id, builtInPantry())});
        for (auto d : allDimensions)
            bench.input.target.windows[d].wanted = bench.model.base[d] + effect() * 3;
        auto& search = bench.surveyed();
        const double best = search.best(anything, 5).value()->cost;
        const double first = search.exhaustive(anything).value()->cost;
        RC_ASSERT(std::abs(best - first) <= 1e-9 * (1 + first));
    });
}
