// SPDX-License-Identifier: GPL-3.0-or-later
// The round: what is seen at a vessel is kept with it and bears on the next decision.
#include "desk/support.h"

#include <nlohmann/json.hpp>

#include <algorithm>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::testing;

namespace {

struct RoundFixture : DeskFixture {
    RoundFixture() { addPlover(); }
    void look(const std::string& seen) {
        record(R"({"kind": "round", "vessel": "Plover", "on": ")" + isoDay(now) + R"(", )" + seen + "}");
    }
    [[nodiscard]] std::optional<RoundState> state() const { return desk->vessel("Plover")->round; }
    [[nodiscard]] SeenAtVessel seen() const { return desk->vessel("Plover")->seen; }
    [[nodiscard]] bool finds(const std::string& key) const {
        const auto seen = this->seen();
        return std::any_of(seen.words.begin(), seen.words.end(),
                           [&](const Message& message) { return message.key == key; });
    }
    [[nodiscard]] bool advised(const std::string& key) const {
        const auto advice = desk->advise({"Plover", {}, {}, false});
        REQUIRE(advice);
        return std::any_of(advice->notes.begin(), advice->notes.end(),
                           [&](const Message& message) { return message.key == key; });
    }
};

} // namespace

TEST_CASE_METHOD(RoundFixture, "what a round sees bears on the advice: film, weep, warm room", "[desk][round]") {
    CHECK_FALSE(state());
    const std::pair<const char*, const char*> all[] = {{R"("weep": "damp")", "desk.round.damp"},
                                                       {R"("weep": "dripping")", "desk.round.dripping"},
                                                       {R"("bung": "loose")", "desk.round.loose"},
                                                       {R"("pellicle": "full")", "desk.round.film"},
                                                       {R"("pellicle": "broken")", "desk.round.film_broken"},
                                                       {R"("smell": "vinegar")", "desk.round.smell"},
                                                       {R"("room_c": 19)", "desk.round.warm"},
                                                       {R"("room_c": 12.9)", "desk.round.cold"}};
    for (const auto& [what, key] : all) {
        CAPTURE(what);
        look(what);
        CHECK(seen().words.size() == 1);
        CHECK(finds(key));
        CHECK(advised(key));
        REQUIRE(desk->undo());
        CHECK_FALSE(state());
        CHECK_FALSE(advised(key));
    }
    look(R"("bung": "tight", "weep": "none", "pellicle": "thin", "smell": "clean", "room_c": 18.9)"); // kept at 16
    CHECK(seen().words.empty());
}

TEST_CASE_METHOD(RoundFixture, "the last look counts, for a while, and says when the next is", "[desk][round]") {
    look(R"("weep": "damp")");
    CHECK(state()->next == now + std::chrono::days{30});
    now = now + std::chrono::days{92};
    CHECK(finds("desk.round.damp"));
    now = now + std::chrono::days{1};
    CHECK_FALSE(finds("desk.round.damp"));
    CHECK(state());
    look(R"("weep": "none", "next_look": "2026-08-01")");
    CHECK(state()->next == day(2026, 8, 1));
    CHECK(seen().words.empty());
}

TEST_CASE_METHOD(RoundFixture, "a leak is told until it is mended or a round finds the vessel dry", "[desk][round]") {
    record(R"({"kind": "event", "vessel": "Plover", "on": "2026-03-01", "what": "leaked", "volume_l": 2})");
    CHECK(finds("desk.round.leak"));
    CHECK(advised("desk.round.leak"));
    CHECK(desk->vessel("Plover")->headline.key == "desk.due.leak_first");
    now = now + std::chrono::days{200}; // it does not close by itself
    CHECK(finds("desk.round.leak"));
    look(R"("weep": "none")");
    CHECK_FALSE(finds("desk.round.leak"));
    REQUIRE(desk->undo());
    record(R"({"kind": "event", "vessel": "Plover", "on": "2026-03-05", "what": "repaired"})");
    CHECK_FALSE(finds("desk.round.leak"));
    CHECK_FALSE(seen().loses);
    look(R"("weep": "dripping")");
    CHECK(seen().loses);
    CHECK(desk->vessel("Plover")->headline.key == "desk.due.leak_first");
}

TEST_CASE_METHOD(RoundFixture, "a round with its level and its top-up is one edit, and stands in the history",
                 "[desk][round]") {
    const auto before = desk->revision();
    record(R"([{"kind": "dip", "vessel": "Plover", "on": "2026-03-02", "volume_l": 208},
               {"kind": "top_up", "vessel": "Plover", "on": "2026-03-02", "volume_l": 3},
               {"kind": "round", "vessel": "Plover", "on": "2026-03-02", "bung": "tight", "room_c": 14, "purged": true,
                "note": "quiet"}])");
    CHECK(desk->vessel("Plover")->now.volume.l == Approx(211));
    const auto history = nlohmann::json::parse(toJson(*desk->history("Plover"))).at("rows");
    const auto row =
        std::find_if(history.begin(), history.end(), [](const auto& each) { return each.at("what") == "round"; });
    REQUIRE(row != history.end());
    CHECK(row->at("round") == "bung tight; room 14 \u00b0C; purged");
    CHECK(row->at("note") == "quiet");
    CHECK(toCsv(desk->history("Plover")->rows).find("bung tight") != std::string::npos);
    const auto status = nlohmann::json::parse(toJson(*desk->cellar())).front().at("round");
    CHECK(status.at("on") == "2026-03-02");
    CHECK(status.at("next_look") == "2026-04-01");
    REQUIRE(desk->undo());
    CHECK(desk->revision() > before);
    CHECK_FALSE(state());
    CHECK(desk->ledger("Plover")->lines.size() == 1);
}

