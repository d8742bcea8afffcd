// SPDX-License-Identifier: GPL-3.0-or-later
// What the desk keeps in memory always says what the file says: after transfers, corrections, renames, undo.
// STAVELINE_SEQUENCES sets how many random sequences of edits.
#include "desk/full_facts.h"

#include <array>
#include <cstdlib>
#include <random>

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::culture;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::vessel;
using namespace staveline::testing;

namespace {

struct TwoVessels : DeskFixture {
    TwoVessels() {
        addPlover();
        record(R"([{"kind": "vessel", "name": "Knot", "capacity_l": 80, "material": "steel"},
                   {"kind": "vessel", "name": "Godwit", "capacity_l": 90, "material": "steel"},
                   {"kind": "opening", "vessel": "Godwit", "on": "2025-06-01", "volume_l": 60, "age_years": 1},
                   {"kind": "refill", "vessel": "Knot", "on": "2025-07-01", "volume_l": 40, "from": "Plover"}])");
        // everything is in memory before the edits under test
        (void)wholeBook(*desk);
    }
    void agrees() const {
        const auto other = Desk::open(desk->path(), [this] { return now; });
        REQUIRE(other);
        CHECK((wholeBook(*desk) == wholeBook(**other))); // two long texts: not in the report
    }
    [[nodiscard]] std::size_t lines(const char* vessel) const { return desk->ledger(vessel)->lines.size(); }
    [[nodiscard]] double held(const char* vessel) const { return desk->vessel(vessel)->now.volume.l; }
    template <class F> F only(const char* table, std::int64_t id = 1) const {
        return std::get<F>(*desk->fact(table, id));
    }
};

} // namespace

TEST_CASE_METHOD(TwoVessels, "a transfer corrected to another source leaves one and enters the other",
                 "[desk][transfer][amend]") {
    auto refill = only<RefillFact>("refill");
    CHECK(lines("Plover") == 2);
    CHECK(lines("Godwit") == 1);
    refill.from = "Godwit";
    REQUIRE(desk->amend("refill", 1, refill));
    CHECK(lines("Plover") == 1);
    CHECK(lines("Godwit") == 2);
    CHECK(held("Godwit") == Approx(20));
    agrees();
    REQUIRE(desk->undo());
    CHECK(lines("Plover") == 2);
    CHECK(lines("Godwit") == 1);
    agrees();
    REQUIRE(desk->redo());
    CHECK(lines("Godwit") == 2);
    agrees();
}

TEST_CASE_METHOD(TwoVessels, "an entry written to the wrong vessel is moved to the right one", "[desk][amend]") {
    record(R"({"kind": "draw_off", "vessel": "Plover", "on": "2026-01-05", "volume_l": 20})");
    auto draw = only<DrawOffFact>("draw_off");
    const auto whole = held("Plover");
    (void)wholeBook(*desk);
    draw.vessel = "Godwit";
    REQUIRE(desk->amend("draw_off", 1, draw));
    CHECK(held("Plover") == Approx(whole + 20));
    CHECK(held("Godwit") == Approx(40));
    agrees();
    REQUIRE(desk->undo());
    CHECK(held("Plover") == Approx(whole));
    CHECK(held("Godwit") == Approx(60));
    agrees();
}

TEST_CASE_METHOD(TwoVessels, "a transfer corrected in its litres is corrected in both vessels", "[desk][transfer]") {
    auto refill = only<RefillFact>("refill");
    const double plover = held("Plover");
    refill.volume = Litres{25};
    REQUIRE(desk->amend("refill", 1, refill));
    CHECK(held("Knot") == Approx(25));
    CHECK(held("Plover") == Approx(plover + 15));
    agrees();
    REQUIRE(desk->remove("refill", 1));
    CHECK(held("Knot") == 0);
    CHECK(held("Plover") == Approx(plover + 40));
    CHECK(lines("Plover") == 1);
    agrees();
    REQUIRE(desk->undo());
    REQUIRE(desk->undo());
    CHECK(held("Plover") == Approx(plover));
    agrees();
}

