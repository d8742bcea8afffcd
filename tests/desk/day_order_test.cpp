// SPDX-License-Identifier: GPL-3.0-or-later
// Within a day entries stand as the brewer says: by the time of day, else as they were recorded; by kind only in a
// file.
#include "desk/ledger_entries.h"
#include "desk/support.h"

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::testing;

namespace {

struct DayFixture : DeskFixture {
    DayFixture() { addPlover(); }
    /// The kinds after the opening, as the ledger has them.
    [[nodiscard]] std::vector<std::string> order(const std::string& vessel = "Plover") const {
        std::vector<std::string> kinds;
        const auto ledger = desk->ledger(vessel);
        for (const auto& line : ledger->lines)
            if (line.kind != vessel::EntryKind::opening)
                kinds.emplace_back(tableOfEntry(line.kind));
        return kinds;
    }
    static std::string entry(const std::string& kind, const std::string& rest) {
        return R"({"kind": ")" + kind + R"(", "vessel": "Plover", "on": "2026-01-05", )" + rest + "}";
    }
    using Kinds = std::vector<std::string>;
};

} // namespace

TEST_CASE_METHOD(DayFixture, "what is recorded later on a day comes later on it", "[desk][order]") {
    record(entry("draw_off", R"("volume_l": 60)"));
    record(entry("refill", R"("volume_l": 60)"));
    record(entry("dip", R"("volume_l": 205)"));
    record(entry("sample", R"("volume_l": 1)"));
    CHECK(order() == Kinds{"draw_off", "refill", "dip", "sample"});
    CHECK(desk->vessel("Plover")->now.volume.l == Approx(204).margin(1.5));
    const auto again = *Desk::open(desk->path(), [this] { return now; });
    CHECK(render(again->ledger("Plover")->lines.back().text) == "sample of 1.0 L");
    CHECK(again->check()->sound());
    REQUIRE(desk->undo());
    REQUIRE(desk->undo());
    CHECK(order() == Kinds{"draw_off", "refill"});
    REQUIRE(desk->redo());
    CHECK(order() == Kinds{"draw_off", "refill", "dip"});
}

TEST_CASE_METHOD(DayFixture, "in one file the kinds give the order, before and after other files", "[desk][order]") {
    record("[" + entry("refill", R"("volume_l": 30)") + "," + entry("draw_off", R"("volume_l": 60)") + "," +
           entry("dip", R"("volume_l": 210)") + "]");
    record("[" + entry("draw_off", R"("volume_l": 10)") + "," + entry("dip", R"("volume_l": 180)") + "]");
    CHECK(order() == Kinds{"dip", "draw_off", "refill", "dip", "draw_off"});
}

TEST_CASE_METHOD(DayFixture, "a time of day goes before the order of entry", "[desk][order]") {
    record(entry("draw_off", R"("volume_l": 60, "at": "15:00")"));
    record(entry("refill", R"("volume_l": 50)"));
    record(entry("dip", R"("volume_l": 210, "at": "9:30")"));
    record(entry("reading", R"("ph": 3.3)"));
    CHECK(order() == Kinds{"dip", "draw_off", "refill", "reading"});
    CHECK(desk->ledger("Plover")->lines[1].at == "9:30");
    auto dip = std::get<DipFact>(*desk->fact("dip", 1));
    dip.at = "16:45";
    dip.volume = Litres{200};
    REQUIRE(desk->amend("dip", 1, dip));
    CHECK(order() == Kinds{"draw_off", "refill", "dip", "reading"}); // which was recorded after all of them
    REQUIRE(desk->undo());
    CHECK(order() == Kinds{"dip", "draw_off", "refill", "reading"});
    CHECK(refused(entry("reading", R"("ph": 3.3, "at": "25:00")")).path == "/at");
    CHECK(refused(entry("reading", R"("ph": 3.3, "at": "noon")")).cause.key == "desk.no_time");
}

TEST_CASE_METHOD(DayFixture, "a turn that is given puts an entry where it belongs", "[desk][order][amend]") {
    record(entry("refill", R"("volume_l": 5)"));
    record(entry("dip", R"("volume_l": 205)"));
    CHECK(order() == Kinds{"refill", "dip"});
    auto refill = std::get<RefillFact>(*desk->fact("refill", 1));
    refill.turn = 9;
    REQUIRE(desk->amend("refill", 1, refill));
    CHECK(order() == Kinds{"dip", "refill"});
}

TEST_CASE_METHOD(DayFixture, "an entry moved to another day goes after what is there", "[desk][order][amend]") {
    record(R"([{"kind": "refill", "vessel": "Plover", "on": "2026-01-05", "volume_l": 5},
               {"kind": "dip", "vessel": "Plover", "on": "2026-01-04", "volume_l": 205}])");
    auto dip = std::get<DipFact>(*desk->fact("dip", 1));
    dip.on = day(2026, 1, 5);
    CHECK(desk->preview("dip", 1, dip)->after.volume.l == Approx(205).margin(1.5));
    REQUIRE(desk->amend("dip", 1, dip));
    CHECK(order() == Kinds{"refill", "dip"});
    dip = std::get<DipFact>(*desk->fact("dip", 1));
    dip.note = "stick";
    REQUIRE(desk->amend("dip", 1, dip));
    CHECK(order() == Kinds{"refill", "dip"});
}

