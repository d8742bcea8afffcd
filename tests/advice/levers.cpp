// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/lever.h"

#include "advice/grist.h"
#include "advice/scenario.h"
#include "quantity/columns.h"
#include "quantity/text.h"
#include "resources/resources.h"
#include "support/catch.h"

#include <algorithm>
#include <cmath>
#include <filesystem>

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::brewing;
using namespace staveline::ingredient;

namespace {

const std::set<std::string> nothingMissing;
const Stock fullStock{builtInPantry(), nothingMissing};

/// A recipe in which every lever has something to act on.
Recipe richRecipe() {
    Recipe recipe;
    recipe.grist = {{"pilsner", {.65}, false},
                    {"rye_malt", {.15}, false},
                    {"flaked_oats", {.10}, true},
                    {"wheat_malt", {.10}, false}};
    recipe.mash = {{{45}, {15}}, {{66}, {60}}};
    recipe.sugarShare = {.05};
    return recipe;
}

AdviceInput richInput() {
    auto input = scenario::cask();
    input.base.recipe = richRecipe();
    input.canChangeTemperature = true;
    return input;
}

double gristSum(const Recipe& recipe) {
    double sum = 0;
    for (const auto& part : recipe.grist)
        sum += part.share.of1;
    return sum;
}

const MashStep& lastRest(const Setting& setting) {
    return setting.recipe.mash.back();
}

Setting applied(const Lever& lever, Setting setting, const LeverValue& value) {
    lever.apply(setting, value, fullStock);
    return setting;
}

Setting with(const Setting& setting, std::string_view lever, LeverValue value) {
    return withLever(setting, lever, value, builtInPantry()).value();
}

} // namespace

TEST_CASE("every file under levers has a row and every row a file") {
    std::set<std::string> files, rows, ids;
    for (const auto& entry : std::filesystem::directory_iterator(STAVELINE_SOURCE_DIR "/core/advice/levers"))
        files.insert(entry.path().stem().string());
    for (const auto& row : builtInLevers())
        rows.insert(row.id);
    for (const auto& lever : levers())
        ids.insert(lever.id);
    CHECK(files == rows);
    CHECK(ids == rows);
    CHECK(levers().size() == 16);
}

TEST_CASE("levers stand in the order of their rows") {
    std::vector<std::string> order, rows;
    for (const auto& lever : levers())
        order.push_back(lever.id);
    for (const auto& row : builtInLevers())
        rows.push_back(row.id);
    CHECK(order == rows);
}

TEST_CASE("every lever row has a unit, a range inside its columns and a source that resolves") {
    const auto table = CsvTable::parse(resources::find("data/levers.csv")).value();
    CHECK(builtInColumns().check("levers", table));
    const auto sources = CsvTable::parse(resources::find("data/sources.csv")).value();
    std::set<std::string_view> keys;
    for (std::size_t i = 0; i < sources.rows(); ++i)
        keys.insert(sources.text(i, "key"));
    for (const auto& row : builtInLevers()) {
        INFO(row.id);
        CHECK(!row.name.empty());
        CHECK(!row.unit.empty());
        CHECK(keys.contains(row.source));
        CHECK(row.cost > 0);
        CHECK(row.movement > 0);
    }
}

TEST_CASE("bitterness costs three times what its neighbours cost") {
    double dearest = 0;
    for (const auto& row : builtInLevers())
        if (!row.isChoice() && row.id != "bitterness" && row.id != "presour" && row.id != "cellar_temperature" &&
            row.id != "smoked_malt")
            dearest = std::max(dearest, row.cost);
    CHECK(rowOf(*findLever("bitterness")).cost == Approx(3 * dearest));
}

