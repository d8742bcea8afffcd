// SPDX-License-Identifier: GPL-3.0-or-later
// The desk as window and command line use it: recording, refusing, undoing, looking.
#include "desk/stock.h"
#include "desk/support.h"

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::tasting;
using namespace staveline::vessel;
using namespace staveline::testing;

TEST_CASE_METHOD(DeskFixture, "an opened vessel has a level, an age and dates", "[desk]") {
    addPlover();
    auto vessel = desk->vessel("Plover");
    REQUIRE(vessel);
    CHECK(vessel->opened);
    CHECK(vessel->now.volume.l < 216);
    CHECK(vessel->now.volume.l > 205);
    CHECK(vessel->now.meanAge.d == Approx(1.5 * 365.25 + daysBetween(day(2025, 6, 1), now)).margin(1));
    // opened 274 days ago with an interval of 240: tasting was due 64 days ago
    CHECK(vessel->due.kind == DueKind::taste);
    CHECK(vessel->due.inDays == -64);
    CHECK(render(vessel->due.text) == "tasting overdue 64 days");
}

namespace {
struct Refused {
    const char* json;
    const char* path;
    const char* cause; ///< key; empty: any
};
} // namespace

TEST_CASE_METHOD(DeskFixture, "impossible facts are refused at their field and leave no trace", "[desk][bad]") {
    addPlover();
    const auto bad = GENERATE(values<Refused>({
        {R"({"kind": "draw_off", "vessel": "Plover", "on": "2026-01-01", "volume_l": 500})", "/volume_l",
         "desk.more_than_held"},
        {R"({"kind": "draw_off", "vessel": "Plover", "on": "2025-01-01", "volume_l": 5})", "/on",
         "desk.before_opening"},
        {R"({"kind": "dip", "vessel": "Plover", "on": "2027-01-01", "volume_l": 5})", "/on", "desk.future"},
        {R"({"kind": "dip", "vessel": "Plover", "on": "2026-01-01", "volume_l": 400})", "/volume_l",
         "desk.above_capacity"},
        {R"({"kind": "opening", "vessel": "Plover", "on": "2026-01-01", "volume_l": 5})", "/on", "desk.opened_twice"},
        {R"({"kind": "dip", "vessel": "Plver", "on": "2026-01-01", "volume_l": 5})", "/vessel", "desk.unknown_vessel"},
        {R"({"kind": "refill", "vessel": "Plover", "on": "2026-01-01", "volume_l": 100})", "/volume_l",
         "desk.does_not_fit"},
        {R"({"kind": "refill", "vessel": "Plover", "on": "2026-01-01", "volume_l": 5, "brew": "B"})", "/brew",
         "desk.unknown_brew"},
        {R"({"kind": "refill", "vessel": "Plover", "on": "2026-01-01", "volume_l": 5, "from": "Plover"})", "/from",
         "desk.from_itself"},
        {R"({"kind": "vessel", "name": "Plover", "capacity_l": 50})", "/name", "desk.name_taken"},
        {R"({"kind": "availability", "on": "2026-01-01", "item": "moonmalt"})", "/item", ""},
        {R"({"kind": "target", "vessel": "Plover", "on": "2026-01-01", "gravity_low_p": 15, "gravity_high_p": 12})",
         "/gravity_low_p", "desk.low_above_high"},
        {R"({"kind": "lock", "vessel": "Plover", "on": "2026-01-01", "lever": "draw"})", "/value",
         "desk.lock_without_value"},
    }));
    const Fault fault = refused(bad.json);
    CHECK(fault.path == bad.path);
    if (*bad.cause)
        CHECK(fault.cause.key == bad.cause);
    CHECK(render(fault.remedy).size() > 4);
    CHECK(desk->ledger("Plover")->lines.size() == 1);
}

TEST_CASE_METHOD(DeskFixture, "impossible recipes are refused at their field", "[desk][bad]") {
    addPlover();
    const auto recipe = [&](const std::string& grist, const std::string& mash) {
        return refused(R"({"kind": "base_recipe", "vessel": "Plover", "on": "2026-01-01", "grist": )" + grist +
                       R"(, "mash": )" + mash + "}");
    };
    const std::string pilsner = R"([{"grain": "pilsner", "share": 1}])";
    const std::string mash = R"([{"temperature_c": 66, "minutes": 60}])";
    CHECK(recipe("[]", mash).path == "/grist");
    CHECK_FALSE(recipe(pilsner, "[]").path.empty());
    CHECK_FALSE(recipe(pilsner, R"([{"temperature_c": 66, "minutes": 60}, {"temperature_c": 50, "minutes": 20}])")
                    .path.empty());
    const Fault unknown = recipe(R"([{"grain": "pilsener", "share": 1}])", mash);
    CHECK(unknown.path == "/grist/0/grain");
    CHECK(render(unknown.remedy).find("pilsner") != std::string::npos);
}

