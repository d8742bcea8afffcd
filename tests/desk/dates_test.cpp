// SPDX-License-Identifier: GPL-3.0-or-later
// The days of a cycle: what the ledger, the brewer and a fault say of them, and one answer wherever they are asked for.
#include "desk/brew_days.h"
#include "desk/draw_day.h"
#include "desk/moved_work.h"
#include "desk/support.h"
#include "quantity/day_limits.h"

#include <nlohmann/json.hpp>

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::vessel;
using namespace staveline::testing;

namespace {

struct DatesFixture : DeskFixture {
    DatesFixture() {
        now = day(2025, 12, 29);
        addPlover(); // every 240 days since 1 June 2025: due on 27 January
    }
    [[nodiscard]] VesselSummary plover() const {
        auto summary = desk->vessel("Plover");
        REQUIRE(summary);
        return *summary;
    }
    [[nodiscard]] Schedule dates() const { return plover().dates; }
    Result<Recorded> setDraw(std::optional<Day> on) { return desk->record(DrawDateFact{"Plover", now, on, {}}); }
    Result<Recorded> setWork(Work work, std::optional<Day> on) {
        return desk->record(WorkDateFact{"Plover", now, work, on, {}});
    }
    void tasteRopy() {
        record(R"({"kind": "sitting", "vessel": "Plover", "on": ")" + isoDay(now) + R"(",
                   "faults": [{"fault": "ropy", "severity": 3}]})");
    }
};

VesselSummary toBrew(const std::string& name, Day brew, double draw, double refill) {
    VesselSummary made;
    made.name = name;
    made.opened = true;
    made.dates.brew = brew;
    made.due.kind = DueKind::brew;
    made.draw = Litres{draw};
    made.refill = Litres{refill};
    return made;
}

} // namespace

TEST_CASE_METHOD(DatesFixture, "a draw is put off or brought forward in one act that can be taken back",
                 "[desk][dates]") {
    const Schedule before = dates();
    REQUIRE(before.draw == day(2026, 1, 27));
    for (const Day set : {day(2026, 3, 10), day(2026, 1, 15)}) {
        REQUIRE(setDraw(set));
        CHECK(dates().draw == set);
        CHECK(dates().nextDraw == set + std::chrono::days{240});
        CHECK(desk->adviceJob({"Plover", {}, {}, false})->dates.draw == set);
        CHECK(desk->undoText() == "day of the draw of Plover");
        REQUIRE(desk->undo());
        CHECK(dates().draw == before.draw);
    }
    REQUIRE(setDraw(day(2026, 3, 10)));
    REQUIRE(setDraw({})); // by the interval again
    CHECK(dates().draw == before.draw);
}

TEST_CASE_METHOD(DatesFixture, "the day that was set belongs to its cycle", "[desk][dates]") {
    REQUIRE(setDraw(day(2026, 1, 10)));
    now = day(2026, 1, 10);
    record(R"([{"kind": "draw_off", "vessel": "Plover", "on": "2026-01-10", "volume_l": 79},
               {"kind": "refill", "vessel": "Plover", "on": "2026-01-10", "volume_l": 80}])");
    now = day(2026, 2, 1);
    CHECK(dates().draw == day(2026, 1, 10) + std::chrono::days{240});
}

TEST_CASE_METHOD(DatesFixture, "a day that is past cannot be set", "[desk][dates]") {
    const auto refused = setDraw(day(2025, 12, 1));
    REQUIRE_FALSE(refused);
    CHECK(refused.error().path == "/draw_on");
}

TEST_CASE_METHOD(DatesFixture, "how often a vessel is drawn can be changed after a plan was adopted", "[desk][dates]") {
    now = day(2026, 1, 20);
    adopt([](Setting& setting) {
        setting.interval = Days{120};
        setting.temperature = Celsius{13};
        setting.draw = Litres{60};
    });
    now = day(2026, 1, 27);
    record(R"([{"kind": "draw_off", "vessel": "Plover", "on": "2026-01-27", "volume_l": 60},
               {"kind": "refill", "vessel": "Plover", "on": "2026-01-27", "volume_l": 60}])");
    now = day(2026, 2, 1);
    REQUIRE(dates().draw == day(2026, 1, 27) + std::chrono::days{120});
    record(R"({"kind": "vessel_edit", "vessel": "Plover", "interval_d": 240})");
    CHECK(dates().draw == day(2026, 1, 27) + std::chrono::days{240});
    CHECK(desk->setting("Plover")->temperature.c == 13);
    CHECK(desk->setting("Plover")->draw.l == 60);
    REQUIRE(desk->undo());
    CHECK(dates().draw == day(2026, 1, 27) + std::chrono::days{120});
    record(R"({"kind": "vessel_edit", "vessel": "Plover", "temperature_c": 18, "draw_share": 0.4})");
    CHECK(desk->setting("Plover")->temperature.c == 18);
    CHECK(desk->setting("Plover")->draw.l == Approx(90));
    adopt([](Setting& setting) { setting.draw = Litres{70}; }); // a choice made later counts again
    CHECK(desk->setting("Plover")->draw.l == 70);
}

