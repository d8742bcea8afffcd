// SPDX-License-Identifier: GPL-3.0-or-later
// What makes a later entry impossible is refused, and names it; what could not be before can still be corrected.
#include "desk/support.h"
#include "facts/codec.h"

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::testing;

namespace {

/// 216 L on 1 June; 79 L drawn and 84 L refilled on 8 September.
struct LaterFixture : DeskFixture {
    LaterFixture() {
        addPlover();
        record(R"([{"kind": "draw_off", "vessel": "Plover", "on": "2025-09-08", "volume_l": 79, "lot": "Draw 1"},
                   {"kind": "refill", "vessel": "Plover", "on": "2025-09-08", "volume_l": 84}])");
    }
    /// Refused as one entry and as a preview, with the same words.
    std::string cause(const std::string& json) {
        const Fault fault = refused(json);
        const auto shown = desk->preview(parseRecords(json)->front());
        REQUIRE_FALSE(shown);
        CHECK(shown.error() == fault);
        remedy = render(fault.remedy);
        return render(fault.cause);
    }
    std::string remedy;
};

} // namespace

TEST_CASE_METHOD(LaterFixture, "a draw dated back that empties the vessel under a later one is refused",
                 "[desk][bad][later]") {
    CHECK(cause(R"({"kind": "draw_off", "vessel": "Plover", "on": "2025-09-07", "volume_l": 205})") ==
          "The draw-off of 8 Sep 2025 took 79.0 L, and Plover would have held only 8.6 L by then.");
    CHECK(remedy == "Check the day and the litres here, or correct the draw-off of 8 Sep 2025 first.");
    record(R"({"kind": "draw_off", "vessel": "Plover", "on": "2025-09-07", "volume_l": 20})");
    CHECK(desk->ledger("Plover")->vessel.findings.empty());
}

TEST_CASE_METHOD(LaterFixture, "a top-up dated back that leaves no room for a later refill is refused",
                 "[desk][bad][later]") {
    record(R"({"kind": "draw_off", "vessel": "Plover", "on": "2025-08-01", "volume_l": 60})");
    record(R"({"kind": "refill", "vessel": "Plover", "on": "2025-10-01", "volume_l": 50})");
    CHECK(cause(R"({"kind": "top_up", "vessel": "Plover", "on": "2025-08-02", "volume_l": 60})")
              .starts_with("The refill of 1 Oct 2025 brought 50.0 L, and Plover would have had room for only "));
}

TEST_CASE_METHOD(LaterFixture, "removing or shrinking what a later draw lived on is refused", "[desk][bad][later]") {
    record(R"({"kind": "draw_off", "vessel": "Plover", "on": "2025-11-01", "volume_l": 190})");
    const auto removed = desk->remove("refill", 1);
    REQUIRE_FALSE(removed);
    CHECK(render(removed.error().cause).starts_with("The draw-off of 1 Nov 2025 took 190.0 L"));
    auto less = std::get<RefillFact>(*desk->fact("refill", 1));
    less.volume = Litres{20};
    CHECK_FALSE(desk->preview("refill", 1, less));
    CHECK_FALSE(desk->amend("refill", 1, less));
    auto later = std::get<RefillFact>(*desk->fact("refill", 1));
    later.on = day(2025, 12, 1);
    CHECK_FALSE(desk->amend("refill", 1, later));
    CHECK(desk->ledger("Plover")->vessel.findings.empty());
    REQUIRE(desk->remove("draw_off", 2)); // the later one first
    REQUIRE(desk->amend("refill", 1, less));
}

TEST_CASE_METHOD(LaterFixture, "an opening moved behind what happened is refused", "[desk][bad][later]") {
    auto opening = std::get<OpeningFact>(*desk->fact("opening", 1));
    opening.on = day(2025, 10, 1);
    const auto moved = desk->amend("opening", 1, opening);
    REQUIRE_FALSE(moved);
    CHECK(render(moved.error().cause) == "The draw-off of 8 Sep 2025 would lie before Plover was opened.");
}

