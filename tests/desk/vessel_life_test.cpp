// SPDX-License-Identifier: GPL-3.0-or-later
// The life of a vessel: lineage through other vessels, and what its wood saw.
#include "desk/history.h"
#include "desk/support.h"
#include "desk/vessel_life.h"

#include <nlohmann/json.hpp>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using Catch::Detail::Approx;
using testing::day;

namespace {

struct Life : testing::DeskFixture {
    Life() { addPlover(); }

    void tell(const std::string& vessel, const std::string& on, const std::string& what, const std::string& more = "") {
        record(R"({"kind": "event", "vessel": ")" + vessel + R"(", "on": ")" + on + R"(", "what": ")" + what + "\"" +
               more + "}");
    }
    [[nodiscard]] VesselLife of(const std::string& vessel) const { return *desk->life(vessel); }
    [[nodiscard]] std::vector<std::string> lineage(const std::string& vessel) const {
        std::vector<std::string> lines;
        for (const LineageLine& line : of(vessel).lineage)
            lines.push_back(std::string(static_cast<std::size_t>(line.back), '>') + line.vessel + " " +
                            isoDay(line.on) + ": " + render(line.text));
        return lines;
    }
};

} // namespace

TEST_CASE_METHOD(Life, "beer lost with an event leaves the ledger, and nothing else changes", "[desk][event][life]") {
    const auto before = desk->vessel("Plover")->now;
    tell("Plover", "2026-03-01", "racked", R"(, "volume_l": 4.5)");
    const auto after = desk->vessel("Plover")->now;
    CHECK(after.volume.l == Approx(before.volume.l - 4.5));
    CHECK(after.meanAge == before.meanAge);
    CHECK(after.cycle == before.cycle);
    CHECK(after.lastDraw == before.lastDraw);
    CHECK(after.totals.out.l == Approx(before.totals.out.l + 4.5));
    CHECK(render(desk->ledger("Plover")->lines.back().text) == "racked, 4.5 L left behind");
    const auto row = desk->history("Plover")->rows.back();
    REQUIRE(row.moved);
    CHECK(row.moved->l == Approx(4.5));
    tell("Plover", "2026-03-02", "leaked");
    CHECK_FALSE(desk->history("Plover")->rows.back().moved);
    REQUIRE(desk->undo());
    REQUIRE(desk->undo());
    CHECK(desk->vessel("Plover")->now.volume == before.volume);
}

TEST_CASE_METHOD(Life, "an event says only what belongs to it", "[desk][event][life][bad]") {
    const auto given = [](const std::string& what, const std::string& more) {
        return R"({"kind": "event", "vessel": "Plover", "on": "2025-10-01", "what": ")" + what + "\"" + more + "}";
    };
    CHECK(refused(given("racked", R"(, "culture": "house")")).path == "/culture");
    for (const char* what : {"pitched", "tasters"}) {
        const Fault fault = refused(given(what, R"(, "volume_l": 1)"));
        CHECK(fault.path == "/volume_l");
        CHECK_FALSE(render(fault.remedy).empty());
    }
    CHECK(refused(given("leaked", R"(, "volume_l": -1)")).path == "/volume_l");
    const Fault more = refused(given("leaked", R"(, "volume_l": 9000)"));
    CHECK(more.path == "/volume_l");
    CHECK(more.cause.key == "desk.more_than_held");
    record(given("pitched", R"(, "culture": "house slurry")"));
    CHECK(render(desk->ledger("Plover")->lines.back().text) == "house slurry pitched");
}

TEST_CASE_METHOD(Life, "a culture is followed through the vessels whose beer went in", "[desk][life]") {
    record(R"([{"kind": "culture", "vessel": "Plover", "on": "2025-06-02", "name": "Harbour"},
               {"kind": "vessel", "name": "Teal", "capacity_l": 100},
               {"kind": "vessel", "name": "Wigeon", "capacity_l": 50},
               {"kind": "refill", "vessel": "Teal", "on": "2025-09-01", "volume_l": 40, "from": "Plover"},
               {"kind": "refill", "vessel": "Wigeon", "on": "2025-10-01", "volume_l": 20, "from": "Teal"},
               {"kind": "top_up", "vessel": "Wigeon", "on": "2025-11-01", "volume_l": 5, "from": "Plover"}])");
    tell("Teal", "2025-09-15", "pitched", R"(, "culture": "Moor")");
    tell("Teal", "2025-10-20", "pitched"); // after the beer left for Wigeon
    CHECK(lineage("Wigeon") == std::vector<std::string>{"Wigeon 2025-10-01: 20.0 L came from Teal",
                                                        ">Teal 2025-09-01: 40.0 L came from Plover",
                                                        ">>Plover 2025-06-02: described as Harbour",
                                                        ">Teal 2025-09-15: Moor pitched",
                                                        "Wigeon 2025-11-01: 5.0 L came from Plover"});
    CHECK(lineage("Teal").size() == 4);
    const auto json = nlohmann::json::parse(toJson(*desk->history("Wigeon")));
    CHECK(json["lineage"].size() == 5);
    CHECK(json["lineage"][2]["back"] == 2);
    CHECK(json["wood"]["fills"] == 1);
}