TEST_CASE("a broken lever table is a fault with its row") {
    const std::string head = "id,name,unit,choices,low,high,step,one_unit_of_movement,cost_per_unit,most_at_once,"
                             "advised_high,direction,note,"
                             "source\n";
    CHECK(parseLevers(head + "x,X,C,,62,72,0.5,2,1,,,known,,proposal\n"));
    CHECK(parseLevers(head + "x,X,choice,a|b,,,,1,1,,,known,,proposal\n").value()[0].choices.size() == 2);
    const auto path = [&](const std::string& cells) {
        const auto parsed = parseLevers(head + cells + ",,,known,,proposal\n");
        REQUIRE_FALSE(parsed);
        CHECK(parsed.error().kind == FaultKind::input);
        return parsed.error().path;
    };
    for (const auto* row : {"x,X,C,,72,62,0.5,2,1", "x,X,C,,62,72,,2,1", "x,X,C,,62,72,0.5,,1", "x,X,C,,62,72,0.5,2,",
                            ",X,C,,62,72,0.5,2,1"}) {
        INFO(row);
        CHECK(path(row) == "/0");
    }
    CHECK(path("x,X,C,,62,72,0,2,1") == "/0/step");
    CHECK(path("x,X,C,,62,72,0.5,0,1") == "/0/one_unit_of_movement");
    CHECK(path("x,X,C,,62,72,0.5,2,0") == "/0/cost_per_unit");
    CHECK(path("x,X,C,,sixty,72,0.5,2,1") == "/0/low");
    CHECK_FALSE(parseLevers(head + "x,X,C,,62,72,0.5,2,1,,proposal\n")); // three cells short
    CHECK_FALSE(parseLevers("id,name\nx,X\n"));
}

TEST_CASE("each lever says what its values measure; a unit that no lever has is a fault at its cell") {
    CHECK(rowOf(*findLever("gravity")).kind == UnitKind::extract);
    CHECK(rowOf(*findLever("draw")).kind == UnitKind::volume);
    CHECK(rowOf(*findLever("glucan_grain")).kind == UnitKind::percentOfGrist);
    CHECK(rowOf(*findLever("sugar")).kind == UnitKind::percentOfExtract);
    CHECK(rowOf(*findLever("presour")).kind == UnitKind::percent);
    for (const auto& lever : levers())
        CHECK(rowOf(lever).isChoice() == (rowOf(lever).unit == "choice"));

    const std::string head = "id,name,unit,choices,low,high,step,one_unit_of_movement,cost_per_unit,most_at_once,"
                             "advised_high,direction,note,"
                             "source\n";
    for (const auto* unit : {"F", "% of the grist", "share", ""}) {
        INFO(unit);
        const auto parsed = parseLevers(head + "x,X," + unit + ",,62,72,0.5,2,1,,,,,proposal\n");
        REQUIRE_FALSE(parsed);
        CHECK(parsed.error().path == "/0/unit");
    }
}

TEST_CASE("a direction is known or assumed, and any other word is a fault at its cell") {
    const std::string head = "id,name,unit,choices,low,high,step,one_unit_of_movement,cost_per_unit,most_at_once,"
                             "advised_high,direction,note,source\n";
    const auto with = [&](const std::string& word) {
        return parseLevers(head + "x,X,C,,62,72,0.5,2,1,,," + word + ",,proposal\n");
    };
    CHECK_FALSE(with("known").value()[0].assumed);
    CHECK(with("assumed").value()[0].assumed);
    for (const auto* word : {"", "Known", "asumed", "yes"}) {
        INFO(word);
        REQUIRE_FALSE(with(word));
        CHECK(with(word).error().path == "/0/direction");
        CHECK(render(with(word).error().cause) == "Lever x: its direction is neither \"known\" nor \"assumed\".");
    }
}

TEST_CASE("the direction is known only of what mixed vessels have shown: acid brought in, age and warmth") {
    std::set<std::string> known;
    for (const auto& row : builtInLevers())
        if (!row.assumed)
            known.insert(row.id);
    CHECK(known == std::set<std::string>{"presour", "draw", "interval", "cellar_temperature"});
}

TEST_CASE("a draw that is no number is asked for in litres, whatever its row is in") {
    const auto input = scenario::cask();
    const auto bad = withLever(input.base, "draw", std::string("abc"), *input.pantry);
    REQUIRE_FALSE(bad);
    CHECK(bad.error().cause.key == "advice.fault.notANumber");
    CHECK(bad.error().remedy.key == "advice.fault.draw.remedy");
}