TEST_CASE_METHOD(DeskFixture, "impossible scores are refused at their line", "[desk][bad]") {
    addPlover();
    const auto sitting = [&](const std::string& scores) {
        return refused(R"({"kind": "sitting", "vessel": "Plover", "on": "2026-01-01", "scores": )" + scores + "}");
    };
    CHECK(sitting("[]").path == "/scores");
    CHECK(sitting(R"([{"attribute": "ZZ1", "cold": 5}])").path == "/scores/0/attribute");
    CHECK(sitting(R"([{"attribute": "TA1", "cold": 5.3}])").cause.key == "desk.half_steps");
    CHECK(sitting(R"([{"attribute": "TA1", "cold": 5}, {"attribute": "TA1", "cold": 6}])").path == "/scores/1");
}

TEST_CASE_METHOD(DeskFixture, "one bad entry spoils the batch and is named by its place", "[desk][bad]") {
    addPlover();
    const Fault fault = refused(R"([{"kind": "dip", "vessel": "Plover", "on": "2026-01-01", "volume_l": 200},
        {"kind": "draw_off", "vessel": "Plover", "on": "2026-01-02", "volume_l": 500}])");
    CHECK(fault.path == "/1/volume_l");
    CHECK(desk->ledger("Plover")->lines.size() == 1);
}

TEST_CASE_METHOD(DeskFixture, "later entries of a batch see the earlier ones", "[desk]") {
    addPlover();
    record(R"([{"kind": "draw_off", "vessel": "Plover", "on": "2026-01-01", "volume_l": 80, "lot": "Draw 1"},
               {"kind": "refill", "vessel": "Plover", "on": "2026-01-01", "volume_l": 85}])");
    auto ledger = desk->ledger("Plover");
    REQUIRE(ledger);
    REQUIRE(ledger->lines.size() == 3);
    CHECK(render(ledger->lines[1].text) == "80.0 L drawn for Draw 1");
    CHECK(ledger->lines[2].volumeAfter.l - ledger->lines[1].volumeAfter.l == Approx(85));
    CHECK(ledger->vessel.due.kind == DueKind::taste);
}

TEST_CASE_METHOD(DeskFixture, "undo and redo name what they do and bring everything back", "[desk][undo]") {
    addPlover();
    const double before = desk->vessel("Plover")->now.volume.l;
    record(R"({"kind": "draw_off", "vessel": "Plover", "on": "2026-01-01", "volume_l": 60})");
    CHECK(desk->undoText() == "draw-off of 60.0 L from Plover");
    CHECK(desk->undo());
    CHECK(desk->vessel("Plover")->now.volume.l == before);
    CHECK(desk->redoText() == "draw-off of 60.0 L from Plover");
    CHECK(desk->redo());
    CHECK(desk->vessel("Plover")->now.volume.l < before - 55);
    CHECK(desk->undo());
    CHECK(desk->undo());
    CHECK(desk->cellar()->empty());
    CHECK(desk->undoText().empty());
    CHECK_FALSE(desk->undo());
    CHECK(desk->redo());
    CHECK(desk->redo());
    CHECK(desk->ledger("Plover")->lines.size() == 2);
}

TEST_CASE_METHOD(DeskFixture, "undo survives closing the book", "[desk][undo]") {
    addPlover();
    record(R"({"kind": "draw_off", "vessel": "Plover", "on": "2026-01-01", "volume_l": 60})");
    const auto path = desk->path();
    desk.reset();
    auto again = Desk::open(path, [this] { return now; });
    REQUIRE(again);
    CHECK((*again)->undoText() == "draw-off of 60.0 L from Plover");
    CHECK((*again)->undo());
    CHECK((*again)->ledger("Plover")->lines.size() == 1);
}

