// SPDX-License-Identifier: GPL-3.0-or-later
// A sitting that is not to be learned from: marked, told, taken back, and never lost from its sitting.
#include "desk/support.h"

#include "desk/evidence.h"
#include "facts/sample.h"

#include <algorithm>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::testing;

namespace {

struct SittingUse : DeskFixture {
    SittingUse() {
        addPlover();
        record("[" + sitting("2025-09-01", 6) + "," + sitting("2025-09-01", 2) + "," + sitting("2025-12-01", 5) + "]");
    }
    static std::string sitting(const std::string& on, int score) {
        return R"({"kind": "sitting", "vessel": "Plover", "on": ")" + on +
               R"(", "scores": [{"taster": "Rook", "attribute": "TA1", "cold": )" + std::to_string(score) + "}]}";
    }
    static std::string use(const std::string& on, const std::string& rest) {
        return R"({"kind": "sitting_use", "vessel": "Plover", "sitting": ")" + on + "\", " + rest + "}";
    }
    [[nodiscard]] SittingFact stored(std::int64_t id) const {
        return std::get<SittingFact>(*desk->fact("sitting", id));
    }
    /// Row by row, in the order they were recorded.
    [[nodiscard]] std::vector<bool> learned() const {
        std::vector<bool> all;
        for (std::int64_t id = 1; id <= 3; ++id)
            all.push_back(stored(id).learn);
        return all;
    }
};

using Marks = std::vector<bool>;

} // namespace

TEST_CASE_METHOD(SittingUse, "a sitting is learned from unless it is said otherwise", "[desk][sitting_use]") {
    CHECK(learned() == Marks{true, true, true});
    record(use("2025-12-01", R"("learn": false, "reason": "a head cold")"));
    CHECK(desk->undoText() == "do not learn from a tasting of Plover");
    CHECK(learned() == Marks{true, true, false});
    CHECK(stored(3).learnReason == "a head cold");
    CHECK(stored(3).sitting.scores.front().cold == 5);
    record(use("2025-12-01", R"("learn": true)"));
    CHECK(desk->undoText() == "learn again from a tasting of Plover");
    CHECK(learned() == Marks{true, true, true});
    CHECK(stored(3).learnReason.empty());
    REQUIRE(desk->undo());
    CHECK(learned() == Marks{true, true, false});
    REQUIRE(desk->undo());
    CHECK(learned() == Marks{true, true, true});
    REQUIRE(desk->redo());
    CHECK(stored(3).learnReason == "a head cold");
    CHECK(desk->check()->sound());
}

TEST_CASE_METHOD(SittingUse, "of two sittings on a day the one that is meant is marked", "[desk][sitting_use]") {
    record(use("2025-09-01", R"("which": 2, "learn": false)"));
    CHECK(learned() == Marks{true, false, true});
    record(use("2025-09-01", R"("learn": false)"));
    CHECK(learned() == Marks{false, false, true});
    const auto again = *Desk::open(desk->path(), [this] { return now; });
    CHECK_FALSE(std::get<SittingFact>(*again->fact("sitting", 2)).learn);
}

TEST_CASE_METHOD(SittingUse, "the mark goes where its sitting goes", "[desk][sitting_use][amend]") {
    record(use("2025-09-01", R"("which": 2, "learn": false, "reason": "soap in the glass")"));
    SittingFact moved = stored(2);
    moved.sitting.on = day(2025, 10, 5);
    REQUIRE(desk->amend("sitting", 2, moved));
    CHECK(learned() == Marks{true, false, true});
    REQUIRE(desk->remove("sitting", 2));
    record(sitting("2025-10-05", 7));
    const auto sittings = desk->sittings("Plover");
    for (const auto& filed : *sittings)
        CHECK(filed.fact.learn);
    REQUIRE(desk->undo());
    REQUIRE(desk->undo());
    CHECK(stored(2) == moved);
}

TEST_CASE_METHOD(SittingUse, "what is known, due and wrong does not rest on a sitting set aside",
                 "[desk][sitting_use]") {
    const auto known = [this] { return desk->estimates("Plover")->combined[Dimension::acidity].mean; };
    const double before = known();
    const auto due = desk->vessel("Plover")->due.text;
    record(R"({"kind": "sitting", "vessel": "Plover", "on": "2026-03-01", "scores": [
      {"taster": "Rook", "attribute": "TA1", "cold": 1}, {"taster": "Rook", "attribute": "TA2", "cold": 1},
      {"taster": "Rook", "attribute": "TA3", "cold": 1}], "faults": [{"fault": "ropy", "severity": 3}]})");
    CHECK(desk->vessel("Plover")->fault == "ropy");
    const double misled = known();
    CHECK(misled < before - .5);
    record(use("2026-03-01", R"("learn": false, "reason": "the wrong cask")"));
    CHECK(known() == before);
    CHECK(desk->vessel("Plover")->fault.empty());
    CHECK(desk->vessel("Plover")->due.text == due);
    record(use("2026-03-01", R"("learn": true)"));
    CHECK(known() == misled);
}

