// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/notes.h"
#include "support.h"

using namespace staveline;
using namespace staveline::testing;

namespace {

struct Notes : DeskFixture {
    Notes() { addPlover(); }
    Result<desk::NotesOutcome> take(const std::string& kind, const std::string& text, bool trial = false) {
        return desk::takeNotes(*desk, text, {kind, "Plover", {}, {}, {}}, "notes.csv", trial);
    }
    std::size_t entries() { return desk->ledger("Plover")->lines.size(); }
};

constexpr const char* draws = "date,litres\n"
                              "2025-09-01,60\n"
                              "2025-07-01,20\n"
                              "2025-08-01,500\n" // more than is there
                              "2027-01-01,5\n"   // to come
                              "2025-10-01,30\n";

} // namespace

TEST_CASE_METHOD(Notes, "notes are one edit and one undo, the impossible ones told", "[notes]") {
    const auto done = take("draw_off", draws);
    REQUIRE(done);
    CHECK(done->rows == 5);
    CHECK(done->taken == 3);
    CHECK(entries() == 4);
    CHECK(done->recorded.rows.size() == 3);
    REQUIRE(done->rejected.size() == 2);
    CHECK(done->rejected[0].line == 4);
    CHECK(done->rejected[0].why.path == "/volume_l");
    CHECK(done->rejected[1].line == 5);
    CHECK(desk->undoText() == "import of notes.csv");
    REQUIRE(desk->undo());
    CHECK(entries() == 1);
}

TEST_CASE_METHOD(Notes, "a trial says the same and stores nothing", "[notes]") {
    const auto revision = desk->revision();
    const auto tried = take("draw_off", draws, true);
    REQUIRE(tried);
    CHECK(desk->revision() == revision);
    CHECK(entries() == 1);
    const auto done = take("draw_off", draws);
    CHECK(tried->taken == done->taken);
    REQUIRE(tried->rejected.size() == done->rejected.size());
    for (std::size_t i = 0; i < done->rejected.size(); ++i)
        CHECK(tried->rejected[i].why == done->rejected[i].why);
}

TEST_CASE_METHOD(Notes, "the same notes again add nothing", "[notes]") {
    const std::string text = "date,ph\n2025-09-01,3.41\n2025-10-01,3.40\n";
    REQUIRE(take("reading", text)->taken == 2);
    const auto again = take("reading", text);
    REQUIRE(again);
    CHECK(again->taken == 0);
    CHECK(again->rejected.size() == 2);
    CHECK(entries() == 3);
    CHECK(desk->undoText() == "import of notes.csv"); // no edit of nothing
}

TEST_CASE_METHOD(Notes, "notes that make an entry on record impossible are refused whole", "[notes]") {
    record(R"({"kind": "draw_off", "vessel": "Plover", "on": "2026-01-01", "volume_l": 200})");
    const auto done = take("draw_off", "date,litres\n2025-09-01,60\n");
    REQUIRE_FALSE(done);
    CHECK(done.error().cause.key == "desk.then_drawn_more");
    CHECK(entries() == 2);
}

TEST_CASE_METHOD(Notes, "an import that is broken off leaves no trace", "[notes]") {
    const auto revision = desk->revision();
    std::size_t seen = 0;
    const auto done = desk::takeNotes(*desk, draws, {"draw_off", "Plover", {}, {}, {}}, "notes.csv", false,
                                      [&](std::size_t at, std::size_t) {
                                          seen = at;
                                          return at < 2;
                                      });
    REQUIRE_FALSE(done);
    CHECK(seen == 2);
    CHECK(done.error().kind == FaultKind::notPossible);
    CHECK(desk->revision() == revision);
    CHECK(entries() == 1);
}

TEST_CASE_METHOD(Notes, "many impossible rows are told one by one", "[notes]") {
    std::string text = "date,litres\n";
    for (int i = 0; i < 300; ++i)
        text += isoDay(day(2025, 6, 2) + std::chrono::days(i / 2)) + (i % 2 ? ",900\n" : ",0.5\n");
    const auto done = take("sample", text);
    REQUIRE(done);
    CHECK(done->taken == 150);
    CHECK(done->rejected.size() == 150);
}

TEST_CASE_METHOD(Notes, "every row of a tasting that is refused is told", "[notes]") {
    const auto done = take("sitting", "date,taster,TA1 cold\n"
                                      "2027-01-01,Rook,6\n" // to come
                                      "2025-09-01,Rook,6\n"
                                      "2027-01-01,Wren,5\n"
                                      "2027-01-01,Teal,4\n");
    REQUIRE(done);
    CHECK(done->rows == 4);
    CHECK(done->taken == 1);
    REQUIRE(done->rejected.size() == 3);
    for (const auto& [at, line] : {std::pair{0U, 2U}, {1U, 4U}, {2U, 5U}}) {
        CHECK(done->rejected[at].line == line);
        CHECK(done->rejected[at].why == done->rejected[0].why);
    }
}

TEST_CASE_METHOD(Notes, "what a form cannot know is asked", "[notes]") {
    CHECK(take("reading", "date,ph\n02.03.2025,3.41\n").error().path == "/dates");
    CHECK(take("draw_off", "date,litres\n2025-09-01,\"1,250\"\n").error().path == "/decimal");
}
