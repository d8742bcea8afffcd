// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheet/html_reader.h"
#include "sheet/tasting_paper.h"

#include "support/catch.h"

using namespace staveline;
using namespace staveline::sheet;
using namespace staveline::tasting;

namespace {

std::vector<Table> tablesOf(const Document& document) {
    std::vector<Table> tables;
    for (const auto& block : document.blocks)
        if (const auto* table = std::get_if<Table>(&block))
            tables.push_back(*table);
    return tables;
}

std::size_t linesOf(const Document& document) {
    std::size_t lines = 0;
    for (const auto& table : tablesOf(document))
        if (table.columns.size() == 8 && table.columns.front() == "Line")
            lines += table.rows.size();
    return lines;
}

bool contains(const std::string& text, std::string_view part) {
    return text.find(part) != std::string::npos;
}

} // namespace

TEST_CASE("The short paper has the lines that count, the long one all") {
    CHECK(linesOf(tastingPaper({})) == 14); // twelve with weight, stringing and bitterness
    TastingPaperInput full;
    full.shortSheet = false;
    CHECK(linesOf(tastingPaper(full)) == builtInSheet().attributes.size());
}

TEST_CASE("A line has its anchors in words and a space for each temperature") {
    const auto text = writeMarkdown(tastingPaper({}));
    CHECK(contains(text, "| Line | 0 | 3 | 5 | 8 | 10 | Cold | Cellar |"));
    CHECK(contains(
        text, "| sourness at its peak | not sour at all | lightly sour, like an orange | plainly sour, like a green "
              "apple | very sour, like a grapefruit | as sour as lemon juice |  |  |"));
    CHECK(contains(text, "| strings like egg white |  | \u2013 |")); // once is enough
}

TEST_CASE("Every fault can be ticked at three strengths") {
    const auto tables = tablesOf(tastingPaper({}));
    const auto& faults = tables[tables.size() - 2];
    CHECK(faults.columns.size() == 8); // two faults beside each other
    std::vector<std::string> names;
    for (const std::size_t column : {0U, 4U})
        for (const auto& row : faults.rows) {
            names.push_back(row[column]);
            CHECK((row[column + 1] + row[column + 2] + row[column + 3]).empty());
        }
    for (std::size_t i = 0; i < builtInSheet().faults.size(); ++i)
        CHECK(names[i] == builtInSheet().faults[i].name);
    CHECK(names.size() - builtInSheet().faults.size() <= 1); // a fault of the taster's own fills the last place
}

TEST_CASE("Vessel and day are printed when known, temperatures in the units asked for") {
    TastingPaperInput input;
    CHECK(contains(writeMarkdown(tastingPaper(input)), "# Tasting sheet\n"));
    input.vessel = "Plover";
    input.on = parseDay("2026-04-03").value();
    DisplayUnits units;
    units.temperature = DisplayUnits::Temperature::fahrenheit;
    const auto text = writeMarkdown(tastingPaper(input, units));
    CHECK(contains(text, "# Tasting sheet for Plover\n"));
    CHECK(contains(text, "3 Apr 2026"));
    CHECK(contains(text, "at 41 °F"));
    CHECK(contains(text, "at 55 °F"));
}

TEST_CASE("The paper is a well formed page without gaps in its texts") {
    for (bool shortSheet : {true, false}) {
        TastingPaperInput input;
        input.shortSheet = shortSheet;
        const auto document = tastingPaper(input);
        CHECK(readHtml(writeHtml(document)).wrong.empty());
        CHECK_FALSE(contains(writeText(document), "sheet.paper"));
        CHECK_FALSE(contains(writeText(document), "{"));
        CHECK(contains(writeText(document), "Would you draw it?"));
    }
}