TEST_CASE_METHOD(RoundFixture, "a look that says nothing, or the next before it, is refused", "[desk][round][bad]") {
    CHECK(refused(R"({"kind": "round", "vessel": "Plover", "on": "2026-03-02"})").cause.key == "desk.nothing_seen");
    CHECK(refused(R"({"kind": "round", "vessel": "Plover", "on": "2026-03-02", "weep": "none",
                      "next_look": "2026-03-02"})")
              .path == "/next_look");
    CHECK(refused(R"({"kind": "round", "vessel": "Plover", "on": "2026-03-03", "weep": "none"})").path == "/on");
    CHECK(refused(R"({"kind": "round", "vessel": "Plover", "on": "2026-03-02", "weep": "sweating"})").path == "/weep");
    CHECK(refused(R"({"kind": "round", "vessel": "Plover", "on": "2026-03-02", "room_c": 60})").path == "/room_c");
}

TEST_CASE_METHOD(RoundFixture, "the walk sheet has a row for each vessel in use, in the order of the cellar",
                 "[desk][round][sheet]") {
    record(R"([{"kind": "vessel", "name": "Knot", "capacity_l": 50},
               {"kind": "vessel", "name": "Heron", "capacity_l": 50},
               {"kind": "retire", "vessel": "Knot", "on": "2026-03-01"}])");
    const auto paper = desk->walkSheet();
    const auto* table = std::get_if<sheet::Table>(&paper.blocks.front());
    REQUIRE(table);
    REQUIRE(table->rows.size() == 2);
    const auto cellar = desk->cellar();
    REQUIRE(cellar);
    std::vector<std::string> names;
    for (const auto& vessel : *cellar)
        if (!vessel.retired)
            names.push_back(vessel.name);
    for (std::size_t i = 0; i < names.size(); ++i) {
        CHECK(table->rows[i].size() == table->columns.size());
        CHECK(table->rows[i].front().starts_with(names[i] + ","));
        CHECK(std::all_of(table->rows[i].begin() + 1, table->rows[i].end(),
                          [](const auto& cell) { return cell.empty(); }));
    }
}

TEST_CASE_METHOD(RoundFixture, "the look to come stands with what is due, first when its day has come",
                 "[desk][round]") {
    look(R"("weep": "none")");
    CHECK_FALSE(desk->vessel("Plover")->look); // nobody said when
    look(R"("weep": "damp", "next_look": "2026-03-12")");
    const auto before = desk->vessel("Plover");
    REQUIRE(before->look);
    CHECK(before->look->inDays == 10);
    CHECK(before->headline == before->due.text);
    CHECK(before->dueIn() == std::min(10, before->due.inDays));
    now = day(2026, 3, 12);
    CHECK(render(desk->vessel("Plover")->headline).starts_with("look today; "));
    now = day(2026, 3, 15);
    const auto late = desk->vessel("Plover");
    CHECK(render(late->headline) == "look overdue 3 days; " + render(late->due.text));
    CHECK(late->dueIn() <= -3);
    look(R"("weep": "none", "next_look": "2026-04-15")");
    CHECK(desk->vessel("Plover")->headline == desk->vessel("Plover")->due.text);
}

TEST_CASE_METHOD(RoundFixture, "the look to come is an entry of the calendar, moved with the round that says it",
                 "[desk][round][calendar]") {
    const auto entries = [&] {
        std::vector<std::string> found;
        const std::string file = desk->calendar().value();
        for (std::size_t at = file.find("-look-"); at != std::string::npos; at = file.find("-look-", at + 1))
            found.push_back(file.substr(at, 16));
        return found;
    };
    CHECK(entries().empty());
    look(R"("weep": "damp", "next_look": "2026-03-12")");
    CHECK(entries() == std::vector<std::string>{"-look-2026-03-02"});
    CHECK(desk->calendar()->find("Look at Plover") != std::string::npos);
    CHECK(desk->calendar()->find("VALUE=DATE:20260312") != std::string::npos);
    now = day(2026, 3, 12);
    look(R"("weep": "none", "next_look": "2026-04-12")");
    CHECK(entries() == std::vector<std::string>{"-look-2026-03-12"});
    CHECK(desk->calendar()->find("VALUE=DATE:20260412") != std::string::npos);
}
