// SPDX-License-Identifier: GPL-3.0-or-later
// `record` files: what is understood, what is refused, where and with which remedy.
#include "desk/support.h"

#include "facts/codec.h"
#include "facts/sample.h"

using namespace staveline;
using namespace staveline::facts;
using namespace staveline::testing;

TEST_CASE("every record of the sample cellar survives writing and reading bit for bit", "[desk][json]") {
    auto facts = sampleCellar(day(2026, 6, 1));
    if (!facts)
        FAIL(facts.error().path << render(facts.error().cause));
    REQUIRE(facts->size() > 100);
    auto again = parseRecords(writeRecords(*facts));
    REQUIRE(again);
    CHECK(*again == *facts);
}

TEST_CASE("one object is a batch of one", "[desk][json]") {
    auto one = parseRecords(R"({"kind": "dip", "vessel": "Plover", "on": "2026-03-01", "volume_l": 200.5})");
    REQUIRE(one);
    REQUIRE(one->size() == 1);
    const auto& dip = std::get<DipFact>(one->front());
    CHECK(dip.vessel == "Plover");
    CHECK(dip.on == day(2026, 3, 1));
    CHECK(dip.volume.l == 200.5);
}

TEST_CASE("gravity is read in either scale and kept as specific gravity", "[desk][json]") {
    auto sg = parseRecords(R"({"kind": "reading", "vessel": "P", "on": "2026-03-01", "gravity_sg": 1.048})");
    REQUIRE(sg);
    CHECK(std::get<ReadingFact>(sg->front()).measured.gravity->sg == 1.048);
    auto plato = parseRecords(R"({"kind": "reading", "vessel": "P", "on": "2026-03-01", "gravity_p": 12.0})");
    REQUIRE(plato);
    // 12 P is SG 1.0484 (Plato's sucrose table, 20/20 C)
    CHECK(std::get<ReadingFact>(plato->front()).measured.gravity->sg == Approx(1.0484).margin(1e-4));
}

namespace {
struct BadRecord {
    const char* json;
    const char* path;
    const char* cause;
};
} // namespace

TEST_CASE("bad records are refused at their field", "[desk][json]") {
    const auto bad = GENERATE(values<BadRecord>({
        {R"(nonsense)", "", "desk.not_json"},
        {R"([1])", "/0", "desk.wrong_type"},
        {R"({"vessel": "P"})", "/kind", "desk.missing"},
        {R"({"kind": "drawoff"})", "/kind", "desk.unknown_kind"},
        {R"({"kind": "dip", "vessel": "P", "on": "2026-03-01"})", "/volume_l", "desk.missing"},
        {R"({"kind": "dip", "vessel": "", "on": "2026-03-01", "volume_l": 1})", "/vessel", "desk.missing"},
        {R"({"kind": "dip", "vessel": "P", "on": "2026-03-01", "volume_l": -3})", "/volume_l", "desk.out_of_range"},
        {R"({"kind": "dip", "vessel": "P", "on": "2026-03-01", "volume_l": "5"})", "/volume_l", "desk.wrong_type"},
        {R"({"kind": "dip", "vessel": "P", "on": "2026-02-30", "volume_l": 5})", "/on", nullptr},
        {R"({"kind": "dip", "vessel": "P", "on": "1.3.2026", "volume_l": 5})", "/on", nullptr},
        {R"({"kind": "dip", "vessel": "P", "on": "2026-03-01", "volume_l": 5, "volume": 5})", "/volume",
         "desk.unknown_field"},
        {R"({"kind": "reading", "vessel": "P", "on": "2026-03-01", "gravity_sg": 1048})", "/gravity_sg",
         "desk.gravity_thousand"},
        {R"({"kind": "reading", "vessel": "P", "on": "2026-03-01", "gravity_sg": 2})", "/gravity_sg",
         "desk.gravity_range"},
        {R"({"kind": "reading", "vessel": "P", "on": "2026-03-01", "ph": 33})", "/ph", "desk.out_of_range"},
        {R"({"kind": "sitting", "vessel": "P", "on": "2026-03-01", "scores": [{"attribute": "TA1", "cold": 11}]})",
         "/scores/0/cold", "desk.out_of_range"},
        {R"({"kind": "vessel", "name": "P", "capacity_l": 225, "shape": "amphora"})", "/shape", "desk.unknown_word"},
        {R"({"kind": "base_recipe", "vessel": "P", "on": "2026-03-01", "grist": [],
             "mash": [{"temperature_c": 90, "minutes": 60}]})",
         "/mash/0/temperature_c", "desk.out_of_range"},
        {R"({"kind": "base_recipe", "vessel": "P", "on": "2026-03-01", "path": "slowly"})", "/path",
         "desk.unknown_word"},
    }));
    INFO(bad.json);
    auto facts = parseRecords(bad.json);
    REQUIRE_FALSE(facts);
    CHECK(facts.error().kind == FaultKind::input);
    CHECK(facts.error().path == bad.path);
    if (bad.cause)
        CHECK(facts.error().cause.key == bad.cause);
    CHECK(render(facts.error().remedy).size() > 4);
}

TEST_CASE("a gravity without its mark offers the one that was meant", "[desk][json]") {
    auto facts = parseRecords(R"({"kind": "reading", "vessel": "P", "on": "2026-03-01", "gravity_sg": 1048})");
    REQUIRE_FALSE(facts);
    CHECK(render(facts.error().remedy) == "Write 1.048.");
}

TEST_CASE("unknown words offer the nearest known one", "[desk][json]") {
    auto kind = parseRecords(R"({"kind": "drawoff"})");
    CHECK(render(kind.error().remedy) == "Did you mean \"draw_off\"?");
    auto field = parseRecords(R"({"kind": "dip", "vessel": "P", "on": "2026-03-01", "volume_L": 5})");
    REQUIRE_FALSE(field);
}

TEST_CASE("faults in a batch name the entry", "[desk][json]") {
    auto facts = parseRecords(R"([{"kind": "dip", "vessel": "P", "on": "2026-03-01", "volume_l": 5},
                                  {"kind": "dip", "vessel": "P", "on": "2026-03-01", "volume_l": -5}])");
    REQUIRE_FALSE(facts);
    CHECK(facts.error().path == "/1/volume_l");
}

TEST_CASE("the schema names every stored kind once, with its ranges as checks", "[desk][schema]") {
    const auto& schema = cellarSchema();
    std::set<std::string> names;
    for (const auto& table : schema.tables) {
        CHECK(names.insert(table.name).second);
        std::set<std::string> columns;
        for (const auto& column : table.columns) {
            INFO(table.name << "." << column.name);
            CHECK(columns.insert(column.name).second);
            if (column.low && column.high)
                CHECK(*column.low < *column.high);
        }
    }
    CHECK(names.size() == 33);
}

TEST_CASE("shifting moves every date and nothing else", "[desk][sample]") {
    Fact fact = AvailabilityFact{day(2026, 1, 1), "saison", false, day(2026, 2, 1)};
    shiftDays(fact, 31);
    const auto& moved = std::get<AvailabilityFact>(fact);
    CHECK(moved.on == day(2026, 2, 1));
    CHECK(moved.readyOn == day(2026, 3, 4));
    Fact choice = ChoiceFact{"P", day(2026, 1, 1), 1, Forecast{}};
    std::get<ChoiceFact>(choice).forecast->nextDraw = day(2026, 6, 1);
    shiftDays(choice, -1);
    CHECK(std::get<ChoiceFact>(choice).forecast->nextDraw == day(2026, 5, 31));
    CHECK(std::get<ChoiceFact>(choice).proposal == 1);
}
