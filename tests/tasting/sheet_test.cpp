// SPDX-License-Identifier: GPL-3.0-or-later
#include "quantity/csv.h"
#include "quantity/text.h"
#include "resources/resources.h"
#include "support/catch.h"
#include "tasting/sitting.h"

#include <cmath>
#include <map>
#include <set>

using namespace staveline;
using namespace staveline::tasting;

namespace {

std::string withHeader(const std::string& rows) {
    return "code,name,group,anchor_0,anchor_3,anchor_5,anchor_8,anchor_10,short_sheet,temperatures,cold_share,"
           "warm_shift,warm_shift_sd,dimension,weight,reversed,fault,fault_from,source\n" +
           rows;
}
const std::string soundRows = "A1,sour,taste,a,b,c,d,e,yes,both,.5,,,acidity,1,no,,,proposal\n"
                              "F1,funk,aroma,a,b,c,d,e,yes,both,.5,,,funk,1,no,,,proposal\n"
                              "B1,full,mouthfeel,a,b,c,d,e,yes,both,.5,,,body,1,no,,,proposal\n";
const std::string soundFaults =
    "id,name,cause,action,blocks_advice,draw_allowed,refill_advice,wait_days,spoils,source\n"
    "ropy,ropy,slime,wait,yes,no,tasting.refill.none_yet,90,body,practice\n";

std::string replaced(std::string text, std::string_view what, std::string_view with) {
    const auto at = text.find(what);
    REQUIRE(at != std::string::npos);
    return text.replace(at, what.size(), with);
}

/// The fault of a sheet whose attribute rows were damaged in one place.
Fault damaged(std::string_view what, std::string_view with) {
    const auto sheet = TastingSheet::parse(withHeader(replaced(soundRows, what, with)), soundFaults);
    REQUIRE_FALSE(sheet.has_value());
    return sheet.error();
}

} // namespace

TEST_CASE("The built-in sheet has the weights and the short sheet the decision needs") {
    const auto& sheet = builtInSheet();
    PerDimension<double> weight;
    std::set<std::string> shortSheet;
    for (const auto& a : sheet.attributes) {
        if (a.dimension)
            weight[*a.dimension] += a.weight;
        if (a.shortSheet)
            shortSheet.insert(a.code);
        CHECK((!a.dimension || a.shortSheet)); // nothing that carries weight is missing from the short sheet
    }
    for (auto d : allDimensions)
        CHECK(weight[d] == Approx(1).margin(1e-12));
    CHECK(sheet.attributes.size() == 23);
    CHECK(shortSheet == std::set<std::string>{"AP4", "AR1", "AR2", "AR3", "AR4", "TA1", "TA2", "TA3", "TA4", "TA5",
                                              "TA6", "MF1", "MF2", "MF3"});
}

TEST_CASE("Only the thin finish counts against its dimension") {
    for (const auto& a : builtInSheet().attributes) {
        CAPTURE(a.code);
        CHECK(a.reversed == (a.code == "MF3"));
    }
    CHECK(builtInSheet().find("TA3")->dimension == Dimension::acidity);
    CHECK(builtInSheet().find("TA6")->dimension == Dimension::body);
}

TEST_CASE("Anchors are distinct words on every line, and the nearest one below a score is given") {
    for (const auto& a : builtInSheet().attributes) {
        CAPTURE(a.code);
        CHECK(std::set<std::string>(a.anchors.begin(), a.anchors.end()).size() == 5);
        CHECK(anchorFor(a, 0) == a.anchors[0]);
        CHECK(anchorFor(a, 2.5) == a.anchors[0]);
        CHECK(anchorFor(a, 3) == a.anchors[1]);
        CHECK(anchorFor(a, 4.5) == a.anchors[1]);
        CHECK(anchorFor(a, 7.5) == a.anchors[2]);
        CHECK(anchorFor(a, 9.5) == a.anchors[3]);
        CHECK(anchorFor(a, 10) == a.anchors[4]);
    }
}

TEST_CASE("Anchors rise in strength: each step of a line has its own leading word, each line its own strongest step") {
    const auto leading = [](std::string anchor) {
        for (const auto* article : {"a ", "an ", "the "})
            if (anchor.starts_with(article))
                anchor.erase(0, std::string_view(article).size());
        return anchor.substr(0, anchor.find_first_of(" ,"));
    };
    std::map<std::string, std::string> strongest;
    for (const auto& a : builtInSheet().attributes) {
        CAPTURE(a.code);
        std::set<std::string> words;
        for (const auto& anchor : a.anchors)
            words.insert(leading(anchor));
        CHECK(words.size() == a.anchors.size());
        const auto [other, first] = strongest.emplace(a.anchors.back(), a.code);
        INFO("the same as of " << other->second);
        CHECK(first);
    }
}

TEST_CASE("Every fault says cause, action and what to refill with, in texts that exist") {
    const auto& texts = builtInTexts();
    CHECK(builtInSheet().faults.size() == 23);
    for (const auto& f : builtInSheet().faults) {
        CAPTURE(f.id);
        CHECK(texts.has(f.refillAdvice));
        CHECK(f.cause != f.action);
        CHECK(f.action.back() == '.');
        CHECK((f.waitDays == 0 || f.blocksAdvice)); // waiting is never the cure of what a recipe cures
    }
}

