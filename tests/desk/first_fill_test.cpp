// SPDX-License-Identifier: GPL-3.0-or-later
// An empty vessel: what to brew now, how much, on which kit; and the dates after it is filled.
#include "desk/support.h"

#include <algorithm>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::testing;

namespace {

struct EmptyVessel : DeskFixture {
    EmptyVessel() {
        now = day(2026, 11, 29);
        record(R"({"kind": "vessel", "name": "Knot", "shape": "cask", "capacity_l": 100, "interval_d": 240})");
    }
    void addKit(double kettle = 200, double fermenter = 150) {
        record(R"({"kind": "equipment", "on": "2026-11-01", "name": "Barn kit", "mash_tun_l": 150, "kettle_l": )" +
               std::to_string(kettle) + R"(, "fermenter_l": )" + std::to_string(fermenter) + "}");
    }
    void brewIt(Day on) {
        record(R"({"kind": "brew", "name": "Brew 1", "vessel": "Knot", "on": ")" + isoDay(on) +
               R"(", "original_gravity_p": 12, "grist": [{"grain": "pilsner", "share": 1}],
                 "mash": [{"temperature_c": 66, "minutes": 60}], "yeast": "ale_clean", "into_fermenter_l": 110})");
    }
    [[nodiscard]] std::vector<std::string> notes() const {
        std::vector<std::string> said;
        const auto plan = desk->brewPlan("Knot");
        REQUIRE(plan);
        for (const Message& note : plan->assumptions)
            said.push_back(render(note));
        return said;
    }
    [[nodiscard]] bool said(const std::string& words) const {
        const auto all = notes();
        return std::any_of(all.begin(), all.end(), [&](const auto& note) { return note.find(words) != note.npos; });
    }
    [[nodiscard]] std::string sheet() const { return staveline::sheet::writeMarkdown(*desk->brewSheet("Knot")); }
};

} // namespace

TEST_CASE("An empty vessel is to be filled: brew today, fill when it is ready, then the first tasting and draw") {
    EmptyVessel at;
    const auto knot = at.desk->vessel("Knot");
    REQUIRE(knot);
    CHECK(knot->toFill);
    CHECK(render(knot->headline) == "empty: fill it");
    CHECK(knot->due.kind == vessel::DueKind::brew);
    CHECK(knot->dates.brew == at.now);
    CHECK(knot->dates.draw == day(2026, 12, 13));
    CHECK(knot->dates.nextDraw == day(2027, 8, 10));
    CHECK(knot->dates.nextSample == day(2027, 7, 11));
}

TEST_CASE("Once its beer is brewed, the fill has a day, and is late when that has passed") {
    EmptyVessel at;
    at.brewIt(day(2026, 11, 20));
    CHECK(render(at.desk->vessel("Knot")->headline) == "empty: fill in 5 days");
    CHECK(at.desk->vessel("Knot")->due.kind == vessel::DueKind::refill);
    at.now = day(2026, 12, 4);
    CHECK(render(at.desk->vessel("Knot")->headline) == "empty: fill it today");
    at.now = day(2026, 12, 7);
    CHECK(render(at.desk->vessel("Knot")->headline) == "empty: fill overdue 3 days");
    CHECK(at.desk->brewsToPour("Knot")->front().forThisRefill);
}

TEST_CASE("After the first fill the cycle runs from it") {
    EmptyVessel at;
    at.brewIt(day(2026, 11, 10));
    at.record(R"({"kind": "refill", "vessel": "Knot", "on": "2026-11-28", "volume_l": 95, "brew": "Brew 1"})");
    const auto knot = at.desk->vessel("Knot");
    CHECK_FALSE(knot->toFill);
    CHECK(knot->dates.draw == day(2027, 7, 26));
    CHECK(knot->due.kind == vessel::DueKind::taste);
    CHECK(render(at.desk->ledger("Knot")->lines.front().text) == "first fill of 95.0 L from Brew 1");
    CHECK(at.desk->adviceJob({"Knot", {}, {}, false}));
}

TEST_CASE("A first fill leaves headspace, and the plan counts the losses on top") {
    EmptyVessel at;
    at.addKit();
    const auto plan = at.desk->brewPlan("Knot");
    REQUIRE(plan);
    CHECK(plan->intoVessel.l == Approx(95));
    CHECK(plan->intoFermenter > plan->intoVessel);
    CHECK(at.said("First fill: 95.0 L on 13 Dec 2026."));
    CHECK_FALSE(at.said("No kit is described"));
}

TEST_CASE("What is not known of a first fill is said: no kit, no culture") {
    EmptyVessel at;
    CHECK(at.said("No kit is described"));
    CHECK(at.said("No culture is recorded"));
    at.addKit();
    at.record(R"({"kind": "culture", "vessel": "Knot", "on": "2026-11-20", "name": "House blend"})");
    CHECK_FALSE(at.said("No kit is described"));
    CHECK(at.said("House blend goes in with the beer"));
}

TEST_CASE("A kit too small for the vessel says how many brews fill it, one too large what is left over") {
    EmptyVessel small;
    small.addKit(60, 50);
    CHECK(small.said("brews fill the vessel"));
    EmptyVessel large;
    large.record(R"({"kind": "equipment", "on": "2026-11-01", "name": "Barn kit", "mash_tun_l": 300, "kettle_l": 400,
                     "fermenter_l": 300, "brew_length_l": 250})");
    CHECK(large.said("The kit always brews 250.0 L"));
    EmptyVessel fits;
    fits.addKit();
    CHECK_FALSE(fits.said("brews fill the vessel"));
    CHECK_FALSE(fits.said("always brews"));
}

