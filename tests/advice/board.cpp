// SPDX-License-Identifier: GPL-3.0-or-later
// The try board: room of each lever, parts that add up, the same answer as the adviser's own prediction.
#include "advice/board.h"
#include "advice/bands.h"
#include "advice/scenario.h"
#include "quantity/text.h"
#include "support/catch.h"

#include <algorithm>

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::ingredient;

namespace {

AdviceInput tooSour() {
    auto input = scenario::cask();
    scenario::want(input, {{-1.5, 1, 0}});
    return input;
}

const BoardLine& line(const std::vector<BoardLine>& board, std::string_view lever) {
    const auto found = std::find_if(board.begin(), board.end(), [&](const auto& l) { return l.row.id == lever; });
    REQUIRE(found != board.end());
    return *found;
}

double sum(const Trial& trial, Scores Trial::Part::*when, Dimension d) {
    double total = 0;
    for (const auto& part : trial.parts)
        total += (part.*when)[d];
    return total;
}

} // namespace

TEST_CASE("the board has a line for every lever, the present value among its steps") {
    const auto input = tooSour();
    const auto board = boardOf(input);
    CHECK(board.size() == builtInLevers().size());
    for (const auto& each : board) {
        INFO(each.row.id);
        CHECK(render(valueText(each.row.id, each.now, *input.pantry)).size() > 0);
        if (each.row.isChoice() || !each.choices.empty()) {
            CHECK(std::any_of(each.choices.begin(), each.choices.end(),
                              [&](const BoardChoice& c) { return LeverValue{c.id} == each.now; }));
            continue;
        }
        REQUIRE(each.steps.size() > 1);
        CHECK(std::is_sorted(each.steps.begin(), each.steps.end()));
        CHECK(std::count(each.steps.begin(), each.steps.end(), each.now) == 1);
    }
}

TEST_CASE("a line knows its lock, what is not at hand and whether it acts here") {
    auto input = tooSour();
    input.locks = {{"bitterness", 12.0}};
    input.unavailable = {"saison_pof"};
    const auto board = boardOf(input);
    REQUIRE(line(board, "bitterness").lockedAt);
    CHECK(*line(board, "bitterness").lockedAt == LeverValue{12.0});
    CHECK_FALSE(line(board, "draw").lockedAt);
    CHECK_FALSE(line(board, "cellar_temperature").applies);
    CHECK_FALSE(line(board, "sacch_path").applies); // one rest: no way to go
    for (const auto& choice : line(board, "yeast").choices)
        CHECK(choice.atHand == (choice.id != "saison_pof"));
}

TEST_CASE("values are shown in the lever's own unit") {
    const auto& pantry = builtInPantry();
    CHECK(render(valueText("sacch_temperature", 63.5, pantry)) == "63.5 °C");
    CHECK(render(valueText("draw", 85.0, pantry)) == "85.0 L");
    CHECK(render(valueText("sugar", 5.0, pantry)) == "5 %");
    CHECK(render(valueText("sacch_path", std::string("jump"), pantry)) == "hot water at once");
    CHECK(render(valueText("yeast", std::string("ale_clean"), pantry)) == pantry.yeast("ale_clean")->name);
}

TEST_CASE("what is tried adds up: parts make the whole change, at the next draw and if kept up") {
    const auto input = tooSour();
    TryBoard board(input);
    const auto trial =
        board.trial({{"draw", 95.0}, {"sacch_temperature", 63.0}, {"ferulic_rest", 20.0}}, TrialDepth::settled);
    REQUIRE(trial);
    CHECK(trial->parts.size() == 3);
    for (auto d : allDimensions) {
        CHECK(sum(*trial, &Trial::Part::next, d) == Approx(trial->changeNext[d]).margin(1e-9));
        CHECK(sum(*trial, &Trial::Part::settled, d) == Approx(trial->changeSettled[d]).margin(1e-6));
        CHECK(trial->next[d].low < trial->next[d].value);
        CHECK(trial->next[d].value < trial->next[d].high);
    }
    CHECK(trial->changeNext[Dimension::acidity] < 0); // a larger draw and a cooler mash take acidity away
}

TEST_CASE("the quick answer is the full one without its bands") {
    const auto input = tooSour();
    TryBoard board(input);
    const std::vector<TriedValue> tried = {{"draw", 60.0}, {"bitterness", 15.0}};
    const auto quick = board.trial(tried, TrialDepth::central);
    const auto full = board.trial(tried, TrialDepth::next);
    REQUIRE(quick);
    REQUIRE(full);
    for (auto d : allDimensions) {
        CHECK(quick->next[d].value == full->next[d].value);
        CHECK(quick->next[d].low == quick->next[d].high);
        CHECK(quick->changeNext[d] == full->changeNext[d]);
    }
    CHECK(quick->setting == full->setting);
    CHECK(quick->nextBeer.bitterness == full->nextBeer.bitterness);
}