TEST_CASE_METHOD(DeskFixture, "entries are amended and removed, audited and undoable", "[desk][amend]") {
    addPlover();
    record(R"({"kind": "draw_off", "vessel": "Plover", "on": "2026-01-01", "volume_l": 60})");
    const LedgerLine line = desk->ledger("Plover")->lines.back();
    auto fact = desk->fact(line.table, line.id);
    REQUIRE(fact);
    auto draw = std::get<DrawOffFact>(*fact);
    draw.volume = Litres{66};
    REQUIRE(desk->amend(line.table, line.id, draw));
    CHECK(render(desk->ledger("Plover")->lines.back().text) == "66.0 L drawn");
    draw.volume = Litres{600};
    CHECK_FALSE(desk->amend(line.table, line.id, draw));
    CHECK(render(desk->ledger("Plover")->lines.back().text) == "66.0 L drawn");
    REQUIRE(desk->remove(line.table, line.id));
    CHECK(desk->ledger("Plover")->lines.size() == 1);
    CHECK(desk->undoText() == "removal of draw-off of 66.0 L from Plover");
    REQUIRE(desk->undo());
    REQUIRE(desk->undo());
    CHECK(render(desk->ledger("Plover")->lines.back().text) == "60.0 L drawn");
}

TEST_CASE_METHOD(DeskFixture, "a vessel is renamed, changed and retired without losing its history", "[desk][vessel]") {
    addPlover();
    record(R"({"kind": "vessel_edit", "vessel": "Plover", "name": "Lapwing", "interval_d": 120})");
    CHECK_FALSE(desk->vessel("Plover"));
    auto vessel = desk->vessel("Lapwing");
    REQUIRE(vessel);
    CHECK(vessel->facts.interval.d == 120);
    CHECK(desk->ledger("Lapwing")->lines.size() == 1);
    record(R"({"kind": "retire", "vessel": "Lapwing", "on": "2026-02-01", "reason": "stave split"})");
    CHECK(desk->vessel("Lapwing")->retired);
    CHECK(desk->undo());
    CHECK(desk->undo());
    CHECK(desk->vessel("Plover")->facts.interval.d == 240);
}

TEST_CASE_METHOD(DeskFixture, "a transfer leaves one vessel and enters the other", "[desk][transfer]") {
    addPlover();
    record(R"([{"kind": "vessel", "name": "Knot", "capacity_l": 50, "material": "steel", "shape": "keg"},
               {"kind": "refill", "vessel": "Knot", "on": "2026-01-05", "volume_l": 40, "from": "Plover"}])");
    auto from = desk->ledger("Plover"), to = desk->ledger("Knot");
    REQUIRE(from);
    REQUIRE(to);
    CHECK(render(from->lines.back().text) == "40.0 L to Knot");
    CHECK(to->lines.back().volumeAfter.l == Approx(40));
    const double lost = from->states[0].volume.l - from->lines.back().volumeAfter.l;
    CHECK(lost == Approx(40).margin(8)); // the rest evaporated
    CHECK(desk->undo());
    CHECK(desk->ledger("Plover")->lines.size() == 1);
}

TEST_CASE_METHOD(DeskFixture, "a preview shows what an entry would do and writes nothing", "[desk][preview]") {
    addPlover();
    const auto revision = desk->revision();
    auto preview = desk->preview(DrawOffFact{"Plover", day(2026, 3, 2), Litres{60}, "", {}, ""});
    REQUIRE(preview);
    CHECK(preview->before.volume.l - preview->after.volume.l == Approx(60));
    CHECK(preview->findings.empty());
    auto tooMuch = desk->preview(DrawOffFact{"Plover", day(2026, 3, 2), Litres{600}, "", {}, ""});
    REQUIRE_FALSE(tooMuch);
    CHECK(tooMuch.error().path == "/volume_l"); // what recording would refuse, a preview refuses too
    CHECK(desk->revision() == revision);
    CHECK(desk->ledger("Plover")->lines.size() == 1);
}

TEST_CASE_METHOD(DeskFixture, "two programs share a book: the later one sees and keeps both edits", "[desk][shared]") {
    addPlover();
    auto other = Desk::open(desk->path(), [this] { return now; });
    REQUIRE(other);
    CHECK((*other)->ledger("Plover")->lines.size() == 1);
    record(R"({"kind": "dip", "vessel": "Plover", "on": "2026-01-01", "volume_l": 210})");
    CHECK((*other)->record(DrawOffFact{"Plover", day(2026, 1, 2), Litres{50}, "", {}, ""}));
    CHECK((*other)->ledger("Plover")->lines.size() == 3);
    CHECK(desk->poll());
    CHECK(desk->ledger("Plover")->lines.size() == 3);
    CHECK_FALSE(desk->poll());
}

