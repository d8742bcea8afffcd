// SPDX-License-Identifier: GPL-3.0-or-later
// The first hour with a new book: each step is told by what is recorded, and the book says when it is no longer new.
#include "desk/first_steps.h"

#include "desk/support.h"
#include "facts/sample.h"

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::testing;

namespace {

struct NewBook : DeskFixture {
    [[nodiscard]] FirstSteps steps(const std::string& vessel = "Plover") const { return *desk->firstSteps(vessel); }
    /// Records it and expects that this step is then taken, and only this one.
    void takes(FirstStep step, const std::string& json) {
        const FirstSteps before = steps();
        CHECK_FALSE(before.isDone(step));
        record(json);
        for (const FirstStep each : firstStepsInOrder)
            CHECK(steps().isDone(each) == (before.isDone(each) || each == step));
    }
};

constexpr const char* aVessel = R"({"kind": "vessel", "name": "Plover", "capacity_l": 225, "material": "oak used"})";
constexpr const char* aTakeover = R"({"kind": "opening", "vessel": "Plover", "on": "2026-02-01", "volume_l": 216})";
constexpr const char* aRecipe = R"({"kind": "base_recipe", "vessel": "Plover", "on": "2026-02-01",
    "grist": [{"grain": "pilsner", "share": 1}], "mash": [{"temperature_c": 66, "minutes": 60}]})";
constexpr const char* aTarget = R"({"kind": "target", "vessel": "Plover", "on": "2026-02-01", "acidity": 4.5, "funk": 4,
    "body": 4})";
constexpr const char* aSitting = R"({"kind": "sitting", "vessel": "Plover", "on": "2026-02-20", "scores": [
    {"taster": "Rook", "attribute": "TA1", "cold": 8, "cellar": 8}]})";

} // namespace

TEST_CASE_METHOD(NewBook, "an empty book has everything before it", "[desk][firststeps]") {
    CHECK(steps("").next() == FirstStep::vessel);
    CHECK_FALSE(steps("").begun);
    CHECK(steps("Nobody").next() == FirstStep::vessel);
}

TEST_CASE_METHOD(NewBook, "each step is ticked by its own fact, in any order", "[desk][firststeps]") {
    takes(FirstStep::vessel, aVessel);
    CHECK(steps().next() == FirstStep::beer);
    takes(FirstStep::character, aTarget);
    takes(FirstStep::recipe, aRecipe);
    takes(FirstStep::beer, aTakeover);
    CHECK(steps().next() == FirstStep::kit);
    takes(FirstStep::tasting, aSitting);
    CHECK_FALSE(steps().begun);
    facts::EquipmentFact kit = desk->kit();
    kit.equipment.name = "Shed kit";
    REQUIRE(desk->record(kit));
    CHECK_FALSE(steps().next());
    CHECK(steps().begun);
}

TEST_CASE_METHOD(NewBook, "a brew for the vessel tells its recipe, a refill that there is beer", "[desk][firststeps]") {
    record(aVessel);
    takes(FirstStep::recipe, R"({"kind": "brew", "name": "Brew 1", "vessel": "Plover", "on": "2026-02-01",
        "original_gravity_p": 12, "bitterness_ibu": 12, "grist": [{"grain": "pilsner", "share": 1}],
        "mash": [{"temperature_c": 66, "minutes": 60}], "yeast": "ale_clean"})");
    takes(FirstStep::beer, R"({"kind": "refill", "vessel": "Plover", "on": "2026-02-20", "volume_l": 200,
        "brew": "Brew 1"})");
}

TEST_CASE_METHOD(NewBook, "undo takes the tick back", "[desk][firststeps]") {
    record(aVessel);
    record(aTarget);
    CHECK(steps().isDone(FirstStep::character));
    REQUIRE(desk->undo());
    CHECK_FALSE(steps().isDone(FirstStep::character));
}

TEST_CASE_METHOD(NewBook, "a book whose beer was drawn is not new, whatever was left out", "[desk][firststeps]") {
    record(aVessel);
    record(aTakeover);
    CHECK_FALSE(steps().begun);
    record(R"({"kind": "draw_off", "vessel": "Plover", "on": "2026-02-25", "volume_l": 40})");
    CHECK(steps().begun);
    CHECK(steps("").begun);
}

TEST_CASE_METHOD(NewBook, "the sample cellar is not new", "[desk][firststeps]") {
    REQUIRE(desk->record(*facts::sampleCellar(now)));
    CHECK(steps("").begun);
}