TEST_CASE_METHOD(DatesFixture, "a fault moves the plan to the day it is looked at again, and no further",
                 "[desk][dates]") {
    tasteRopy();
    const Day again = day(2025, 12, 29) + std::chrono::days{90};
    for (const int later : {0, 10, 40}) {
        now = day(2025, 12, 29) + std::chrono::days{later};
        CHECK(dates().sample == again);
        CHECK(dates().brew == again);
        CHECK(dates().draw == again + std::chrono::days{14});
        CHECK(plover().due.kind == DueKind::taste);
        CHECK(desk->estimates("Plover")->verdicts[Dimension::acidity].until == again);
    }
    now = again + std::chrono::days{3};
    CHECK(plover().due.inDays == -3);
}

TEST_CASE_METHOD(DatesFixture, "the sheet of a vessel with a fault says so, and when to look again", "[desk][dates]") {
    tasteRopy();
    const auto paper = desk->brewSheet("Plover", {});
    REQUIRE(paper);
    const std::string text = sheet::writeMarkdown(*paper);
    CHECK(text.find("ropy") != std::string::npos);
    CHECK(text.find("29 Mar 2026") != std::string::npos);
}

TEST_CASE_METHOD(DatesFixture, "a tasting is put off or brought forward, and the draw stays", "[desk][dates]") {
    const Schedule before = dates();
    REQUIRE(before.sample == day(2025, 12, 29)); // thirty days before the draw is past
    const Day later = day(2026, 1, 12);
    REQUIRE(setWork(Work::taste, later));
    CHECK(dates().sample == later);
    CHECK(dates().draw == before.draw);
    CHECK(plover().due.kind == DueKind::taste);
    CHECK(plover().due.inDays == 14);
    CHECK(plover().works.sample.set);
    CHECK(desk->undoText() == "day of the tasting of Plover");
    now = later + std::chrono::days{2};
    CHECK(plover().due.inDays == -2);
    now = day(2025, 12, 29);
    REQUIRE(setWork(Work::taste, {}));
    CHECK(dates().sample == before.sample);
    CHECK_FALSE(plover().works.sample.set);
}

TEST_CASE_METHOD(DatesFixture, "a brew that is put off takes the draw along, one brought forward does not",
                 "[desk][dates]") {
    const Schedule before = dates();
    REQUIRE(before.brew == day(2026, 1, 13)); // two weeks of primary
    const Day late = day(2026, 2, 1);
    REQUIRE(setWork(Work::brew, late));
    CHECK(dates().brew == late);
    CHECK(dates().draw == late + std::chrono::days{14});
    CHECK(plover().works.brew.set);
    now = day(2026, 1, 30); // not overdue: it was put off
    CHECK(dates().drawDue == late + std::chrono::days{14});
    now = day(2025, 12, 29);
    REQUIRE(setWork(Work::brew, day(2026, 1, 3)));
    CHECK(dates().brew == day(2026, 1, 3));
    CHECK(dates().draw == before.draw);
}

TEST_CASE_METHOD(DatesFixture, "who has tasted and sets a later day is asked to taste once more", "[desk][dates]") {
    record(R"({"kind": "sitting", "vessel": "Plover", "on": "2025-12-29",
               "scores": [{"taster": "Rook", "attribute": "TA1", "cold": 6}]})");
    REQUIRE(plover().due.kind == DueKind::brew);
    REQUIRE(setWork(Work::taste, day(2026, 1, 5)));
    CHECK(plover().due.kind == DueKind::taste);
    CHECK(dates().sample == day(2026, 1, 5));
    now = day(2026, 1, 5);
    record(R"({"kind": "sitting", "vessel": "Plover", "on": "2026-01-05",
               "scores": [{"taster": "Rook", "attribute": "TA1", "cold": 6}]})");
    CHECK(plover().due.kind == DueKind::brew);
}

