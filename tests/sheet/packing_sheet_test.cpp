// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheet/sample_packing.h"
#include "sheet/sample_sheet.h"

#include "support/catch.h"

#include <algorithm>

using namespace staveline;
using namespace staveline::sheet;

namespace {

std::string paperOf(const PackingSheetInput& in, const DisplayUnits& units = {}) {
    return writeMarkdown(packingSheet(in, units, sample::texts()));
}
std::size_t countOf(const std::string& text, std::string_view part) {
    std::size_t count = 0;
    for (auto at = text.find(part); at != std::string::npos; at = text.find(part, at + 1))
        ++count;
    return count;
}
/// The part of the paper under this heading.
std::string under(const std::string& text, const std::string& heading) {
    const auto from = text.find("\n## " + heading + "\n");
    REQUIRE(from != std::string::npos);
    return text.substr(from, text.find("\n## ", from + 1) - from);
}

} // namespace

TEST_CASE("the day sheet says what is packed, with what, how much of it and until when", "[sheet][packing]") {
    const std::string text = paperOf(sample::packing());
    INFO(text);
    CHECK(text.starts_with("# Packaging day sheet for Plover \\<31\\>"));
    const std::string what = under(text, "What is packed");
    CHECK(what.find("| Plover | 30.0 L |  |") < what.find("| Knot | 10.0 L |  |")); // in the order of pouring
    CHECK(what.find("| Together | 40.0 L |") != std::string::npos);
    CHECK(what.find("heavy returnable bottle") != std::string::npos);
    // 1.9 volumes of 1.977 g/L, 0.51429 g of CO2 from a gram: 7.3 g/L, 292 g, 5.5 g in 750 mL
    CHECK(under(text, "Sugar and yeast").find("| sucrose | 292 g | 7.3 g/L | 5.5 g |  |") != std::string::npos);
    CHECK(under(text, "Filling").find("Fill 51 bottles of 750 mL") != std::string::npos); // 38.8 L
    const std::string pressure = under(text, "Pressure and what it rests on");
    CHECK(pressure.find("3.8 bar at 30") != std::string::npos);
    CHECK(pressure.find("good for 4.5 bar: 0.70 bar or 0.2 vol to spare") != std::string::npos);
    CHECK(text.find("Cleared until 1 Apr 2026") < text.find("## What is packed"));
    CHECK(under(text, "Afterwards").find("filled until 1 Apr 2026") != std::string::npos);
}

TEST_CASE("each caution stands at its step, once, and the steps have boxes", "[sheet][packing]") {
    const std::string text = paperOf(sample::packing());
    for (const auto& [section, caution] : {std::pair{"Before the first bottle", "kills without a smell"},
                                           {"Before the first bottle", "Caustic and acid"},
                                           {"Before the first bottle", "Taste and spit"},
                                           {"Before the first bottle", "Local rules"},
                                           {"What is packed", "a proof of its own"},
                                           {"Sugar and yeast", "never by spoon"},
                                           {"Filling", "goggles and gloves, closed crates"},
                                           {"Afterwards", "over a bucket"}}) {
        INFO(section << ": " << caution);
        CHECK(under(text, section).find(caution) != std::string::npos);
        CHECK(countOf(text, caution) == 1);
    }
    CHECK(text.find("A caution of no step") < text.find("## What is packed"));
    CHECK(countOf(text, "\n- [ ] ") >= 12);
}

TEST_CASE("there is room for what came out", "[sheet][packing]") {
    const std::string out = under(paperOf(sample::packing()), "What came out");
    for (const char* line :
         {"| Gravity | 1.001 |  |", "| Temperature of the beer |", "| Litres with the priming | 40.0 L |  |",
          "| Sugar or wort for priming | 292 g |  |", "| Bottles filled | 51 |  |", "| Lost | 1.2 L |  |"})
        CHECK(out.find(line) != std::string::npos);
    CHECK(paperOf(sample::packing()).find("| Packed on | By | Begun at | Done at |") != std::string::npos);
}

TEST_CASE("what is refused is headed so, on every page, and lets nothing be filled", "[sheet][packing]") {
    const auto in = sample::refusedPacking();
    const Document paper = packingSheet(in, {}, sample::texts());
    CHECK(paper.title.starts_with("Refused: "));
    CHECK(paper.footer.starts_with("Refused: "));
    CHECK(std::get<Caution>(paper.blocks.front()).text == "Refused: do not fill these bottles.");
    const std::string text = writeMarkdown(paper);
    CHECK(text.find("Nobody knows what this bottle holds.") < text.find("## "));
    CHECK(text.find("A sample kept at 25") != std::string::npos); // what would clear it
    for (const char* goAhead : {"Filling", "292 g", "bottles of 750", "Cleared", "Packed on", "Poured", "Planned"}) {
        INFO(goAhead);
        CHECK(text.find(goAhead) == std::string::npos);
    }
}

TEST_CASE("what the brewer takes on has its reason and what it was refused for", "[sheet][packing]") {
    auto in = sample::refusedPacking();
    in.verdict.answer = finishing::GuardAnswer::overridden;
    in.verdict.reason = "drunk cold tonight";
    const std::string text = paperOf(in);
    const auto first = text.find("## ");
    CHECK(text.find("taken on by the brewer: drunk cold tonight") < first);
    CHECK(text.find("Nobody knows what this bottle holds.") < first);
    CHECK(text.find("## Filling") != std::string::npos);
}

TEST_CASE("wort is measured and not weighed, a keg has its pressure, yeast its advice", "[sheet][packing]") {
    auto in = sample::packing();
    in.sugar = finishing::primingSugar("wort").value();
    in.priming = finishing::prime({{40}, {2.8}, {.9}, in.sugar, {12}, {750}, in.lost}).value();
    in.cautions = finishing::packingCautions({{3.1}, {6}, {6}, true, true, true, true});
    in.keg = KegSetting{{1.03}, {4}};
    in.yeast = finishing::yeastAdvice({{3.1}, {6}, {6}}, {40});
    const std::string text = paperOf(in);
    const std::string prime = under(text, "Sugar and yeast");
    CHECK(prime.find("| wort | 1.048 |") != std::string::npos);
    CHECK(prime.find("Weigh ") == std::string::npos);
    CHECK(prime.find("Rogers et al. 2016") < prime.find("Pitch the yeast"));
    CHECK(text.find("| Keg | In a keg at 4") != std::string::npos);
    CHECK(countOf(paperOf(sample::packing()), "Pitch the yeast") == 0);
}

TEST_CASE("beer that wants no priming has no sugar on its sheet, and units follow the brewer", "[sheet][packing]") {
    auto in = sample::packing();
    in.priming = finishing::prime({{40}, {.9}, {.9}, in.sugar, {12}, {750}, in.lost}).value();
    CHECK(paperOf(in).find("Sugar") == std::string::npos);
    DisplayUnits us;
    us.volume = DisplayUnits::Volume::usGallon;
    us.pressure = DisplayUnits::Pressure::psi;
    const std::string text = paperOf(sample::packing(), us);
    CHECK(text.find("| Plover | " + show(Litres{30}, us) + " |") != std::string::npos);
    CHECK(text.find(" bar") == std::string::npos);
}