TEST_CASE_METHOD(DeskFixture, "observers hear of each change", "[desk]") {
    int heard = 0;
    desk->observe([&] { ++heard; });
    addPlover();
    CHECK(heard == 1);
    CHECK(desk->undo());
    CHECK(heard == 2);
}

TEST_CASE_METHOD(DeskFixture, "ingredients are copied into the book on first use, once", "[desk][pantry]") {
    addPlover();
    const char* recipe = R"({"kind": "base_recipe", "vessel": "Plover", "on": "2026-01-01",
        "grist": [{"grain": "pilsner", "share": 0.75}, {"grain": "wheat_malt", "share": 0.25}],
        "mash": [{"temperature_c": 66, "minutes": 60}], "yeast": "ale_clean"})";
    const auto before = desk->check()->rowsChecked;
    record(recipe);
    const auto first = desk->check()->rowsChecked - before;
    record(recipe);
    CHECK(desk->check()->rowsChecked - before - first < first);
    CHECK(desk->check()->sound());
}

TEST_CASE_METHOD(DeskFixture, "a kit written down late stands by its day, not at the end", "[desk]") {
    record(R"({"kind": "equipment", "on": "2026-02-01", "name": "new kit"})");
    record(R"({"kind": "equipment", "on": "2025-01-01", "name": "old kit"})");
    CHECK(desk->kit().equipment.name == "new kit");
    record(R"([{"kind": "availability", "on": "2026-02-01", "item": "rye_malt", "available": true},
               {"kind": "availability", "on": "2026-01-01", "item": "rye_malt", "available": false}])");
    REQUIRE(desk->stock().size() == 1);
    CHECK(desk->stock()[0].counted.available);
}

TEST_CASE_METHOD(DeskFixture, "a draw takes from what is in when it is made", "[desk][bad]") {
    addPlover();
    record(R"([{"kind": "draw_off", "vessel": "Plover", "on": "2026-01-05", "volume_l": 150},
               {"kind": "refill", "vessel": "Plover", "on": "2026-01-05", "volume_l": 150}])");
    // in a file the day's draws come before its refill: some 60 L were left; what is recorded later comes after it
    CHECK(refused(R"({"kind": "draw_off", "vessel": "Plover", "on": "2026-01-05", "volume_l": 140, "turn": 0})").path ==
          "/volume_l");
    record(R"({"kind": "draw_off", "vessel": "Plover", "on": "2026-01-05", "volume_l": 140})");
    CHECK(desk->vessel("Plover")->findings.empty());
    // a sample is taken before the day's draws, and from a new vessel after its first filling
    record(R"([{"kind": "vessel", "name": "Knot", "capacity_l": 20},
               {"kind": "refill", "vessel": "Knot", "on": "2026-01-05", "volume_l": 19},
               {"kind": "sample", "vessel": "Knot", "on": "2026-01-05", "volume_l": 0.2}])");
}

TEST_CASE_METHOD(DeskFixture, "one day is one day", "[desk]") {
    addPlover();
    now = day(2025, 12, 29); // tasting is due on 28 December
    CHECK(render(desk->vessel("Plover")->due.text) == "tasting overdue 1 day");
    now = day(2025, 12, 27);
    CHECK(render(desk->vessel("Plover")->due.text) == "taste in 1 day");
    now = day(2025, 12, 26);
    CHECK(render(desk->vessel("Plover")->due.text) == "taste in 2 days");
}

TEST_CASE_METHOD(DeskFixture, "an ingredient is copied into the book with a correction or a choice too",
                 "[desk][pantry]") {
    addPlover();
    const auto rowsOf = [&](auto&& edit) {
        const auto before = desk->check()->rowsChecked;
        REQUIRE(edit());
        return desk->check()->rowsChecked - before;
    };
    const auto choose = [&] {
        const auto job = desk->adviceJob({"Plover", {}, {}, false});
        return desk->choose(*job, *advise(job->input), 0).has_value();
    };
    const auto firstChoice = rowsOf(choose);
    CHECK(firstChoice - rowsOf(choose) == 3); // two malts and a yeast
    BaseRecipeFact base{"Plover", day(2026, 1, 1), desk->setting("Plover")->recipe};
    REQUIRE(desk->record(base));
    const auto correct = [&] { return desk->amend("base_recipe", 1, base).has_value(); };
    base.recipe.bitterness = Ibu{9};
    const auto known = rowsOf(correct);
    base.recipe.grist[1].grain = "rye_malt";
    CHECK(rowsOf(correct) - known == 1);
}