TEST_CASE("brews that lie close are one day's work, on the first of their days", "[desk][dates]") {
    std::vector<VesselSummary> cellar{
        toBrew("Plover", day(2026, 3, 20), 79, 85), toBrew("Knot", day(2026, 3, 10), 300, 320),
        toBrew("Heron", day(2026, 3, 25), 60, 60), toBrew("Dunlin", day(2026, 6, 1), 20, 20),
        toBrew("Rail", day(2026, 6, 16), 20, 20)};
    auto days = brewDays(cellar);
    REQUIRE(days.size() == 1); // Heron's is fifteen days after Knot's, Rail's after Dunlin's
    CHECK(days[0].on == day(2026, 3, 10));
    CHECK(days[0].shares ==
          std::vector<BrewShare>{{"Knot", Litres{320}, Litres{300}}, {"Plover", Litres{85}, Litres{79}}});
    CHECK(days[0].takes().l == Approx(405));
    const auto moves = brewOn(days[0], cellar, day(2026, 3, 1));
    REQUIRE(moves.size() == 1); // Knot's is on that day
    CHECK(moves[0] == movedWork("Plover", DueKind::brew, day(2026, 3, 1), day(2026, 3, 10)));
    cellar[0].works.brew.done = true;
    CHECK(brewDays(cellar).empty());
    cellar[0].works.brew.done = false;
    cellar[0].retired = true;
    CHECK(brewDays(cellar).empty());
    CHECK(brewDays({}).empty());
}

TEST_CASE("of a vessel that is drawn or empty no draw is left to choose", "[desk][dates]") {
    std::vector<VesselSummary> cellar{toBrew("Knot", day(2026, 3, 10), 300, 320),
                                      toBrew("Plover", day(2026, 3, 12), 79, 85),
                                      toBrew("Rail", day(2026, 3, 14), 0, 28.5)};
    cellar[1].works.draw.done = true;
    cellar[2].toFill = true;
    const auto days = brewDays(cellar);
    REQUIRE(days.size() == 1);
    CHECK(days[0].shares == std::vector<BrewShare>{{"Knot", Litres{320}, Litres{300}},
                                                   {"Plover", Litres{85}, {}},
                                                   {"Rail", Litres{28.5}, {}}});
}

TEST_CASE_METHOD(DatesFixture, "a vessel takes its draw and what evaporated, an empty one its first fill",
                 "[desk][dates]") {
    const VesselSummary before = plover();
    REQUIRE(before.dates.draw > now);
    // 225 L, of which 4 % a year evaporate: full again after the draw
    const double held = before.now.volume.l - 9 / daysPerYear * daysBetween(now, before.dates.draw);
    const double filled = before.now.lastRefill ? before.now.lastFilled.l : 225;
    CHECK(before.refill.l == Approx(filled - held + before.draw.l));
    record(R"({"kind": "draw_off", "vessel": "Plover", "on": ")" + isoDay(now) + R"(", "volume_l": 100})");
    const double gap = 9 / daysPerYear * daysBetween(now, plover().dates.draw);
    CHECK(plover().refill.l == Approx(filled - plover().now.volume.l + gap)); // whatever was planned
    facts::VesselFact rail = plover().facts;
    rail.name = "Rail";
    rail.capacity = Litres{30};
    REQUIRE(desk->record(rail));
    const VesselSummary empty = *desk->vessel("Rail");
    REQUIRE(empty.toFill);
    CHECK(empty.draw.l == 0);
    CHECK(empty.refill.l > 25);
    CHECK(empty.refill.l < 30);
    const auto cellar = desk->cellar();
    REQUIRE(cellar);
    for (const VesselSummary& listed : *cellar) // worked out without the states after each entry
        CHECK(listed.refill.l == Approx(desk->vessel(listed.name)->refill.l));
}

TEST_CASE("a brew of a fixed length is shared out, and no litre is lost", "[desk][dates]") {
    const BrewDay day{
        testing::day(2026, 3, 10),
        {{"Knot", Litres{310}, Litres{300}}, {"Plover", Litres{80}, Litres{75}}, {"Rail", Litres{30}, {}}}};
    const SharedOut ample = shareOut(day, Litres{440});
    CHECK(ample.shares == day.shares);
    CHECK(ample.left.l == Approx(20));
    CHECK(ample.missing.l == 0);
    const SharedOut scarce = shareOut(day, Litres{270}); // 150 short, of the 375 that are drawn
    CHECK(scarce.drawingLess);
    CHECK(scarce.missing.l == Approx(150));
    CHECK(scarce.shares[0].draw->l == Approx(180));
    CHECK(scarce.shares[0].takes.l == Approx(190)); // what evaporated is made good all the same
    CHECK(scarce.shares[1].draw->l == Approx(45));
    CHECK(scarce.shares[2] == day.shares[2]);
    for (const double given : {45.0, 100.0, 419.9, 420.0, 1000.0}) {
        const SharedOut shared = shareOut(day, Litres{given});
        Litres poured{0};
        for (const BrewShare& share : shared.shares)
            poured += share.takes;
        CHECK(poured.l + shared.left.l == Approx(given));
        CHECK(poured.l + shared.missing.l == Approx(day.takes().l));
    }
    const SharedOut never = shareOut(day, Litres{40}); // 45 L are missing before anything is drawn
    CHECK_FALSE(never.drawingLess);
    CHECK(never.shares == day.shares);
    CHECK(never.missing.l == Approx(380));
}

