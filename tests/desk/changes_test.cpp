// SPDX-License-Identifier: GPL-3.0-or-later
// What changes is told against the refill in the vessel, by name, with the old and the new value.
#include "desk/support.h"

#include <algorithm>

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::sheet;
using namespace staveline::testing;

namespace {

struct ChangesFixture : DeskFixture {
    ChangesFixture() {
        addPlover();
        record(R"({"kind": "base_recipe", "vessel": "Plover", "on": "2025-06-01", "original_gravity_p": 12,
                   "bitterness_ibu": 10, "grist": [{"grain": "pilsner", "share": 0.6},
                   {"grain": "wheat_malt", "share": 0.4}], "mash": [{"temperature_c": 66, "minutes": 60}],
                   "yeast": "ale_clean"})");
    }
    void revise(const std::function<void(Setting&)>& change) {
        Setting setting = *desk->setting("Plover");
        change(setting);
        const auto done = desk->revise("Plover", setting);
        if (!done)
            FAIL(render(done.error().cause));
    }
    void adoptHotterMash() {
        const auto job = desk->adviceJob({"Plover", {}, {}, false});
        REQUIRE(job);
        const auto trial = TryBoard(job->input).trial({{"sacch_temperature", 70.0}}, TrialDepth::next);
        REQUIRE(trial);
        REQUIRE(desk->adopt(*job, trial->setting));
    }
    [[nodiscard]] std::string moves() const {
        const auto planned = desk->planned("Plover");
        REQUIRE(planned);
        std::string all;
        for (const auto& move : planned->moves)
            all += move + "\n";
        return all;
    }
    [[nodiscard]] std::string sheet() const {
        const auto sheet = desk->brewSheet("Plover");
        REQUIRE(sheet);
        return writeText(*sheet);
    }
};

bool has(const std::string& text, const std::string& part) {

    if (text.find(part) == std::string::npos)
        UNSCOPED_INFO(text);
    return text.find(part) != std::string::npos;
}

} // namespace

TEST_CASE_METHOD(ChangesFixture, "a touch of the plan does not hide what was adopted", "[desk][changes]") {
    adoptHotterMash();
    REQUIRE(has(moves(), "70"));
    revise([](Setting& setting) {
        setting.recipe.grist[0].share = Share{.55};
        setting.recipe.grist[1].share = Share{.45};
    });
    revise([](Setting& setting) {
        setting.recipe.grist[0].share = Share{.6};
        setting.recipe.grist[1].share = Share{.4};
    });
    CHECK(has(moves(), "70 \u00b0C for 45 min instead of 66 \u00b0C"));
    CHECK(has(sheet(), "instead of 66 "));
    CHECK_FALSE(has(sheet(), "nothing is changed"));
}

TEST_CASE_METHOD(ChangesFixture, "what no lever moves is told too", "[desk][changes]") {
    revise([](Setting& setting) {
        setting.recipe.grist = {{"pilsner", Share{.75}, false}, {"wheat_malt", Share{.25}, false}};
        setting.recipe.boil = Minutes{90};
        setting.recipe.hops = {{"leaf", Share{.04}, Minutes{45}, Share{1}}};
        setting.recipe.mash.push_back({Celsius{72}, Minutes{10}});
    });
    CHECK(has(moves(), ": 75 % of the grist instead of 60 %"));
    CHECK(has(moves(), ": 25 % of the grist instead of 40 %"));
    CHECK(has(moves(), "Boiled for 90 min instead of 60 min"));
    CHECK(has(moves(), "Hops: leaf (4 % alpha acids) boiled for 45 min"));
    CHECK(has(moves(), "72 \u00b0C for 10 min; instead of: 66 \u00b0C for 60 min"));
    CHECK(has(sheet(), "75 % of the grist instead of 60 %"));
}

TEST_CASE_METHOD(ChangesFixture, "a change is told once", "[desk][changes]") {
    revise([](Setting& setting) {
        setting.recipe.bitterness = Ibu{14};
        setting.recipe.mash[0].temperature = Celsius{64};
        setting.draw = Litres{90};
    });
    CHECK(desk->planned("Plover")->moves.size() == 3);
}

TEST_CASE_METHOD(ChangesFixture, "an edit is for this refill; the usual recipe is made by name", "[desk][changes]") {
    adoptHotterMash();
    revise([](Setting& setting) { setting.recipe.bitterness = Ibu{14}; });
    CHECK(desk->planned("Plover")->from == PlannedRecipe::From::choice);
    CHECK_FALSE(desk->planned("Plover")->usual);
    CHECK(desk->drawDay("Plover")->choice);
    record(R"([{"kind": "draw_off", "vessel": "Plover", "on": "2026-03-01", "volume_l": 79}])");
    REQUIRE(desk->record(Fact{BaseRecipeFact{"Plover", now, desk->setting("Plover")->recipe}}));
    const auto planned = desk->planned("Plover");
    CHECK(planned->usual);
    CHECK(planned->from == PlannedRecipe::From::choice);
    CHECK(has(moves(), "70 "));
    CHECK(has(moves(), "14"));
}

TEST_CASE_METHOD(ChangesFixture, "after the refill nothing is changed until something is", "[desk][changes]") {
    adoptHotterMash();
    now = day(2026, 3, 3);
    record(R"([{"kind": "draw_off", "vessel": "Plover", "on": "2026-03-03", "volume_l": 70},
               {"kind": "refill", "vessel": "Plover", "on": "2026-03-03", "volume_l": 70}])");
    CHECK(moves().empty());
    CHECK(has(sheet(), "As the last refill; nothing is changed."));
    now = day(2026, 9, 1);
    revise([](Setting& setting) { setting.recipe.mash[0].temperature = Celsius{66}; });
    CHECK(has(moves(), "66 \u00b0C for 45 min instead of 70 \u00b0C"));
    CHECK(desk->planned("Plover")->moves.size() == 1);
}

TEST_CASE_METHOD(ChangesFixture, "the draw that was taken is no change of plan", "[desk][changes]") {
    record(R"({"kind": "draw_off", "vessel": "Plover", "on": "2026-03-01", "volume_l": 60})");
    CHECK(moves().empty());
    revise([](Setting& setting) { setting.recipe.bitterness = Ibu{14}; });
    CHECK(desk->planned("Plover")->moves.size() == 1);
}

TEST_CASE_METHOD(DeskFixture, "the recipe of a vessel that was never filled is its first usual one",
                 "[desk][changes]") {
    record(R"({"kind": "vessel", "name": "Knot", "capacity_l": 50})");
    Setting setting = *desk->setting("Knot");
    setting.recipe.bitterness = Ibu{14};
    REQUIRE(desk->revise("Knot", setting));
    CHECK(desk->planned("Knot")->from == PlannedRecipe::From::baseRecipe);
    CHECK(desk->planned("Knot")->moves.empty());
}