TEST_CASE("Faults act on advice as the rules say") {
    const auto& sheet = builtInSheet();
    for (const auto* id : {"acetic", "ethyl_acetate", "ropy", "chlorophenol", "enteric", "mouldy", "mousy", "diacetyl"})
        CHECK(sheet.findFault(id)->blocksAdvice);
    for (const auto* id : {"ropy", "mousy", "diacetyl"}) {
        CHECK_FALSE(sheet.findFault(id)->drawAllowed);
        CHECK(sheet.findFault(id)->waitDays >= 30);
    }
    CHECK_FALSE(sheet.findFault("harsh_bitter")->blocksAdvice); // fewer hops is the cure
    CHECK(sheet.findFault("ropy")->spoils == Dimension::body);
    CHECK(sheet.findFault("chlorophenol")->spoils == Dimension::funk);
    CHECK(sheet.findFault("nothing") == nullptr);
    CHECK(sheet.find("ZZ9") == nullptr);
}

TEST_CASE("Every row of the tasting tables has a range that holds its value and a known source") {
    const auto sources = CsvTable::parse(resources::find("data/sources.csv")).value();
    std::set<std::string> keys;
    for (std::size_t i = 0; i < sources.rows(); ++i)
        keys.insert(std::string(sources.text(i, "key")));
    for (const auto* file : {"attributes", "faults", "calibration"}) {
        const auto table = CsvTable::parse(resources::find(std::string("data/") + file + ".csv")).value();
        REQUIRE(table.rows() > 5);
        for (std::size_t i = 0; i < table.rows(); ++i) {
            CAPTURE(file, i);
            CHECK_FALSE(table.text(i, "unit").empty());
            CHECK(table.number(i, "low").value() <= table.number(i, "high").value());
            for (const auto* column : {"source", "shift_source", "term_source"})
                CHECK((table.text(i, column).empty() || keys.contains(std::string(table.text(i, column)))));
        }
    }
    const auto faults = CsvTable::parse(resources::find("data/faults.csv")).value();
    for (std::size_t i = 0; i < faults.rows(); ++i) {
        CHECK(faults.number(i, "low").value() <= faults.number(i, "wait_days").value());
        CHECK(faults.number(i, "wait_days").value() <= faults.number(i, "high").value());
    }
}

TEST_CASE("A sound table parses") {
    const auto sheet = TastingSheet::parse(withHeader(soundRows), soundFaults);
    REQUIRE(sheet.has_value());
    CHECK(sheet->attributes.size() == 3);
    CHECK(sheet->findFault("ropy")->waitDays == 90);
}

TEST_CASE("A damaged table is refused with its place") {
    CHECK(damaged("yes,both", "maybe,both").path == "/attributes/0/short_sheet");
    CHECK(damaged("both,.5", "warm,.5").path == "/attributes/0/temperatures");
    CHECK(damaged("both,.5", "both,1.5").path == "/attributes/0/cold_share");
    CHECK(damaged("both,.5", "both,half").path == "/attributes/0/cold_share");
    CHECK(damaged("acidity,1", "sourness,1").path == "/attributes/0/dimension");
    CHECK(damaged("F1,funk", "A1,funk").path == "/attributes/1");
    CHECK(damaged("F1,funk", ",funk").path == "/attributes/1/code");
    CHECK(damaged("a,b,c,d,e", "a,,c,d,e").path == "/attributes/0/anchor_3");
    CHECK(damaged("no,,,proposal", "no,ropy,3 8 5,proposal").path == "/attributes/0/fault_from");
    CHECK(damaged("no,,,proposal", "no,ropy,3 5,proposal").path == "/attributes/0/fault_from");
    CHECK(damaged("no,,,proposal", "no,ropy,3 5 8 9,proposal").path == "/attributes/0/fault_from");
    CHECK(damaged("no,,,proposal", "no,ropy,3 5 11,proposal").path == "/attributes/0/fault_from");
    CHECK(damaged("body,1", "body,.9").cause.key == "tasting.sheet.weights");
    CHECK(damaged("no,,,proposal", "no,slimy,3 5 8,proposal").cause.key == "tasting.sheet.fault");
}

TEST_CASE("A missing column and a damaged fault table are refused") {
    const auto noColumn = TastingSheet::parse("code,name\nA1,sour\n", soundFaults);
    REQUIRE_FALSE(noColumn.has_value());
    CHECK(noColumn.error().path == "/attributes");
    const auto badWait =
        TastingSheet::parse(withHeader(soundRows), replaced(soundFaults, "none_yet,90", "none_yet,-3"));
    REQUIRE_FALSE(badWait.has_value());
    CHECK(badWait.error().path == "/faults/0/wait_days");
    const auto badAnswer = TastingSheet::parse(withHeader(soundRows), replaced(soundFaults, "yes,no", "yes,perhaps"));
    REQUIRE_FALSE(badAnswer.has_value());
    CHECK(badAnswer.error().path == "/faults/0/draw_allowed");
}

TEST_CASE("Every text the tasting room can say exists") {
    const auto& texts = builtInTexts();
    for (const auto* key :
         {"tasting.sheet.value", "tasting.sheet.value.remedy", "tasting.sheet.column", "tasting.sheet.twice",
          "tasting.sheet.fault", "tasting.sheet.weights", "tasting.panel.shape", "tasting.panel.shape.remedy",
          "tasting.draw.allowed", "tasting.draw.not"})
        CHECK(texts.has(key));
}
