// SPDX-License-Identifier: GPL-3.0-or-later
// Beer moved between vessels: what the source must hold, what it brings along, and that both sides stay in step.
#include "desk/support.h"

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::facts;
using namespace staveline::testing;

namespace {

/// Two casks alike: one sour and full, one empty.
struct CasksFixture : DeskFixture {
    CasksFixture() {
        record(R"([{"kind": "vessel", "name": "Plover", "capacity_l": 225, "material": "oak used"},
                   {"kind": "opening", "vessel": "Plover", "on": "2025-06-01", "volume_l": 216, "age_years": 1.5,
                    "ta_g_l": 9, "ph": 3.2},
                   {"kind": "vessel", "name": "Knot", "capacity_l": 225, "material": "oak used"}])");
    }
    std::string moved(const std::string& from, const std::string& to, const std::string& on, double litres) {
        return R"({"kind": "refill", "vessel": ")" + to + R"(", "on": ")" + on + R"(", "volume_l": )" +
               std::to_string(litres) + R"(, "from": ")" + from + R"("})";
    }
    double acidity(const VesselName& name) { return desk->estimates(name)->model[Dimension::acidity].mean; }
    RefillFact lastRefill(const VesselName& name) {
        const auto line = desk->ledger(name)->lines.back();
        return std::get<RefillFact>(*desk->fact(line.table, line.id));
    }
};

} // namespace

TEST_CASE_METHOD(CasksFixture, "more cannot be moved than the source holds", "[desk][transfer][bad]") {
    record(R"({"kind": "dip", "vessel": "Plover", "on": "2026-01-01", "volume_l": 10})");
    const Fault tooMuch = refused(moved("Plover", "Knot", "2026-01-05", 200));
    CHECK(tooMuch.path == "/volume_l");
    CHECK(tooMuch.cause.key == "desk.more_than_held");
    CHECK(refused(moved("Plover", "Knot", "2025-05-01", 5)).path == "/on");
    const Fault nothingIn = refused(moved("Knot", "Plover", "2026-01-05", 5));
    CHECK(nothingIn.path == "/from");
    CHECK(nothingIn.cause.key == "desk.not_opened");
    CHECK(refused(moved("Nobody", "Knot", "2026-01-05", 5)).path == "/from");
    CHECK_FALSE(desk->preview(RefillFact{"Knot", day(2026, 1, 5), Litres{200}, "", "Plover", {}, ""}));
}

TEST_CASE_METHOD(CasksFixture, "a corrected transfer is measured against the source without it", "[desk][transfer]") {
    record(moved("Plover", "Knot", "2026-01-05", 150)); // about 60 L stay
    const auto line = desk->ledger("Knot")->lines.back();
    RefillFact more = lastRefill("Knot");
    more.volume = Litres{200};
    CHECK(desk->preview(line.table, line.id, more));
    REQUIRE(desk->amend(line.table, line.id, more));
    CHECK(desk->vessel("Plover")->now.volume.l < 15);
    more.volume = Litres{224};
    CHECK_FALSE(desk->amend(line.table, line.id, more));
}

TEST_CASE_METHOD(CasksFixture, "a transfer corrected to another source leaves that one", "[desk][transfer]") {
    record(R"([{"kind": "vessel", "name": "Dunlin", "capacity_l": 225},
               {"kind": "opening", "vessel": "Dunlin", "on": "2025-06-01", "volume_l": 200}])");
    record(moved("Plover", "Knot", "2026-01-05", 40));
    CHECK(desk->ledger("Dunlin")->lines.size() == 1); // read before
    const auto line = desk->ledger("Knot")->lines.back();
    RefillFact other = lastRefill("Knot");
    other.from = "Dunlin";
    REQUIRE(desk->amend(line.table, line.id, other));
    CHECK(desk->ledger("Dunlin")->lines.size() == 2);
    CHECK(desk->ledger("Plover")->lines.size() == 1);
    REQUIRE(desk->undo());
    CHECK(desk->ledger("Dunlin")->lines.size() == 1);
    CHECK(desk->ledger("Plover")->lines.size() == 2);
}

TEST_CASE_METHOD(CasksFixture, "what is moved is the beer from before that day's refill", "[desk][transfer]") {
    now = day(2026, 1, 5);
    record(moved("Plover", "Knot", "2026-01-05", 100));
    const double moved = acidity("Knot");
    record(R"({"kind": "refill", "vessel": "Plover", "on": "2026-01-05", "volume_l": 100})");
    CHECK(acidity("Knot") == moved);
    CHECK(acidity("Plover") < moved - .5);
}

TEST_CASE_METHOD(CasksFixture, "beer that goes to another cask and back is still the same beer", "[desk][transfer]") {
    const double before = acidity("Plover");
    record(moved("Plover", "Knot", "2026-01-05", 100));
    record(moved("Knot", "Plover", "2026-02-05", 90));
    CHECK(acidity("Plover") == Approx(before).margin(.2));
}

TEST_CASE_METHOD(CasksFixture, "what is moved later than the day looked at does not count", "[desk][transfer]") {
    now = day(2026, 1, 10);
    record(moved("Plover", "Knot", "2026-01-05", 60));
    const double before = acidity("Knot");
    now = day(2026, 3, 2);
    record(moved("Plover", "Knot", "2026-03-01", 60));
    now = day(2026, 1, 10);
    CHECK(acidity("Knot") == before);
}

TEST_CASE_METHOD(CasksFixture, "a brew renamed is renamed wherever it went", "[desk][amend]") {
    BrewFact brew;
    brew.name = "Brew 1";
    brew.vessel = "Plover";
    brew.on = day(2026, 1, 2);
    brew.recipe = desk->setting("Plover")->recipe;
    REQUIRE(desk->record(brew));
    record(R"({"kind": "refill", "vessel": "Knot", "on": "2026-01-20", "volume_l": 80, "brew": "Brew 1"})");
    CHECK(render(desk->ledger("Knot")->lines.back().text) == "first fill of 80.0 L from Brew 1");
    brew.name = "Brew 9";
    REQUIRE(desk->amend("brew", 1, brew));
    CHECK(render(desk->ledger("Knot")->lines.back().text) == "first fill of 80.0 L from Brew 9");
    REQUIRE(desk->undo());
    CHECK(render(desk->ledger("Knot")->lines.back().text) == "first fill of 80.0 L from Brew 1");
}