TEST_CASE("a long drag ends with the answer it began with") {
    const auto input = tooSour();
    TryBoard board(input);
    const std::vector<TriedValue> tried = {{"draw", 60.0}};
    const auto first = board.trial(tried, TrialDepth::next);
    for (int i = 0; i < 450; ++i)
        REQUIRE(board.trial({{"draw", 50.0 + i % 40}}, TrialDepth::central));
    const auto last = board.trial(tried, TrialDepth::next);
    for (auto d : allDimensions) {
        CHECK(last->next[d].value == first->next[d].value);
        CHECK(last->next[d].high == first->next[d].high);
    }
}

TEST_CASE("nothing tried changes nothing, and a setting by hand is judged like its levers") {
    const auto input = tooSour();
    TryBoard board(input);
    const auto nothing = board.trial(std::vector<TriedValue>{}, TrialDepth::settled);
    REQUIRE(nothing);
    CHECK(nothing->setting == input.base);
    for (auto d : allDimensions) {
        CHECK(nothing->changeNext[d] == 0);
        CHECK(nothing->changeSettled[d] == 0);
    }
    const auto tried = board.trial({{"gravity", 13.0}}, TrialDepth::next);
    REQUIRE(tried);
    const auto byHand = board.trial(tried->setting, TrialDepth::next);
    REQUIRE(byHand);
    CHECK(byHand->parts.empty());
    for (auto d : allDimensions)
        CHECK(byHand->next[d].value == tried->next[d].value);
}

TEST_CASE("a stronger refill is fuller, and more so if kept up (regression of the sign only)") {
    const auto tried = TryBoard(tooSour()).trial({{"gravity", 14.0}}, TrialDepth::settled).value();
    CHECK(tried.changeNext[Dimension::body] > 0);
    CHECK(tried.changeSettled[Dimension::body] > tried.changeNext[Dimension::body]);
}

TEST_CASE("a recipe by hand that cannot be brewed is a fault below /recipe") {
    const auto input = tooSour();
    auto broken = input.base;
    broken.recipe.grist.clear();
    const auto trial = TryBoard(input).trial(broken, TrialDepth::central);
    REQUIRE_FALSE(trial);
    CHECK(trial.error().path.starts_with("/recipe"));
}

TEST_CASE("a trial says what does not fit and what is dangerous") {
    auto input = tooSour();
    input.equipment.kettle = {20};
    TryBoard board(input);
    const auto trial = board.trial({{"presour", 30.0}}, TrialDepth::central);
    REQUIRE(trial);
    CHECK_FALSE(trial->findings.empty());
    CHECK_FALSE(trial->cautions.empty());
}

TEST_CASE("what cannot be tried is refused at its lever") {
    const auto input = tooSour();
    TryBoard board(input);
    CHECK(board.trial({{"moon", 1.0}}, TrialDepth::central).error().path == "/moon");
    CHECK(board.trial({{"sacch_temperature", 90.0}}, TrialDepth::central).error().path == "/sacch_temperature");
    CHECK(board.trial({{"draw", 500.0}}, TrialDepth::central).error().path == "/draw");
    CHECK(board.trial({{"yeast", std::string("moonyeast")}}, TrialDepth::central).error().path == "/yeast");
    std::stop_source stop;
    stop.request_stop();
    CHECK(board.trial({{"draw", 60.0}}, TrialDepth::next, stop.get_token()).error().kind == FaultKind::notPossible);
}

TEST_CASE("the brew sheet's words name what a setting of one's own changes") {
    const auto input = tooSour();
    auto setting = input.base;
    CHECK(wordingsOf(input, setting).empty());
    setting.draw = {90};
    setting.recipe.bitterness = {15};
    const auto words = wordingsOf(input, setting);
    REQUIRE(words.size() == 2);
    CHECK(render(words[0]).find("15") != std::string::npos);
    CHECK(render(words[1]).find("90") != std::string::npos);
}

TEST_CASE("three tenths of a point is where tasting begins") {
    CHECK(willBeTasted(.3));
    CHECK(willBeTasted(-.4));
    CHECK_FALSE(willBeTasted(.29));
    CHECK_FALSE(willBeTasted(0));
}