TEST_CASE_METHOD(LaterFixture, "beer given to another vessel counts there and here", "[desk][bad][later][transfer]") {
    record(R"([{"kind": "vessel", "name": "Knot", "capacity_l": 225, "material": "steel"},
               {"kind": "refill", "vessel": "Knot", "on": "2025-10-01", "volume_l": 100, "from": "Plover"},
               {"kind": "draw_off", "vessel": "Knot", "on": "2025-12-01", "volume_l": 90}])");
    CHECK(cause(R"({"kind": "draw_off", "vessel": "Plover", "on": "2025-09-20", "volume_l": 150})")
              .starts_with("The transfer of 1 Oct 2025 took 100.0 L, and Plover would have held only "));
    const auto removed = desk->remove("refill", 2);
    REQUIRE_FALSE(removed);
    CHECK(render(removed.error().cause).find("Knot") != std::string::npos);
}

TEST_CASE_METHOD(LaterFixture, "within one file only what comes out of the whole counts", "[desk][bad][later]") {
    record(R"([{"kind": "draw_off", "vessel": "Plover", "on": "2025-12-01", "volume_l": 200},
               {"kind": "dip", "vessel": "Plover", "on": "2025-12-03", "volume_l": 100},
               {"kind": "refill", "vessel": "Plover", "on": "2025-12-02", "volume_l": 90}])");
    const Fault fault = refused(R"([{"kind": "sample", "vessel": "Plover", "on": "2026-01-02", "volume_l": 0.2},
                                    {"kind": "draw_off", "vessel": "Plover", "on": "2026-01-03", "volume_l": 300}])");
    CHECK(fault.path == "/1/volume_l");
    CHECK(fault.cause.key == "desk.more_than_held");
}

TEST_CASE_METHOD(LaterFixture, "what could not be before can be corrected step by step", "[desk][later]") {
    { // as an earlier version, or another program, left it
        const auto book = book::Book::open(desk->path(), cellarSchema());
        REQUIRE(book);
        REQUIRE((*book)->commit({"old", "old", "", ""}, [&](book::Writer& writer) -> Result<void> {
            Names names;
            names.addVessel(1, "Plover");
            const auto row = toRow(DrawOffFact{"Plover", day(2025, 9, 7), Litres{205}, "", {}, ""}, names);
            return writer.insert("draw_off", *row).map([](book::RowId) {});
        }));
    }
    desk->poll();
    REQUIRE(desk->ledger("Plover")->vessel.findings.size() == 1);
    record(R"({"kind": "sample", "vessel": "Plover", "on": "2025-08-01", "volume_l": 0.3})");
    auto named = std::get<DrawOffFact>(*desk->fact("draw_off", 1)); // itself impossible: its name can be mended
    named.lot = "Draw one";
    REQUIRE(desk->amend("draw_off", 1, named));
    named.volume = Litres{90}; // but it is not made worse
    CHECK_FALSE(desk->amend("draw_off", 1, named));
    auto wrong = std::get<DrawOffFact>(*desk->fact("draw_off", 2));
    wrong.volume = Litres{150}; // better, not yet right
    REQUIRE(desk->amend("draw_off", 2, wrong));
    wrong.volume = Litres{20};
    REQUIRE(desk->amend("draw_off", 2, wrong));
    CHECK(desk->ledger("Plover")->vessel.findings.empty());
}

TEST_CASE_METHOD(LaterFixture, "an overfill that was let pass as rounding does not let another one grow",
                 "[desk][bad][later]") {
    record(R"([{"kind": "vessel", "name": "Keg", "capacity_l": 100, "material": "steel"},
               {"kind": "opening", "vessel": "Keg", "on": "2025-06-01", "volume_l": 50},
               {"kind": "refill", "vessel": "Keg", "on": "2025-09-01", "volume_l": 53}])");
    CHECK(desk->ledger("Keg")->vessel.findings.size() == 1);
    CHECK(cause(R"({"kind": "top_up", "vessel": "Keg", "on": "2025-07-01", "volume_l": 40})")
              .starts_with("The refill of 1 Sep 2025 brought 53.0 L, and Keg would have had room for only "));
    record(R"({"kind": "top_up", "vessel": "Keg", "on": "2025-07-01", "volume_l": 1})"); // still rounding
}
