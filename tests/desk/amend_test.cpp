// SPDX-License-Identifier: GPL-3.0-or-later
// An amended fact is in memory what it is in the book: a desk that amended says the same as one that reads anew.
#include "desk/support.h"

#include <functional>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using testing::day;
using testing::DeskFixture;

namespace {

std::string told(const Desk& desk, const VesselName& vessel) {
    std::string all = toJson(desk.cellar().value());
    const auto sittings = desk.sittings(vessel);
    REQUIRE(sittings);
    for (const auto& filed : *sittings)
        all += std::to_string(filed.id) + writeRecords({filed.fact});
    if (const auto target = desk.target(vessel); target && *target)
        all += std::to_string((*target)->id) + writeRecords({(*target)->fact});
    if (const auto history = desk.history(vessel))
        all += toJson(*history);
    const auto ledger = desk.ledger(vessel);
    REQUIRE(ledger);
    for (const LedgerLine& line : ledger->lines)
        all += line.table + std::to_string(line.id);
    return all;
}

struct Amending : DeskFixture {
    Amending() {
        addPlover();
        record(R"([
          {"kind": "vessel", "name": "Knot", "capacity_l": 50},
          {"kind": "opening", "vessel": "Knot", "on": "2025-06-01", "volume_l": 40, "age_years": 1},
          {"kind": "sitting", "vessel": "Plover", "on": "2025-09-01", "scores": [
            {"taster": "Rook", "attribute": "TA1", "cold": 6, "cellar": 6.5}]},
          {"kind": "sitting", "vessel": "Plover", "on": "2025-09-01", "scores": [
            {"taster": "Wren", "attribute": "TA1", "cold": 5}]},
          {"kind": "sitting", "vessel": "Plover", "on": "2025-12-01", "note": "Firm.", "scores": [
            {"taster": "Rook", "attribute": "TA2", "cold": 4}]},
          {"kind": "target", "vessel": "Plover", "on": "2025-07-01", "acidity": 5, "funk": 4, "body": 4},
          {"kind": "reading", "vessel": "Plover", "on": "2025-10-01", "gravity_sg": 1.004, "ph": 3.3},
          {"kind": "dip", "vessel": "Plover", "on": "2025-10-02", "volume_l": 210},
          {"kind": "draw_off", "vessel": "Plover", "on": "2025-11-01", "volume_l": 60, "lot": "Draw 1"},
          {"kind": "top_up", "vessel": "Plover", "on": "2025-11-02", "volume_l": 5, "from": "Knot"}])");
        REQUIRE_FALSE(told(*desk, "Plover").empty()); // everything is in memory
        REQUIRE_FALSE(told(*desk, "Knot").empty());
    }
    void expectAsRead() {
        const auto fresh = *Desk::open(
            scratch / "test.cellar", [this] { return now; }, book::OpenMode::readOnly);
        for (const char* vessel : {"Plover", "Knot"}) {
            INFO(vessel);
            CHECK(told(*desk, vessel) == told(*fresh, vessel));
        }
    }
    [[nodiscard]] std::int64_t lineOf(const std::string& table) const {
        const auto ledger = desk->ledger("Plover");
        for (const LedgerLine& line : ledger->lines)
            if (line.table == table)
                return line.id;
        FAIL("no line of " << table);
        return 0;
    }
    template <class F> void amend(const std::string& table, std::int64_t id, const std::function<void(F&)>& change) {
        F fact = std::get<F>(*desk->fact(table, id));
        change(fact);
        const auto before = told(*desk, "Plover");
        REQUIRE(desk->amend(table, id, fact));
        CHECK(told(*desk, "Plover") != before);
        expectAsRead();
        REQUIRE(desk->undo());
        CHECK(told(*desk, "Plover") == before);
        expectAsRead();
        REQUIRE(desk->redo());
        expectAsRead();
    }
    [[nodiscard]] std::vector<Filed<SittingFact>> sittings() const { return *desk->sittings("Plover"); }
};

} // namespace