TEST_CASE("a lever reads back what was applied, at every step, and leaves the rest alone") {
    const auto input = richInput();
    for (const auto& lever : levers()) {
        INFO(lever.id);
        const auto steps = stepsOf(lever, input.base, input);
        CHECK(!steps.empty());
        for (const auto& value : steps) {
            const auto changed = applied(lever, input.base, value);
            CHECK(sameValue(lever.read(changed, fullStock), value));
            CHECK(gristSum(changed.recipe) == Approx(1).margin(1e-12));
            CHECK(resolve(changed.recipe, builtInPantry(), {1}).has_value());
            for (const auto& other : levers())
                if (other.id != lever.id && other.id != "late_unmalted")
                    CHECK(sameValue(other.read(changed, fullStock), other.read(input.base, fullStock)));
        }
    }
}

TEST_CASE("steps stay inside bounds, differ from the present value and rise") {
    const auto input = richInput();
    for (const auto& lever : levers()) {
        INFO(lever.id);
        const auto row = narrowedRow(lever, input.base, input);
        const auto present = lever.read(input.base, fullStock);
        const auto steps = stepsOf(lever, input.base, input);
        for (std::size_t i = 0; i < steps.size(); ++i) {
            CHECK_FALSE(sameValue(steps[i], present));
            if (row.isChoice())
                continue;
            CHECK(number(steps[i]) >= row.low - row.step / 2);
            CHECK(number(steps[i]) <= row.high + row.step / 2);
            CHECK((i == 0 || number(steps[i]) > number(steps[i - 1])));
        }
    }
}

TEST_CASE("the mash time follows the saccharification temperature") {
    const Setting base{scenario::plainRecipe(), {74}, {240}, {16}};
    CHECK(lastRest(with(base, "sacch_temperature", 63.5)).minutes.min == 75);
    CHECK(lastRest(with(base, "sacch_temperature", 64.0)).minutes.min == 60);
    CHECK(lastRest(with(base, "sacch_temperature", 68.0)).minutes.min == 60);
    CHECK(lastRest(with(base, "sacch_temperature", 68.5)).minutes.min == 45);
    auto unusual = base;
    unusual.recipe.mash[0].minutes = {90};
    CHECK(with(unusual, "sacch_temperature", 66.0) == unusual);
}

TEST_CASE("the longest rest above 60 C is the saccharification, and rests keep rising") {
    auto input = scenario::cask();
    input.base.recipe.mash = {{{63}, {45}}, {{70}, {20}}, {{76}, {10}}};
    CHECK(number(leverValue(input.base, "sacch_temperature", builtInPantry())) == 63);
    const auto steps = stepsOf(*findLever("sacch_temperature"), input.base, input);
    CHECK(number(steps.back()) == 70);
    const auto changed = with(input.base, "sacch_temperature", 66.0);
    CHECK(changed.recipe.mash[0].temperature.c == 66);
    CHECK(changed.recipe.mash[1] == input.base.recipe.mash[1]);
}

TEST_CASE("a new ferulic rest goes first, thick, and is followed by a jump") {
    Setting base{scenario::plainRecipe(), {74}, {240}, {16}};
    base.recipe.path = MashPath::ramp;
    const auto rested = with(base, "ferulic_rest", 20.0);
    REQUIRE(rested.recipe.mash.size() == 2);
    CHECK(rested.recipe.mash[0] == MashStep{{45}, {20}});
    CHECK(rested.recipe.mash[1] == base.recipe.mash[0]);
    CHECK(rested.recipe.path == MashPath::jump);
    CHECK(rested.recipe.liquorToGrist.lPerKg == 2.5);
    CHECK(with(rested, "ferulic_rest", 0.0).recipe.mash == base.recipe.mash);
    CHECK(with(with(rested, "sacch_path", std::string("ramp")), "ferulic_rest", 30.0).recipe.path == MashPath::ramp);
}

TEST_CASE("grain is exchanged against base malt only") {
    const Setting base{scenario::plainRecipe(), {74}, {240}, {16}};
    const auto rye = with(base, "precursor_malt", 20.0).recipe.grist;
    REQUIRE(rye.size() == 3);
    CHECK(rye[0].share.of1 == Approx(.55));
    CHECK(rye[1].share.of1 == Approx(.25));
    CHECK(rye[2] == GristPart{"rye_malt", rye[2].share, false});
    CHECK(rye[2].share.of1 == Approx(.20));
}