TEST_CASE_METHOD(SittingUse, "a draw is remembered by the last sitting that counts", "[desk][sitting_use][history]") {
    const auto full = [](const std::string& on, int score) {
        std::string scores;
        for (const char* line : {"TA1", "TA2", "TA3"})
            scores += std::string(scores.empty() ? "" : ",") + R"({"attribute": ")" + line + R"(", "cold": )" +
                      std::to_string(score) + "}";
        return R"({"kind": "sitting", "vessel": "Plover", "on": ")" + on + R"(", "scores": [)" + scores + "]}";
    };
    record("[" + full("2026-01-05", 6) + "," + full("2026-01-20", 1) +
           R"(,{"kind": "draw_off", "vessel": "Plover", "on": "2026-02-01", "volume_l": 60}])");
    const auto tasted = [this] { return desk->pastDraws("Plover")->front().tasted[Dimension::acidity]->mean; };
    const double muted = tasted();
    record(use("2026-01-20", R"("learn": false)"));
    CHECK(tasted() > muted + 3);
}

TEST_CASE_METHOD(SittingUse, "in one file with its sitting, and as a field of it, the mark is the same",
                 "[desk][sitting_use]") {
    record("[" + sitting("2026-01-01", 4) + "," + use("2026-01-01", R"("learn": false, "reason": "smoke")") + "]");
    const SittingFact marked = stored(4);
    CHECK_FALSE(marked.learn);
    const auto written = parseRecords(writeRecords({marked}));
    REQUIRE(written);
    CHECK(written->front() == Fact{marked});
    REQUIRE(desk->undo());
    CHECK(desk->sittings("Plover")->size() == 3);
}

TEST_CASE_METHOD(SittingUse, "a sitting that is not there cannot be marked", "[desk][sitting_use][bad]") {
    const Fault wrong = refused(use("2025-11-20", R"("learn": false)"));
    CHECK(wrong.path == "/sitting");
    CHECK(render(wrong.cause) == "Plover was not tasted on 20 Nov 2025.");
    CHECK(render(wrong.remedy) == "Give the day of a tasting; the nearest is 1 Dec 2025.");
    const Fault which = refused(use("2025-09-01", R"("which": 3, "learn": false)"));
    CHECK(which.path == "/which");
    CHECK(render(which.cause) == "Tastings of 1 Sep 2025 on record: 2.");
    CHECK(refused(use("2025-09-01", R"("which": 0, "learn": false)")).path == "/which");
    CHECK(refused(use("2025-09-01", R"("which": 1)")).path == "/learn");
    CHECK(refused(use("2025-09-01", R"("learn": "no")")).cause.key == "desk.wrong_type");
    record(R"({"kind": "vessel", "name": "Knot", "capacity_l": 50})");
    const Fault none = refused(R"({"kind": "sitting_use", "vessel": "Knot", "sitting": "2025-09-01", "learn": false})");
    CHECK(none.path == "/sitting");
    CHECK(render(none.remedy) == "Record the tasting first.");
    CHECK(learned() == Marks{true, true, true});
}

TEST_CASE("the last sitting to learn from is one up to a day, after another, and not set aside", "[desk][event]") {
    VesselRecord record;
    SittingFact early, late;
    early.sitting.on = day(2025, 3, 1);
    late.sitting.on = day(2025, 6, 1);
    record.of<SittingFact>() = {{1, early}, {2, late}};
    CHECK(lastToLearnFrom(record, day(2025, 5, 31)) == &record.of<SittingFact>().front().fact);
    CHECK(lastToLearnFrom(record, day(2025, 6, 1)) == &record.of<SittingFact>().back().fact);
    CHECK(lastToLearnFrom(record, day(2025, 6, 1), day(2025, 6, 1)) == nullptr);
    record.of<SittingFact>().front().fact.learn = false;
    CHECK(lastToLearnFrom(record, day(2025, 6, 1)) == &record.of<SittingFact>().back().fact);
    CHECK(lastToLearnFrom(record, day(2025, 5, 31)) == nullptr);
}

TEST_CASE_METHOD(DeskFixture, "the sample cellar has a vessel that was moved and a sitting set aside",
                 "[desk][sample][sitting_use][event]") {
    REQUIRE(desk->record(*sampleCellar(now)));
    const auto ledger = desk->ledger("Plover");
    CHECK(std::count_if(ledger->lines.begin(), ledger->lines.end(), [](const LedgerLine& line) {
              return line.text.key == "desk.line.event.moved" && !line.note.empty();
          }) == 1);
    const auto sittings = desk->sittings("Knot");
    const auto aside = [](const auto& filed) { return !filed.fact.learn && !filed.fact.learnReason.empty(); };
    CHECK(std::count_if(sittings->begin(), sittings->end(), aside) == 1);
    CHECK_FALSE(aside(sittings->front())); // what is said today rests on one that counts
}