TEST_CASE("the words of a brew day count what the kit loses", "[desk][dates]") {
    const BrewDay day{testing::day(2026, 3, 10), {{"Knot", Litres{310}, Litres{300}}, {"Rail", Litres{30}, {}}}};
    facts::EquipmentFact kit;
    kit.equipment.fermenterLoss = Share{.05};
    kit.equipment.transferLoss = Litres{3};
    const std::string first = "10 Mar 2026: one brew day, 310.0 L into Knot and 30.0 L into Rail: 340.0 L in all.";
    CHECK(brewDayWords(day, kit) == first);
    kit.brewLength = Litres{200};
    CHECK(brewDayWords(day, kit) ==
          first + " A brew of 200.0 L gives 187.0 L, 153.0 L short: draw less, 147.0 L from Knot.");
    kit.brewLength = Litres{400};
    CHECK(brewDayWords(day, kit) == first + " A brew of 400.0 L gives 377.0 L: 37.0 L over, for topping up.");
    kit.brewLength = Litres{20};
    CHECK(brewDayWords(day, kit) ==
          first +
              " A brew of 20.0 L gives 16.0 L, 324.0 L short whatever is drawn: brew more than once, or fill later.");
}

TEST_CASE_METHOD(DatesFixture, "work that is done or past cannot be set", "[desk][dates]") {
    const auto past = setWork(Work::brew, day(2025, 12, 1));
    REQUIRE_FALSE(past);
    CHECK(past.error().path == "/due_on");
    record(R"({"kind": "brew", "name": "Brew 1", "vessel": "Plover", "on": "2025-12-20",
               "grist": [{"grain": "pilsner", "share": 1}], "mash": [{"temperature_c": 66, "minutes": 60}],
               "into_fermenter_l": 90})");
    const auto brewed = setWork(Work::brew, day(2026, 1, 20));
    REQUIRE_FALSE(brewed);
    CHECK(brewed.error().path == "/what");
    CHECK(render(brewed.error().cause) ==
          "Brew 1 was made for this refill on 20 Dec 2025: there is no brew to put off.");
}

TEST_CASE_METHOD(DatesFixture, "days set for work belong to their cycle", "[desk][dates]") {
    REQUIRE(setWork(Work::taste, day(2026, 1, 5)));
    REQUIRE(setWork(Work::brew, day(2026, 1, 5)));
    now = day(2026, 1, 10);
    record(R"([{"kind": "draw_off", "vessel": "Plover", "on": "2026-01-10", "volume_l": 79},
               {"kind": "refill", "vessel": "Plover", "on": "2026-01-10", "volume_l": 80}])");
    now = day(2026, 2, 1);
    CHECK(dates().draw == day(2026, 1, 10) + std::chrono::days{240});
    CHECK(dates().sample == dates().draw - std::chrono::days{30});
    CHECK(dates().brew == dates().draw - std::chrono::days{14});
}

TEST_CASE_METHOD(DatesFixture, "a late brew is late on the rail, and its day slides", "[desk][dates]") {
    record(R"({"kind": "sitting", "vessel": "Plover", "on": "2025-12-29",
               "scores": [{"taster": "Rook", "attribute": "TA1", "cold": 6}]})");
    now = day(2026, 1, 20);
    CHECK(plover().due.kind == DueKind::brew);
    CHECK(plover().due.inDays == -7);
    CHECK(render(plover().due.text) == "brew overdue 7 days");
    CHECK(dates().brew == now);
}