TEST_CASE("what is in the grist keeps its proportions") {
    Setting base{scenario::plainRecipe(), {74}, {240}, {16}};
    base.recipe.grist = {{"pilsner", {.7}, false}, {"rye_malt", {.1}, false}, {"vienna", {.2}, false}};
    const auto less = with(base, "precursor_malt", 15.0).recipe.grist;
    CHECK(less[0].share.of1 == Approx(.85));
    CHECK(less[1].share.of1 == Approx(.05));
    CHECK(less[2].share.of1 == Approx(.10));
    const auto none = with(base, "precursor_malt", 0.0).recipe.grist;
    REQUIRE(none.size() == 1);
    CHECK(none[0].share.of1 == Approx(1));
}

TEST_CASE("oats go in after a rest, with the malts otherwise") {
    const Setting base{scenario::plainRecipe(), {74}, {240}, {16}};
    CHECK_FALSE(with(base, "glucan_grain", 10.0).recipe.grist.back().late);
    CHECK(with(with(base, "ferulic_rest", 20.0), "glucan_grain", 10.0).recipe.grist.back().late);
}

TEST_CASE("late addition needs unmalted grain and a rest") {
    const auto& late = *findLever("late_unmalted");
    auto input = scenario::cask();
    CHECK_FALSE(late.applies(input.base, input));
    const auto oats = with(input.base, "glucan_grain", 10.0);
    CHECK_FALSE(late.applies(oats, input));
    CHECK(late.applies(with(oats, "ferulic_rest", 20.0), input));
    CHECK_FALSE(withLever(input.base, "late_unmalted", std::string("after rest"), builtInPantry()));
}

TEST_CASE("what is not at hand is never brought in by a lever") {
    auto input = scenario::cask();
    input.unavailable = {"rye_malt", "flaked_oats"};
    const Stock stock{builtInPantry(), input.unavailable};
    auto setting = input.base;
    findLever("precursor_malt")->apply(setting, 10.0, stock);
    findLever("glucan_grain")->apply(setting, 10.0, stock);
    for (const auto& part : setting.recipe.grist)
        CHECK_FALSE(input.unavailable.contains(part.grain));
    CHECK(setting.recipe.grist.size() == 4);
    for (const auto& grain : builtInPantry().grains())
        if (!isBaseMalt(grain))
            input.unavailable.insert(grain.id);
    CHECK(stepsOf(*findLever("precursor_malt"), input.base, input).empty());
}

TEST_CASE("only yeasts that are at hand, in time and harmless to the house yeast are advised") {
    auto input = scenario::cask();
    const auto choices = [&] { return findLever("yeast")->choices(input); };
    const auto has = [&](const char* id) {
        const auto ids = choices();
        return std::find(ids.begin(), ids.end(), id) != ids.end();
    };
    CHECK(has("saison"));
    CHECK_FALSE(has("saison_diastatic")); // 21 days do not fit in before the draw
    CHECK_FALSE(has("wine_killer_positive"));
    input.toThisDraw = {40};
    input.houseYeastKillerSensitive = false;
    CHECK(has("saison_diastatic"));
    CHECK(has("wine_killer_positive"));
    input.unavailable = {"saison"};
    CHECK_FALSE(has("saison"));
    // A yeast in use that is late itself does not rule out the others.
    input.toThisDraw = {5};
    CHECK(has("ale_high"));
}

TEST_CASE("a diastatic yeast may not lead, and says why") {
    const auto& yeast = *findLever("yeast");
    CHECK(yeast.neverFirst(std::string("saison_diastatic"), fullStock));
    CHECK_FALSE(yeast.neverFirst(std::string("saison"), fullStock));
    const auto input = scenario::cask();
    const auto keys = [&](const char* id) {
        std::set<std::string> found;
        for (const auto& caution : yeast.cautions(std::string(id), input.base, input))
            found.insert(caution.key);
        return found;
    };
    CHECK(keys("saison_diastatic") == std::set<std::string>{"caution.yeast.diastatic", "caution.yeast.youngBeerOnly"});
    CHECK(keys("wine_killer_positive") == std::set<std::string>{"caution.yeast.killer"});
    CHECK(keys("ale_high").empty());
}