TEST_CASE_METHOD(DayFixture, "the same entry told twice is found whatever its turn", "[desk][order][bad]") {
    record(entry("draw_off", R"("volume_l": 60)"));
    record(entry("refill", R"("volume_l": 60)"));
    CHECK(refused(entry("refill", R"("volume_l": 60)")).cause.key == "desk.on_record");
}

TEST_CASE_METHOD(DayFixture, "beer moved to another vessel brings its age and its generations",
                 "[desk][transfer][order]") {
    record(R"([{"kind": "draw_off", "vessel": "Plover", "on": "2025-12-01", "volume_l": 70},
               {"kind": "refill", "vessel": "Plover", "on": "2025-12-01", "volume_l": 70},
               {"kind": "vessel", "name": "Knot", "capacity_l": 225, "material": "steel"},
               {"kind": "vessel", "name": "Dunlin", "capacity_l": 225, "material": "steel"},
               {"kind": "refill", "vessel": "Knot", "on": "2026-01-05", "volume_l": 60, "from": "Plover"},
               {"kind": "refill", "vessel": "Dunlin", "on": "2026-02-05", "volume_l": 30, "from": "Knot"}])");
    const auto plover = desk->vessel("Plover")->now;
    for (const std::string name : {"Knot", "Dunlin"}) {
        INFO(name);
        const auto there = desk->vessel(name)->now;
        CHECK(there.meanAge.d == Approx(plover.meanAge.d));
        CHECK(there.ageSd.d == Approx(plover.ageSd.d));
        REQUIRE(there.generations.size() == plover.generations.size());
        for (std::size_t i = 0; i < there.generations.size(); ++i) {
            CHECK(ageOf(there.generations[i], now).d == Approx(ageOf(plover.generations[i], now).d));
            CHECK(there.generations[i].share.of1 == Approx(plover.generations[i].share.of1));
        }
        CHECK(desk->ledger(name)->vessel.now.meanAge.d == Approx(plover.meanAge.d));
    }
    // mixed with young beer, and its own age where it is told
    record(R"({"kind": "top_up", "vessel": "Knot", "on": "2026-02-06", "volume_l": 30, "age_d": 10})");
    const auto knot = desk->vessel("Knot")->now;
    CHECK(knot.generations.size() == plover.generations.size() + 1);
    CHECK(knot.meanAge.d == Approx((plover.meanAge.d + 34) / 2));
    record(
        R"({"kind": "top_up", "vessel": "Dunlin", "on": "2026-02-06", "volume_l": 30, "from": "Plover", "age_d": 10})");
    CHECK(desk->vessel("Dunlin")->now.meanAge.d == Approx((plover.meanAge.d + 34) / 2).epsilon(.02));
}

TEST_CASE_METHOD(DayFixture, "beer given back and forth is as old as it is", "[desk][transfer][order]") {
    record(R"([{"kind": "vessel", "name": "Knot", "capacity_l": 225, "material": "steel"},
               {"kind": "refill", "vessel": "Knot", "on": "2026-01-05", "volume_l": 100, "from": "Plover"},
               {"kind": "top_up", "vessel": "Plover", "on": "2026-02-05", "volume_l": 90, "from": "Knot"}])");
    const double age = desk->vessel("Plover")->now.meanAge.d;
    CHECK(age == Approx(1.5 * daysPerYear + daysBetween(day(2025, 6, 1), now)));
    CHECK(desk->vessel("Knot")->now.meanAge.d == Approx(age));
}

TEST_CASE_METHOD(DeskFixture, "an hour before the takeover of that day is refused at the hour", "[desk][order][bad]") {
    record(R"([{"kind": "vessel", "name": "Dunlin", "capacity_l": 225},
               {"kind": "opening", "vessel": "Dunlin", "on": "2026-01-05", "at": "14:00", "volume_l": 200}])");
    for (const std::string what : {R"("kind": "reading", "ph": 3.3)", R"("kind": "draw_off", "volume_l": 20)"}) {
        const Fault early = refused("{" + what + R"(, "vessel": "Dunlin", "on": "2026-01-05", "at": "10:00"})");
        CHECK(early.path == "/at");
        CHECK(render(early.cause) == "Dunlin was taken over later on 5 Jan 2026.");
        record("{" + what + R"(, "vessel": "Dunlin", "on": "2026-01-05", "at": "15:00"})");
    }
}

TEST_CASE_METHOD(DayFixture, "the last turn of a day does not close it", "[desk][order]") {
    record(entry("dip", R"("volume_l": 205, "turn": 9999)"));
    record(entry("draw_off", R"("volume_l": 20)"));
    record(entry("sample", R"("volume_l": 1)"));
    CHECK(order().size() == 3);
    CHECK(order().front() == "dip");
}