TEST_CASE_METHOD(TwoVessels, "litres are neither made nor lost between vessels", "[desk][transfer]") {
    for (const char* json :
         {R"({"kind": "top_up", "vessel": "Knot", "on": "2025-09-01", "volume_l": 3, "from": "Godwit"})",
          R"({"kind": "top_up", "vessel": "Godwit", "on": "2025-09-02", "volume_l": 7, "from": "Knot"})"}) {
        const double before = held("Knot") + held("Godwit"); // steel: nothing evaporates
        record(json);
        CHECK(held("Knot") + held("Godwit") == Approx(before));
        CHECK(desk->vessel("Knot")->findings.empty());
        CHECK(desk->vessel("Godwit")->findings.empty());
    }
    // each holds some of the other: both still have a chemistry
    CHECK(desk->estimates("Knot"));
    CHECK(desk->estimates("Godwit"));
    agrees();
}

TEST_CASE_METHOD(TwoVessels, "a renamed vessel keeps what it gave and took", "[desk][vessel]") {
    record(R"({"kind": "vessel_edit", "vessel": "Plover", "name": "Lapwing"})");
    CHECK(only<RefillFact>("refill").from == "Lapwing");
    CHECK(lines("Lapwing") == 2);
    agrees();
    record(R"([{"kind": "vessel", "name": "Plover", "capacity_l": 30},
               {"kind": "vessel_edit", "vessel": "Knot", "name": "Stilt"},
               {"kind": "dip", "vessel": "Stilt", "on": "2026-01-01", "volume_l": 39}])");
    CHECK(lines("Plover") == 0); // the name is free again and means the new one
    CHECK(lines("Stilt") == 2);
    agrees();
    REQUIRE(desk->undo());
    REQUIRE(desk->undo());
    CHECK(lines("Plover") == 2);
    CHECK(only<RefillFact>("refill").vessel == "Knot");
    agrees();
}

TEST_CASE_METHOD(TwoVessels, "a retired vessel keeps its books and can still be corrected", "[desk][vessel]") {
    record(R"({"kind": "retire", "vessel": "Plover", "on": "2026-02-01", "reason": "hoop gone"})");
    const auto retired = desk->vessel("Plover");
    CHECK(retired->due.kind == DueKind::nothing);
    CHECK(render(retired->headline) == "retired on 1 Feb 2026");
    CHECK(desk->cellar()->back().name == "Plover"); // after those in use
    CHECK(lines("Plover") == 2);
    auto opening = only<OpeningFact>("opening");
    opening.volume = Litres{210};
    REQUIRE(desk->amend("opening", 1, opening));
    CHECK(render(desk->ledger("Plover")->lines.front().text).starts_with("taken over with 210.0 L"));
    CHECK(desk->history("Plover")->rows.size() == 2);
    CHECK(desk->vessel("Plover")->retired);
    agrees();
    REQUIRE(desk->undo());
    REQUIRE(desk->undo());
    CHECK_FALSE(desk->vessel("Plover")->retired);
}

TEST_CASE_METHOD(TwoVessels, "a brew corrected in name and day is followed by its refill", "[desk][amend]") {
    record(R"([{"kind": "brew", "name": "Brew 1", "vessel": "Knot", "on": "2025-12-01",
                "grist": [{"grain": "pilsner", "share": 1}], "mash": [{"temperature_c": 66, "minutes": 60}]},
               {"kind": "refill", "vessel": "Knot", "on": "2026-01-01", "volume_l": 10, "brew": "Brew 1"}])");
    (void)wholeBook(*desk);
    const auto age = [&] { return desk->ledger("Knot")->states.back().generations.front().birthAge.d; };
    CHECK(age() == 31);
    auto brew = only<BrewFact>("brew");
    brew.name = "Brew 1b";
    brew.on = day(2025, 12, 11);
    REQUIRE(desk->amend("brew", 1, brew));
    CHECK(age() == 21);
    CHECK(render(desk->ledger("Knot")->lines.back().text) == "10.0 L refilled from Brew 1b");
    CHECK(only<RefillFact>("refill", 2).brew == "Brew 1b");
    CHECK(desk->brewsFor("Knot").size() == 1);
    agrees();
    REQUIRE(desk->undo());
    CHECK(age() == 31);
    agrees();
}