TEST_CASE("target and vessel narrow the bounds") {
    auto input = scenario::cask();
    input.target.bitternessCeiling = {12};
    input.target.gravityLow = {11};
    input.target.gravityHigh = {13};
    CHECK(number(stepsOf(*findLever("bitterness"), input.base, input).back()) == 12);
    CHECK(number(stepsOf(*findLever("gravity"), input.base, input).front()) == 11);
    CHECK(number(stepsOf(*findLever("gravity"), input.base, input).back()) == 13);
    const auto draws = stepsOf(*findLever("draw"), input.base, input);
    CHECK(number(draws.front()) == 44); // 20 % of 220 L
    CHECK(number(draws.back()) == 132); // 60 %
    CHECK_FALSE(findLever("cellar_temperature")->applies(input.base, input));
    input.canChangeTemperature = true;
    CHECK(findLever("cellar_temperature")->applies(input.base, input));
}

TEST_CASE("smoked malt can be tried but is never proposed") {
    for (const auto& lever : levers())
        CHECK(lever.proposed == (lever.id != "smoked_malt"));
    const Setting base{scenario::plainRecipe(), {74}, {240}, {16}};
    CHECK(with(base, "smoked_malt", 5.0).recipe.grist.back().grain == "smoked_malt");
}

TEST_CASE("values that cannot be used are faults at their lever") {
    const Setting base{scenario::plainRecipe(), {74}, {240}, {16}};
    const std::pair<const char*, LeverValue> wrong[] = {{"mash_thickness", 3.0},
                                                        {"sacch_temperature", 80.0},
                                                        {"sacch_temperature", 60.0},
                                                        {"sacch_temperature", std::string("hot")},
                                                        {"sacch_temperature", std::nan("")},
                                                        {"sacch_path", std::string("slide")},
                                                        {"sacch_path", 1.0},
                                                        {"yeast", std::string("bread")},
                                                        {"bitterness", 26.0},
                                                        {"bitterness", -1.0},
                                                        {"draw", 0.0},
                                                        {"draw", -5.0},
                                                        {"interval", 30.0},
                                                        {"presour", 101.0},
                                                        {"late_unmalted", std::string("after rest")}};
    for (const auto& [lever, value] : wrong) {
        INFO(lever);
        const auto changed = withLever(base, lever, value, builtInPantry());
        REQUIRE_FALSE(changed);
        CHECK(changed.error().path == "/" + std::string(lever));
        CHECK(changed.error().kind == FaultKind::input);
        for (const auto& message : {changed.error().cause, changed.error().remedy}) {
            CHECK(builtInTexts().has(message.key));
            CHECK(render(message).find('{') == std::string::npos);
        }
    }
}

TEST_CASE("the present value is always allowed, also outside the bounds") {
    Setting base{scenario::plainRecipe(), {74}, {500}, {16}};
    base.recipe.bitterness = {30};
    CHECK(withLever(base, "bitterness", 30.0, builtInPantry()).value() == base);
    CHECK(withLever(base, "interval", 500.0, builtInPantry()).value() == base);
}

TEST_CASE("every lever words every step in full") {
    const auto input = richInput();
    for (const auto& lever : levers()) {
        const auto from = lever.read(input.base, fullStock);
        for (const auto& to : stepsOf(lever, input.base, input)) {
            const auto after = applied(lever, input.base, to);
            auto said = std::vector<Message>{wordingOf(lever, from, to, after, fullStock)};
            if (lever.cautions)
                for (auto& caution : lever.cautions(to, after, input))
                    said.push_back(caution);
            for (const auto& message : said) {
                INFO(message.key);
                CHECK(builtInTexts().has(message.key));
                CHECK(render(message).find('{') == std::string::npos);
            }
        }
    }
}

TEST_CASE("a lever without a text of its own is worded by name and unit") {
    auto lever = *findLever("mash_ph");
    lever.wording = nullptr;
    const auto text = render(wordingOf(lever, 5.5, 5.3, {}, fullStock));
    CHECK(text == "mash pH: 5.3 pH instead of 5.5 pH");
}
