// SPDX-License-Identifier: GPL-3.0-or-later
// The whole sheet is compared with tests/fixtures/brew_sheet.md. When a change of it is wanted, write it anew with
//   STAVELINE_REFRESH=1 ./test_sheet "The whole sheet in Markdown"
// and read the difference before it is committed.
#include "sheet/html_reader.h"
#include "sheet/sample_sheet.h"

#include "support/catch.h"

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <sstream>

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::ingredient;
using namespace staveline::sheet;

namespace {

const std::string fixture = STAVELINE_SOURCE_DIR "/tests/fixtures/brew_sheet.md";

std::string sheetText(const BrewSheetInput& in, const DisplayUnits& units = {}) {
    return writeMarkdown(brewSheet(in, units, sample::texts()));
}

bool contains(const std::string& text, std::string_view part) {
    return text.find(part) != std::string::npos;
}

/// True when all parts come in this order.
bool inOrder(const std::string& text, std::initializer_list<std::string_view> parts) {
    std::size_t at = 0;
    for (auto part : parts) {
        at = text.find(part, at);
        if (at == std::string::npos)
            return false;
        at += part.size();
    }
    return true;
}

} // namespace

TEST_CASE("The whole sheet in Markdown") {
    const auto chosen = sample::proposal();
    const auto text = sheetText(sample::input(&chosen));
    if (std::getenv("STAVELINE_REFRESH")) {
        std::ofstream(fixture) << text;
        WARN("written anew: " << fixture);
    }
    std::ifstream file(fixture);
    std::stringstream expected;
    expected << file.rdbuf();
    CHECK(text == expected.str());
}

TEST_CASE("The sections follow the liquid") {
    const auto chosen = sample::proposal();
    CHECK(inOrder(sheetText(sample::input(&chosen)),
                  {"# Brew sheet for Plover", "## What changed and why", "## Dates", "## Water and volumes", "## Grist",
                   "## Mash", "## Boil and hops", "## Yeast and fermentation", "## Targets", "## Draw and refill day",
                   "## Expected at the next draw"}));
}

TEST_CASE("The sheet names its brew and has room for the day, the brewer and notes") {
    auto in = sample::input(nullptr);
    const auto text = sheetText(in);
    CHECK(contains(text, "| Brew | Brewed on | Brewer |\n| --- | --- | --- |\n| Brew 32 |  |  |\n"));
    CHECK(inOrder(text, {"Brew 32", "## Targets", "| Notes |\n| --- |\n|  |\n|  |\n|  |\n", "## Draw"}));
    in.brew.clear();
    CHECK(contains(sheetText(in), "| --- | --- | --- |\n| Refill of Plover, "));
}

TEST_CASE("Nothing is left unsaid or unfilled, in any units") {
    const auto chosen = sample::proposal();
    DisplayUnits american;
    american.volume = DisplayUnits::Volume::usGallon;
    american.temperature = DisplayUnits::Temperature::fahrenheit;
    american.gravity = DisplayUnits::Gravity::plato;
    american.colour = DisplayUnits::Colour::srm;
    for (const auto& units : {DisplayUnits{}, american}) {
        const auto text = sheetText(sample::input(&chosen), units);
        CHECK_FALSE(contains(text, "{"));
        CHECK_FALSE(contains(text, "sheet."));
        CHECK_FALSE(contains(text, "caution."));
        CHECK(readHtml(writeHtml(brewSheet(sample::input(&chosen), units, sample::texts()))).wrong.empty());
    }
    const auto text = sheetText(sample::input(&chosen), american);
    for (const auto* metric : {" L ", " °C", " L.", "EBC", "1.0"})
        CHECK_FALSE(contains(text, metric));
    CHECK(contains(text, "US gal"));
    CHECK(contains(text, "113 °F")); // the rest at 45 C
}

TEST_CASE("Cautions stand in their section, each once") {
    auto chosen = sample::proposal();
    chosen.moves.front().cautions.push_back(say("caution.mash.lateGrain"));
    chosen.cautions = {say("caution.cellar.odd")};
    auto in = sample::input(&chosen);
    in.plan.cautions = {say("caution.mash.stuckRunOff"), say("caution.yeast.killer")};
    const auto text = sheetText(in);
    CHECK(inOrder(text, {"## What changed", "no step", "## Dates"}));
    CHECK(inOrder(text, {"## Mash", "scalds", "Late grain is cold", "may stick", "also breaks", "## Boil"}));
    CHECK(inOrder(text, {"## Boil", "boils over", "## Yeast", "kills sensitive", "ferment out", "## Targets"}));
    CHECK(inOrder(text, {"## Boil", "Boiling wort sticks", "## Yeast", "Caustic and acid cleaners",
                         "data sheet and local rules", "## Targets", "## Draw", "CO2 gathers", "Cleaner left in a hose",
                         "## Expected"}));
    for (const auto* once : {"Boiling wort sticks", "Caustic and acid cleaners", "Cleaner left in a hose"})
        CHECK(text.find(once) == text.rfind(once));
    CHECK(inOrder(text, {"## Draw", "CO2 gathers", "85.0 L of air hold 24 g", "vented bung", "relief valve"}));
    CHECK(text.find("Late grain is cold") == text.rfind("Late grain is cold"));
}

TEST_CASE("Late grain stands at the last rest, with its caution; without it neither is there") {
    auto in = sample::input(nullptr);
    CHECK(inOrder(sheetText(in), {"Heat for 9 min", "stir in 2.20 kg of Flaked oats | 72 °C", "Late grain is cold"}));
    CHECK(contains(sheetText(in), "| Flaked oats | 2.20 kg | 10 % | at the last rest |  |"));
    for (auto& grain : in.plan.grist)
        grain.late = false;
    CHECK_FALSE(contains(sheetText(in), "stir in"));
    CHECK_FALSE(contains(sheetText(in), "Late grain"));
}