TEST_CASE_METHOD(DatesFixture, "after a draw the refill is due at once, wherever it is told", "[desk][dates]") {
    record(R"({"kind": "brew", "name": "Brew 1", "vessel": "Plover", "on": "2025-12-10",
               "grist": [{"grain": "pilsner", "share": 1}], "mash": [{"temperature_c": 66, "minutes": 60}],
               "into_fermenter_l": 90})");
    record(R"({"kind": "draw_off", "vessel": "Plover", "on": "2025-12-29", "volume_l": 79})");
    CHECK(setDraw(day(2026, 2, 1)).error().path == "/draw_on"); // it is done: nothing to put off
    CHECK(dates().draw == now);
    CHECK(plover().due.kind == DueKind::refill);
    CHECK(plover().due.on == now);
    now = day(2026, 1, 1);
    CHECK(render(plover().due.text) == "refill overdue 3 days");
}

TEST_CASE_METHOD(DatesFixture, "a draw without a brew asks for the brew first, and the refill waits for it",
                 "[desk][dates]") {
    record(R"({"kind": "draw_off", "vessel": "Plover", "on": "2025-12-29", "volume_l": 79})");
    CHECK(plover().due.kind == DueKind::brew);
    CHECK(plover().due.on == dates().brewDue);
    CHECK(plover().works.draw.done);
    CHECK(dates().brew == now);
    CHECK(dates().draw == now + std::chrono::days{14});
}

TEST_CASE_METHOD(DatesFixture, "the sheet under a fault says at its head not to brew by it yet", "[desk][dates]") {
    tasteRopy();
    const auto paper = desk->brewSheet("Plover", {});
    REQUIRE(paper);
    const auto* first = std::get_if<sheet::Caution>(&paper->blocks.front());
    REQUIRE(first);
    CHECK(first->text ==
          "Do not brew by this sheet yet. Look again on 29 Mar 2026: only if the fault is gone does this "
          "plan hold.");
}

TEST_CASE_METHOD(DatesFixture, "a sheet that is not brewed yet is named by what it is for", "[desk][dates]") {
    const auto named = [&] {
        const auto paper = desk->brewSheet("Plover", {});
        REQUIRE(paper);
        return std::get<sheet::Table>(paper->blocks.front()).rows[0][0];
    };
    CHECK(named() == "Refill of Plover, 27 Jan 2026");
    record(R"({"kind": "brew", "name": "Brew 7", "vessel": "Plover", "on": "2025-12-20",
               "grist": [{"grain": "pilsner", "share": 1}], "mash": [{"temperature_c": 66, "minutes": 60}]})");
    CHECK(named() == "Brew 7");
}

TEST_CASE_METHOD(DatesFixture, "on the last day of the calendar nothing is planned beyond it", "[desk][dates][bad]") {
    now = lastDay;
    for (const Day day : {dates().sample, dates().brew, dates().draw, dates().nextSample, dates().nextDraw})
        CHECK(day <= lastDay);
}

TEST_CASE_METHOD(DatesFixture, "what is due first is the core's word, a vessel to fill among it", "[desk][dates]") {
    CHECK((*desk->firstDue())->name == "Plover");
    now = day(2025, 11, 1); // nothing of Plover is due for weeks
    record(R"({"kind": "vessel", "name": "Knot", "capacity_l": 100})");
    const auto first = desk->firstDue();
    REQUIRE((first && *first));
    CHECK((*first)->name == "Knot");
    CHECK((*first)->toFill);
    CHECK_FALSE(*DeskFixture().desk->firstDue());
}

TEST_CASE_METHOD(DatesFixture, "a capacity below what is held is refused, and what was set can be cleared",
                 "[desk][dates]") {
    const auto change = [&](const std::string& json) {
        return desk->record(*parseRecords(R"({"kind": "vessel_edit", "vessel": "Plover", )" + json + "}"));
    };
    const auto small = change(R"("capacity_l": 100)");
    REQUIRE_FALSE(small);
    CHECK(small.error().path == "/capacity_l");
    REQUIRE(change(R"("evaporation_per_year": 0.01, "oxygen_mg_l_year": 5, "culture_held_back": 0.2)"));
    REQUIRE(change(R"("clear": ["evaporation_per_year", "culture_held_back"])"));
    const VesselFact facts = plover().facts;
    CHECK_FALSE(facts.evaporationPerYear);
    CHECK_FALSE(facts.cultureHeldBack);
    CHECK(facts.oxygenPerYear == 5);
    REQUIRE(change(R"("clear": ["oxygen_mg_l_year"])"));
    CHECK_FALSE(plover().facts.oxygenPerYear);
    CHECK(change(R"("clear": ["capacity_l"])").error().path == "/clear/0");
    CHECK(change(R"("oxygen_mg_l_year": 5, "clear": ["oxygen_mg_l_year"])").error().path == "/clear/0");
}
