// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/baseline.h"

#include "advice/scenario.h"
#include "quantity/text.h"
#include "support/catch.h"

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::brewing;
using namespace staveline::ingredient;

namespace {

const Yeast& yeastOf(const Recipe& recipe) {
    static Yeast yeast;
    yeast = builtInPantry().yeast(recipe.yeast).value();
    return yeast;
}

void checkSaid(const Fault& fault) {
    for (const auto& message : {fault.cause, fault.remedy}) {
        INFO(message.key);
        CHECK(builtInTexts().has(message.key));
        CHECK(render(message).find('{') == std::string::npos);
    }
}

} // namespace

TEST_CASE("without locks and with all at hand the baseline is the settings in use") {
    const auto input = scenario::cask();
    const auto baseline = prepare(input).value();
    CHECK(baseline.before == input.base);
    CHECK(baseline.start == input.base);
    CHECK(baseline.forced.empty());
    CHECK(baseline.notes.empty());
}

TEST_CASE("a lock at the value in use forces nothing, another value is a forced move") {
    auto input = scenario::cask();
    input.locks = {{"bitterness", 10.0}, {"draw", 90.0}, {"yeast", std::string("saison")}};
    const auto baseline = prepare(input).value();
    CHECK(baseline.locked == std::set<std::string>{"bitterness", "draw", "yeast"});
    REQUIRE(baseline.forced.size() == 2);
    CHECK(baseline.start.draw.l == 90);
    CHECK(baseline.start.recipe.yeast == "saison");
    CHECK(baseline.before == input.base);
}

TEST_CASE("a later lock on the same lever replaces the earlier one") {
    auto input = scenario::cask();
    input.locks = {{"draw", 90.0}, {"draw", 66.0}};
    const auto baseline = prepare(input).value();
    CHECK(baseline.start.draw.l == 66);
    CHECK(baseline.forced.size() == 1);
}

TEST_CASE("locks that act on each other are put in together") {
    auto input = scenario::cask();
    input.locks = {{"sacch_path", std::string("ramp")}, {"ferulic_rest", 20.0}};
    const auto baseline = prepare(input).value();
    CHECK(baseline.start.recipe.mash.size() == 2);
    CHECK(baseline.start.recipe.path == MashPath::ramp);
}

TEST_CASE("a lock outside its lever's bounds is a fault with its path") {
    const std::pair<LeverLock, const char*> wrong[] = {{{"bitterness", 40.0}, "/locks/bitterness"},
                                                       {{"draw", 10.0}, "/locks/draw"},
                                                       {{"draw", 180.0}, "/locks/draw"},
                                                       {{"yeast", std::string("bread")}, "/locks/yeast"},
                                                       {{"luck", 1.0}, "/locks/luck"}};
    for (const auto& [lock, path] : wrong) {
        auto input = scenario::cask();
        input.locks = {lock};
        const auto baseline = prepare(input);
        REQUIRE_FALSE(baseline);
        CHECK(baseline.error().path == path);
        CHECK(baseline.error().kind == FaultKind::input);
        checkSaid(baseline.error());
    }
}

TEST_CASE("the draw in use may be locked although it is outside the bounds") {
    auto input = scenario::cask();
    input.base.draw = {20};
    input.locks = {{"draw", 20.0}};
    CHECK(prepare(input).value().start.draw.l == 20);
}

TEST_CASE("grain that is not at hand is replaced by the nearest of its kind and said") {
    auto input = scenario::cask();
    input.unavailable = {"pilsner", "wheat_malt"};
    const auto baseline = prepare(input).value();
    for (const auto& part : baseline.start.recipe.grist)
        CHECK_FALSE(input.unavailable.contains(part.grain));
    CHECK(builtInPantry().grain(baseline.start.recipe.grist[0].grain)->kind == GrainKind::base);
    CHECK(baseline.start.recipe.grist[1].grain == "spelt_malt");
    CHECK(baseline.start.recipe.grist[1].share == input.base.recipe.grist[1].share);
    REQUIRE(baseline.notes.size() == 2);
    CHECK(render(baseline.notes[0]).find("Pilsner malt") != std::string::npos);
}

TEST_CASE("a yeast that is not at hand is replaced as a move, by one that is as harmless") {
    auto input = scenario::cask();
    input.unavailable = {"ale_clean"};
    const auto baseline = prepare(input).value();
    REQUIRE(baseline.forced.size() == 1);
    CHECK(baseline.forced[0].lever->id == "yeast");
    CHECK_FALSE(yeastOf(baseline.start.recipe).diastatic());
    CHECK_FALSE(yeastOf(baseline.start.recipe).pof);
    CHECK_FALSE(yeastOf(baseline.start.recipe).killerPositive);
    REQUIRE(baseline.notes.size() == 1);
    CHECK(render(baseline.notes[0]).find("is not at hand") != std::string::npos);
}

TEST_CASE("with nothing to brew with there is no advice, and it says what is missing") {
    auto input = scenario::cask();
    for (const auto& yeast : builtInPantry().yeasts())
        input.unavailable.insert(yeast.id);
    auto baseline = prepare(input);
    REQUIRE_FALSE(baseline);
    CHECK(baseline.error().kind == FaultKind::notPossible);
    checkSaid(baseline.error());
    input = scenario::cask();
    for (const auto& grain : builtInPantry().grains())
        input.unavailable.insert(grain.id);
    baseline = prepare(input);
    REQUIRE_FALSE(baseline);
    CHECK(baseline.error().path == "/recipe/grist/0/grain");
    CHECK(baseline.error().kind == FaultKind::notPossible);
}

TEST_CASE("a lock on a yeast that is not at hand is not possible") {
    auto input = scenario::cask();
    input.locks = {{"yeast", std::string("saison")}};
    input.unavailable = {"saison"};
    const auto baseline = prepare(input);
    REQUIRE_FALSE(baseline);
    CHECK(baseline.error().path == "/locks/yeast");
    CHECK(baseline.error().kind == FaultKind::notPossible);
}

TEST_CASE("an unknown grain in the recipe in use is a fault only when it is looked for") {
    auto input = scenario::cask();
    input.base.recipe.grist[0].grain = "moon_malt";
    CHECK_FALSE(advise(input));
    CHECK(advise(input).error().path.starts_with("/recipe/grist/0"));
}

TEST_CASE("sugar that is not at hand is replaced where the recipe has some") {
    auto input = scenario::cask();
    input.unavailable = {"sucrose"};
    CHECK(prepare(input).value().start.recipe.sugar == "sucrose");
    input.base.recipe.sugarShare = {.05};
    const auto baseline = prepare(input).value();
    CHECK(baseline.start.recipe.sugar == "dextrose");
    CHECK(baseline.notes.size() == 1);
}