TEST_CASE("The brew sheet of a first fill tells no tasting and no draw before it") {
    EmptyVessel at;
    at.addKit();
    const std::string sheet = at.sheet();
    CHECK(sheet.find("First fill of an empty vessel") != sheet.npos);
    CHECK(sheet.find("Take a sample") == sheet.npos);
    CHECK(sheet.find("Draw and refill") == sheet.npos);
    CHECK(sheet.find("| Fill the vessel | 13 Dec 2026 |") != sheet.npos);
    CHECK(sheet.find("| First draw | 10 Aug 2027 |") != sheet.npos);
    CHECK(sheet.find("| Filled | 95.0 L |") != sheet.npos);
    CHECK(sheet.find("Taste once more") == sheet.npos);
    CHECK(sheet.find("of oxygen") == sheet.npos); // no air follows a draw
}

TEST_CASE("Advice on an empty vessel is not possible: it says why and what to brew instead") {
    EmptyVessel at;
    const auto job = at.desk->adviceJob({"Knot", {}, {}, false});
    REQUIRE_FALSE(job);
    CHECK(job.error().kind == FaultKind::notPossible);
    CHECK(render(job.error().cause) == "Knot is empty: there is no beer to taste or to change.");
    CHECK(render(job.error().remedy) ==
          "Brew 95.0 L for it now and fill it on 13 Dec 2026, or record a takeover if it holds beer.");
    at.brewIt(day(2026, 11, 20));
    CHECK(render(at.desk->adviceJob({"Knot", {}, {}, false}).error().remedy).starts_with("Fill it with 95.0 L on"));
}

TEST_CASE("A vessel that was emptied is filled again like a new one, to what it held before") {
    EmptyVessel at;
    at.record(R"([{"kind": "refill", "vessel": "Knot", "on": "2026-01-10", "volume_l": 92},
                  {"kind": "dip", "vessel": "Knot", "on": "2026-11-25", "volume_l": 0}])");
    const auto knot = at.desk->vessel("Knot");
    CHECK(knot->toFill);
    CHECK(render(knot->headline) == "empty: fill it");
    CHECK(at.desk->brewPlan("Knot")->intoVessel.l == Approx(92));
    CHECK(at.sheet().find("Draw ") == std::string::npos);
}

TEST_CASE("A vessel drawn to the last litre is in its cycle: its refill is due, not a first fill") {
    EmptyVessel at;
    at.record(R"([{"kind": "refill", "vessel": "Knot", "on": "2026-01-10", "volume_l": 92},
                  {"kind": "dip", "vessel": "Knot", "on": "2026-11-25", "volume_l": 90},
                  {"kind": "draw_off", "vessel": "Knot", "on": "2026-11-28", "volume_l": 90}])");
    CHECK_FALSE(at.desk->vessel("Knot")->toFill);
    CHECK(at.desk->vessel("Knot")->works.draw.done);
    CHECK(at.desk->vessel("Knot")->due.kind == vessel::DueKind::brew);
}

TEST_CASE("The recipe edited for a first fill becomes the vessel's usual one") {
    EmptyVessel at;
    auto planned = at.desk->planned("Knot");
    REQUIRE(planned);
    CHECK(planned->firstFill);
    CHECK(planned->setting.draw.l == 0);
    planned->setting.recipe.originalGravity = Plato{13};
    REQUIRE(at.desk->revise("Knot", planned->setting));
    CHECK(at.desk->planned("Knot")->usual);
    CHECK(at.desk->brewPlan("Knot")->originalGravity.p == Approx(13));
}

TEST_CASE("A brew for a first fill is told against its plan, and promises nothing") {
    EmptyVessel at;
    at.addKit();
    facts::BrewFact brew;
    brew.name = "Brew 1";
    brew.vessel = "Knot";
    brew.on = at.now;
    brew.recipe = at.desk->planned("Knot")->setting.recipe;
    brew.intoFermenter = Litres{60};
    const auto meaning = at.desk->meaning(brew);
    REQUIRE(meaning);
    CHECK(meaning->firstFill);
    REQUIRE(meaning->words.size() == 1);
    CHECK(meaning->words.front().key == "desk.brewed.short.first");
    brew.intoFermenter.reset();
    CHECK(at.desk->meaning(brew)->words.front().key == "desk.brewed.first_as_planned");
}

TEST_CASE("A new vessel with what is said of it is one thing to undo, named as the vessel") {
    DeskFixture at;
    at.record(R"([{"kind": "vessel", "name": "Knot", "capacity_l": 100},
                  {"kind": "equipment", "on": "2026-03-01", "name": "Barn kit"},
                  {"kind": "culture", "vessel": "Knot", "on": "2026-03-01", "brettanomyces": "young"}])");
    CHECK(at.desk->undoText() == "add vessel Knot");
    at.record(R"([{"kind": "vessel", "name": "Wren", "capacity_l": 100},
                  {"kind": "culture", "vessel": "Knot", "on": "2026-03-02", "brettanomyces": "none"}])");
    CHECK(at.desk->undoText() == "2 entries");
}

TEST_CASE("A kit that brews for another vessel alone is none for this one") {
    EmptyVessel at;
    at.record(R"([{"kind": "vessel", "name": "Wren", "capacity_l": 100},
                  {"kind": "equipment", "vessel": "Wren", "on": "2026-11-01", "name": "Wren's kit"}])");
    CHECK(at.said("No kit is described"));
    at.record(R"({"kind": "equipment", "vessel": "Knot", "on": "2026-11-01", "name": "Knot's kit"})");
    CHECK_FALSE(at.said("No kit is described"));
}