TEST_CASE_METHOD(TwoVessels, "an observer always finds the book and the memory agreed", "[desk]") {
    int heard = 0;
    desk->observe([&] {
        ++heard;
        agrees();
    });
    auto refill = only<RefillFact>("refill");
    refill.from = "Godwit";
    REQUIRE(desk->amend("refill", 1, refill));
    REQUIRE(desk->undo());
    REQUIRE(desk->redo());
    REQUIRE(desk->remove("refill", 1));
    CHECK(heard == 4);
}

// --- any sequence of edits

namespace {

/// One random edit after the other; refusals are as welcome as successes.
class AnyEdits {
public:
    AnyEdits(Desk& desk, unsigned seed) : desk_(desk), random_(seed) {}

    void one() {
        const Day on = day(2025, 7, 1) + std::chrono::days{below(200)};
        const Litres litres{below(60) + 0.5};
        const std::int64_t id = 1 + below(3);
        switch (below(10)) {
        case 0:
            return void(desk_.record(DrawOffFact{name(), on, litres, "", {}, ""}));
        case 1:
            return void(desk_.record(RefillFact{name(), on, litres, "", name(), {}, ""}));
        case 2:
            return void(desk_.record(TopUpFact{name(), on, litres, "", "", {}, ""}));
        case 3:
            return void(desk_.amend("refill", id, RefillFact{name(), on, litres, "", name(), {}, ""}));
        case 4:
            return void(desk_.amend("draw_off", id, DrawOffFact{name(), on, litres, "", {}, ""}));
        case 5:
            return void(desk_.remove(below(2) ? "refill" : "draw_off", id));
        case 6:
            return rename();
        case 7:
            return void(desk_.redo());
        default:
            return void(desk_.undo());
        }
    }

private:
    int below(int end) { return static_cast<int>(random_() % static_cast<unsigned>(end)); }
    std::string name() { return std::array{"Plover", "Knot", "Godwit", "Stilt"}[static_cast<std::size_t>(below(4))]; }
    void rename() {
        VesselEditFact edit;
        edit.vessel = name();
        edit.name = name();
        (void)desk_.record(edit);
    }
    Desk& desk_;
    std::mt19937 random_;
};

/// What any sequence of entries leaves: levels a vessel can have, shares that add up.
void checkLevels(const Desk& desk) {
    const auto cellar = desk.cellar().value();
    for (const auto& vessel : cellar) {
        CHECK(vessel.now.volume.l >= 0);
        CHECK(vessel.now.volume.l <= vessel.facts.capacity.l + 1e-9);
        double shares = 0;
        for (const auto& generation : vessel.now.generations)
            shares += generation.share.of1;
        CHECK((vessel.now.generations.empty() || std::abs(shares - 1) < 1e-9));
    }
}

} // namespace

TEST_CASE("after any edits, undone and redone, memory and file tell the same", "[desk][undo]") {
    const char* many = std::getenv("STAVELINE_SEQUENCES");
    const auto sequences = many ? std::strtoul(many, nullptr, 10) : 12;
    for (unsigned seed = 1; seed <= sequences; ++seed) {
        INFO("seed " << seed);
        const TwoVessels book;
        AnyEdits edits(*book.desk, seed);
        for (int i = 0; i < 25; ++i) {
            edits.one();
            if (i % 6 == 0)
                book.agrees();
        }
        book.agrees();
        checkLevels(*book.desk);
        CHECK(book.desk->check()->sound());
    }
}
