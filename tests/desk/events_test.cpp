// SPDX-License-Identifier: GPL-3.0-or-later
// What befell a vessel beside its liquid: written down, put right, taken back, and no drop moved but what was lost.
#include "desk/support.h"

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using testing::day;

namespace {

struct Events : testing::DeskFixture {
    Events() { addPlover(); }

    static std::string event(const std::string& on, const std::string& what, const std::string& note = "") {
        return R"({"kind": "event", "vessel": "Plover", "on": ")" + on + R"(", "what": ")" + what + R"(", "note": ")" +
               note + "\"}";
    }
    [[nodiscard]] std::vector<LedgerLine> lines() const { return desk->ledger("Plover")->lines; }
    [[nodiscard]] EventFact stored(std::int64_t id) const { return std::get<EventFact>(*desk->fact("event", id)); }
};

} // namespace

TEST_CASE_METHOD(Events, "every word of an event goes through file and book as it was", "[desk][event]") {
    std::int64_t id = 0;
    for (const auto word : factWords::happenings) {
        INFO(word);
        const std::string json = event("2025-10-01", std::string(word), "as written");
        record(json);
        const Fact given = parseRecords(json)->front();
        CHECK(wordOf(std::get<EventFact>(given).what) == word);
        CHECK(*parseRecords(writeRecords({given})) == std::vector{given});
        const auto again = Desk::open(desk->path(), [this] { return now; });
        auto told = std::get<EventFact>(*(*again)->fact("event", ++id));
        told.turn.reset(); // several of one day, one after the other
        CHECK(Fact{told} == given);
    }
    CHECK(id == 7);
}

TEST_CASE_METHOD(Events, "what racking leaves behind is gone before the vessel is filled again", "[desk][event]") {
    record(R"([{"kind": "refill", "vessel": "Plover", "on": "2025-11-01", "volume_l": 74},
               {"kind": "event", "vessel": "Plover", "on": "2025-11-01", "what": "racked", "volume_l": 4},
               {"kind": "draw_off", "vessel": "Plover", "on": "2025-11-01", "volume_l": 70}])");
    std::vector<std::string> order;
    for (const LedgerLine& line : lines())
        if (line.on == day(2025, 11, 1))
            order.push_back(line.table);
    CHECK(order == std::vector<std::string>{"draw_off", "event", "refill"});
}

TEST_CASE_METHOD(Events, "on one day an event comes last, and without litres moves nothing", "[desk][event]") {
    const auto before = desk->vessel("Plover")->now;
    record("[" + event("2025-11-01", "moved") + R"(,
               {"kind": "draw_off", "vessel": "Plover", "on": "2025-11-01", "volume_l": 70},
               {"kind": "refill", "vessel": "Plover", "on": "2025-11-01", "volume_l": 70},
               {"kind": "top_up", "vessel": "Plover", "on": "2025-11-01", "volume_l": 1},
               {"kind": "sample", "vessel": "Plover", "on": "2025-11-01"},
               {"kind": "reading", "vessel": "Plover", "on": "2025-11-01", "ph": 3.4}])");
    std::vector<std::string> order;
    for (const LedgerLine& line : lines())
        if (line.on == day(2025, 11, 1))
            order.push_back(line.table);
    CHECK(order == std::vector<std::string>{"reading", "sample", "draw_off", "refill", "top_up", "event"});
    const auto after = desk->vessel("Plover")->now;
    record(R"({"kind": "event", "vessel": "Plover", "on": "2025-11-01", "what": "racked", "volume_l": 3})");
    order.clear();
    for (const LedgerLine& line : lines())
        if (line.on == day(2025, 11, 1))
            order.push_back(line.table);
    CHECK(order.back() == "event"); // recorded later, so it stands after what was there
    REQUIRE(desk->undo());
    record(event("2025-11-01", "cleaned"));
    const auto still = desk->vessel("Plover")->now;
    CHECK(still.volume == after.volume);
    CHECK(still.meanAge == after.meanAge);
    CHECK(still.cycle == before.cycle + 1);
    CHECK(desk->ledger("Plover")->vessel.findings.empty());
}

TEST_CASE_METHOD(Events, "an event is put right, removed and brought back", "[desk][event][amend]") {
    record(event("2025-10-01", "racked", "to the new cask"));
    EventFact fact = stored(1);
    const EventFact first = fact;
    fact.what = Happening::cleaned;
    fact.on = day(2025, 10, 3);
    REQUIRE(desk->amend("event", 1, fact));
    CHECK(stored(1) == fact);
    CHECK(lines().back().on == fact.on);
    REQUIRE(desk->undo());
    CHECK(stored(1) == first);
    REQUIRE(desk->remove("event", 1));
    CHECK(lines().size() == 1);
    REQUIRE(desk->undo());
    CHECK(stored(1) == first);
    CHECK(lines().back().note == "to the new cask");
    REQUIRE(desk->redo());
    CHECK(lines().size() == 1);
}

TEST_CASE_METHOD(Events, "an event needs a word that is known and a day in the vessel's life", "[desk][event][bad]") {
    const Fault word = refused(event("2025-10-01", "painted"));
    CHECK(word.path == "/what");
    CHECK(render(word.remedy).find("pitched, racked, cleaned, moved, tasters, repaired, leaked") != std::string::npos);
    CHECK(refused(R"({"kind": "event", "vessel": "Plover", "on": "2025-10-01"})").path == "/what");
    const Fault early = refused(event("2025-05-31", "pitched"));
    CHECK(early.path == "/on");
    CHECK(early.cause.key == "desk.before_opening");
    CHECK(refused(event("2026-03-03", "pitched")).cause.key == "desk.future");
    CHECK(refused(R"({"kind": "event", "vessel": "Nobody", "on": "2025-10-01", "what": "moved"})").path == "/vessel");
    CHECK(lines().size() == 1);
}

TEST_CASE_METHOD(Events, "ledger, undo and history say what the event was", "[desk][event][history]") {
    const std::map<std::string, std::pair<std::string, std::string>> words{
        {"pitched", {"culture pitched", "culture pitched into Plover"}},
        {"racked", {"racked", "racking of Plover"}},
        {"cleaned", {"wood cleaned hard", "hard cleaning of Plover"}},
        {"moved", {"vessel moved", "moving of Plover"}},
        {"tasters", {"other people taste from here on", "other tasters for Plover"}},
        {"repaired", {"wood repaired", "repair of Plover"}},
        {"leaked", {"leak", "leak of Plover"}}};
    for (const auto& [what, said] : words) {
        INFO(what);
        record(event("2025-10-01", what, R"(seen \"once\")"));
        CHECK(render(lines().back().text) == said.first);
        CHECK(desk->undoText() == said.second);
        const auto rows = desk->history("Plover")->rows;
        REQUIRE(rows.back().happened);
        CHECK(wordOf(*rows.back().happened) == what);
        CHECK(toCsv(rows).find(what + ",,,,,,,,,,\"seen \"\"once\"\"\"\r\n") != std::string::npos);
        CHECK(toJson(*desk->history("Plover")).find("\"happened\": \"" + what + "\"") != std::string::npos);
        REQUIRE(desk->undo());
        CHECK_FALSE(desk->history("Plover")->rows.back().happened);
    }
    record(event("2025-10-01", "moved"));
    auto fact = stored(1);
    fact.what = Happening::racked;
    CHECK(desk->amend("event", 1, fact)->edit == "correction of racking of Plover");
    CHECK(desk->remove("event", 1)->edit == "removal of racking of Plover");
}