TEST_CASE_METHOD(Amending, "an amended score is in memory as it is in the book", "[desk][amend]") {
    amend<SittingFact>("sitting", sittings().front().id, [](SittingFact& fact) {
        fact.sitting.scores.push_back({"Rook", "MF1", {}, 3.5});
        fact.sitting.faults = {{"ropy", 1}};
        fact.sitting.note = "Firm; \"a little\" hay.\nNext line";
        fact.sitting.drawIt = false;
    });
}

TEST_CASE_METHOD(Amending, "an amended fact keeps its place among those of its day, and moves with its day",
                 "[desk][amend]") {
    const auto first = sittings().back(), second = sittings()[1]; // both of one day
    amend<SittingFact>("sitting", first.id, [](SittingFact& fact) { fact.sitting.scores.front().cold = 7; });
    CHECK(sittings().back().id == first.id);
    CHECK(sittings()[1].id == second.id);
    amend<SittingFact>("sitting", first.id, [](SittingFact& fact) { fact.sitting.on = day(2026, 1, 5); });
    CHECK(sittings().front().id == first.id);
    amend<SittingFact>("sitting", first.id, [](SittingFact& fact) { fact.sitting.on = day(2025, 8, 1); });
    CHECK(sittings().back().id == first.id);
}

TEST_CASE_METHOD(Amending, "amended readings, dips, draws, openings and targets are in memory as in the book",
                 "[desk][amend]") {
    amend<ReadingFact>("reading", lineOf("reading"), [](ReadingFact& fact) { fact.measured.ph = Ph{3.21}; });
    amend<DipFact>("dip", lineOf("dip"), [](DipFact& fact) { fact.volume = Litres{205.3}; });
    amend<DrawOffFact>("draw_off", lineOf("draw_off"), [](DrawOffFact& fact) { fact.volume = Litres{61.7}; });
    amend<OpeningFact>("opening", lineOf("opening"), [](OpeningFact& fact) { fact.volume = Litres{214}; });
    amend<TargetFact>("target", (*desk->target("Plover"))->id, [](TargetFact& fact) {
        fact.target.windows[Dimension::funk] = {3.5, .75};
    });
}

TEST_CASE_METHOD(Amending, "what left another vessel is amended on both sides", "[desk][amend]") {
    const auto before = desk->vessel("Knot")->now.volume.l;
    amend<TopUpFact>("top_up", lineOf("top_up"), [](TopUpFact& fact) { fact.volume = Litres{8}; });
    CHECK(desk->vessel("Knot")->now.volume.l == Approx(before - 3).margin(.05));
}

TEST_CASE_METHOD(Amending, "a fact amended to another vessel leaves the one and comes to the other", "[desk][amend]") {
    amend<ReadingFact>("reading", lineOf("reading"), [](ReadingFact& fact) { fact.vessel = "Knot"; });
}

TEST_CASE_METHOD(Amending, "a refused amendment leaves memory and book alone", "[desk][amend]") {
    const auto plover = told(*desk, "Plover"), knot = told(*desk, "Knot");
    const auto filed = sittings().front();
    SittingFact wrong = filed.fact;
    wrong.sitting.scores.front().cold = 6.3; // no half step
    CHECK_FALSE(desk->amend("sitting", filed.id, wrong));
    wrong = filed.fact;
    wrong.sitting.on = day(2027, 1, 1);
    CHECK_FALSE(desk->amend("sitting", filed.id, wrong));
    CHECK_FALSE(desk->amend("sitting", 4711, filed.fact));
    DrawOffFact draw = std::get<DrawOffFact>(*desk->fact("draw_off", lineOf("draw_off")));
    draw.volume = Litres{4000};
    CHECK_FALSE(desk->amend("draw_off", lineOf("draw_off"), draw));
    CHECK(told(*desk, "Plover") == plover);
    CHECK(told(*desk, "Knot") == knot);
    expectAsRead();
}