TEST_CASE_METHOD(Life, "what was pitched between two transfers is told at the second", "[desk][life]") {
    record(R"([{"kind": "vessel", "name": "Teal", "capacity_l": 100},
               {"kind": "refill", "vessel": "Teal", "on": "2025-09-01", "volume_l": 40, "from": "Plover"},
               {"kind": "event", "vessel": "Plover", "on": "2025-10-01", "what": "pitched", "culture": "Moor"},
               {"kind": "top_up", "vessel": "Teal", "on": "2025-11-01", "volume_l": 5, "from": "Plover"}])");
    CHECK(lineage("Teal") == std::vector<std::string>{"Teal 2025-09-01: 40.0 L came from Plover",
                                                      "Teal 2025-11-01: 5.0 L came from Plover",
                                                      ">Plover 2025-10-01: Moor pitched"});
}

TEST_CASE_METHOD(Life, "two vessels that feed each other are each told once", "[desk][life]") {
    record(R"([{"kind": "vessel", "name": "Teal", "capacity_l": 100},
               {"kind": "refill", "vessel": "Teal", "on": "2025-09-01", "volume_l": 40, "from": "Plover"},
               {"kind": "top_up", "vessel": "Plover", "on": "2025-10-01", "volume_l": 2, "from": "Teal"}])");
    CHECK(lineage("Plover").size() == 2);
    CHECK(lineage("Teal").size() == 1); // Plover has nothing to tell by then
}

TEST_CASE_METHOD(Life, "wood counts its fills, repairs, leaks and cleanings", "[desk][life]") {
    record(R"([{"kind": "vessel", "name": "Teal", "capacity_l": 100, "fills_before": 2},
               {"kind": "refill", "vessel": "Teal", "on": "2025-06-01", "volume_l": 90},
               {"kind": "draw_off", "vessel": "Teal", "on": "2025-07-01", "volume_l": 30},
               {"kind": "refill", "vessel": "Teal", "on": "2025-07-01", "volume_l": 30},
               {"kind": "dip", "vessel": "Teal", "on": "2025-08-01", "volume_l": 0},
               {"kind": "refill", "vessel": "Teal", "on": "2025-08-02", "volume_l": 80}])");
    tell("Teal", "2025-09-01", "leaked", R"(, "volume_l": 1.5)");
    tell("Teal", "2025-09-02", "repaired", R"(, "volume_l": 0.5)");
    tell("Teal", "2025-10-02", "repaired");
    tell("Teal", "2025-10-03", "cleaned");
    const WoodLife wood = of("Teal").wood;
    CHECK(wood.fills.count == 2);
    CHECK(wood.fills.last == day(2025, 8, 2));
    CHECK(wood.refills.count == 1);
    CHECK(wood.repairs.count == 2);
    CHECK(wood.repairs.last == day(2025, 10, 2));
    CHECK(wood.leaks.count == 1);
    CHECK(wood.cleanings.count == 1);
    CHECK(wood.lost.l == Approx(2));
    const auto words = wordsOf(wood);
    REQUIRE(words.size() == 7);
    CHECK(render(words[0]) == "Fills from empty before it came: 2.");
    CHECK(render(words.back()) == "Lost with racking, leaks, repairs and cleaning: 2.0 L.");
    CHECK(wordsOf(WoodLife{}).empty());
    VesselEditFact edit;
    edit.vessel = "Teal";
    edit.fillsBefore = 3;
    REQUIRE(desk->record(edit));
    CHECK(of("Teal").wood.fillsBefore == 3);
    REQUIRE(desk->undo());
    CHECK(of("Teal").wood.fillsBefore == 2);
    CHECK_FALSE(desk->life("Nobody"));
}

TEST_CASE_METHOD(Life, "a repair or a leak does not make the past count less", "[desk][life]") {
    const auto spread = [&] { return desk->history("Plover")->offsetToday[Dimension::acidity].value().sd; };
    record(R"({"kind": "sitting", "vessel": "Plover", "on": "2025-09-01",
               "scores": [{"taster": "Rook", "attribute": "TA1", "cold": 6, "cellar": 6},
                          {"taster": "Rook", "attribute": "TA2", "cold": 6, "cellar": 6}]})");
    const double before = spread();
    tell("Plover", "2025-10-01", "repaired");
    CHECK(spread() == Approx(before));
    tell("Plover", "2025-10-02", "leaked", R"(, "volume_l": 6.5)");
    CHECK(spread() == Approx(before));
    tell("Plover", "2025-10-03", "racked");
    CHECK(spread() > before);
}

TEST_CASE_METHOD(Life, "the card says what was pitched last", "[desk][life][cards]") {
    tell("Plover", "2025-10-01", "pitched", R"(, "culture": "Moor slurry")");
    CHECK(sheet::writeMarkdown(*desk->vesselCards("Plover")).find("Moor slurry pitched on 1 Oct 2025") !=
          std::string::npos);
}