TEST_CASE("Without a proposal the usual recipe is said to be unchanged") {
    const auto text = sheetText(sample::input(nullptr));
    CHECK(contains(text, "As the last refill; nothing is changed."));
    CHECK_FALSE(contains(text, "If repeated"));
    Proposal leave;
    leave.title = say("test.title");
    leave.reasons = {say("test.reason").with("by", Points{.2})};
    const auto left = sheetText(sample::input(&leave));
    CHECK(inOrder(left, {"nothing is changed.", "Funk was 0.2 short"}));
}

TEST_CASE("Effects name their dimensions and say when they will not be tasted") {
    const auto chosen = sample::proposal();
    const auto text = sheetText(sample::input(&chosen));
    CHECK(contains(text, "| Rest of 20 min at 45 °C | funk +0.4 | funk +0.9, body -0.1 |"));
    CHECK(contains(text,
                   "| Saccharification 63 °C instead of 66 °C | acidity -0.1 (too small to taste) | acidity -0.5 |"));
    auto still = chosen;
    still.moves.resize(1);
    still.moves.front().next = Scores{};
    CHECK(contains(sheetText(sample::input(&still)), "| Rest of 20 min at 45 °C | \u2013 | funk"));
}

TEST_CASE("Changes whose effects were not kept are a plain list") {
    auto chosen = sample::proposal();
    chosen.title = {};
    for (auto& move : chosen.moves)
        move.next = move.settled = {};
    const auto text = sheetText(sample::input(&chosen));
    CHECK(contains(text, "## What changed and why\n\n- Rest of 20 min at 45 °C\n- Saccharification 63 °C"));
    CHECK_FALSE(contains(text, "If repeated"));
}

TEST_CASE("A span ends where the scale ends") {
    auto in = sample::input(nullptr);
    in.expected[Dimension::acidity] = Band{9.2, 8.1, 10.3};
    in.expected[Dimension::funk] = Band{.4, -.7, 1.5};
    CHECK(contains(sheetText(in), "| acidity | 9.2 | 8.1 to 10.0 |  |"));
    CHECK(contains(sheetText(in), "| funk | 0.4 | 0.0 to 1.5 |  |"));
}

TEST_CASE("What the kit cannot do stands at the volumes") {
    auto in = sample::input(nullptr);
    in.plan.findings = {say("test.finding").with("by", Litres{12})};
    CHECK(inOrder(sheetText(in), {"## Water", "> **Caution:** The mash is 12.0 L too large", "## Grist"}));
}

TEST_CASE("Pre-souring, sugar and diastatic yeast bring their lines and cautions") {
    auto in = sample::input(nullptr);
    CHECK_FALSE(contains(sheetText(in), "Sour "));
    CHECK_FALSE(contains(sheetText(in), "opens dextrin"));
    in.recipe.preSoured = {.25};
    in.recipe.preSourTa = {8};
    in.plan.cautions = {say("caution.yeast.diastatic")};
    const auto text = sheetText(in);
    CHECK(inOrder(
        text, {"## Boil", "Sour 25 % of the wort, 28.8 L,", "8.0 g/L", "below pH 4.5", "## Yeast", "opens dextrin"}));
    CHECK(contains(text, "0.60 kg of sucrose"));
    in.plan.sugar = {0};
    CHECK_FALSE(contains(sheetText(in), "sucrose"));
    CHECK_FALSE(contains(sheetText(in), "ferment out"));
}

TEST_CASE("A yeast the built-in pantry does not know is no trouble") {
    auto in = sample::input(nullptr);
    in.recipe.yeast = "house_blend_7";
    CHECK(contains(sheetText(in), "Yeast: ale yeast, clean, into 97.2 L"));
}

TEST_CASE("What less is at hand of than the brew takes is to be bought") {
    auto in = sample::input(nullptr);
    CHECK_FALSE(contains(sheetText(in), "## To buy"));
    in.toBuy = {{"Pilsner malt", Amount{Kilograms{15.4}}, Amount{Kilograms{12}}, Amount{Kilograms{3.4}}},
                {"ale yeast, clean", {}, {}, {}}};
    const auto text = sheetText(in);
    CHECK(inOrder(text, {"## Dates", "## To buy", "Pilsner malt | 15.4 kg | 12.0 kg | 3.40 kg", "a pack or a starter",
                         "## Water"}));
}

TEST_CASE("No expectation, no empty section") {
    auto in = sample::input(nullptr);
    in.expected = {};
    in.forecastNote.clear();
    CHECK_FALSE(contains(sheetText(in), "Expected at the next draw"));
    in.forecastNote = "Only a note.";
    CHECK(inOrder(sheetText(in), {"## Expected at the next draw", "Only a note."}));
}

TEST_CASE("An empty plan is still a sheet") {
    BrewSheetInput in;
    in.vessel = "Knot | <b>";
    const auto document = brewSheet(in, {}, sample::texts());
    CHECK(readHtml(writeHtml(document)).wrong.empty());
    CHECK(contains(writeMarkdown(document), "# Brew sheet for Knot \\| \\<b\\>"));
    CHECK_FALSE(contains(writeMarkdown(document), "{"));
}

TEST_CASE("There is room to write for every planned number") {
    const auto document = brewSheet(sample::input(nullptr), {}, sample::texts());
    int tables = 0;
    for (const auto& block : document.blocks)
        if (const auto* table = std::get_if<Table>(&block)) {
            ++tables;
            for (const auto& row : table->rows) {
                CHECK(row.size() == table->columns.size());
                CHECK(row.back().empty());
            }
        }
    CHECK(tables == 10); // with who brews and the notes
}
