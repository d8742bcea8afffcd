// SPDX-License-Identifier: GPL-3.0-or-later
// A plan is spent by the refill that went in by it, also when all of it happens on one day.
#include "desk/support.h"
#include "sheet/document.h"

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::testing;

namespace {

struct SpentPlan : DeskFixture {
    SpentPlan() {
        now = day(2026, 1, 27); // the day its draw is due
        addPlover();
    }
    void drawAndRefill(const std::string& more = {}) {
        const std::string of = std::string(R"(", "vessel": "Plover", "on": ")") + isoDay(now) + R"(", "volume_l": 79)";
        record(R"([{"kind": "draw_off)" + of + R"(}, {"kind": "refill)" + of + more + "}]");
    }
    [[nodiscard]] PlannedRecipe::From from() const { return desk->planned("Plover")->from; }
    [[nodiscard]] double bitterness() const { return desk->setting("Plover")->recipe.bitterness.ibu; }
};

void bitter(Setting& setting) {
    setting.recipe.bitterness = Ibu{30};
}

} // namespace

TEST_CASE_METHOD(SpentPlan, "decided, drawn and refilled on one day: nothing is decided for the refill after it",
                 "[desk][decision]") {
    adopt(bitter);
    REQUIRE(from() == PlannedRecipe::From::choice);
    drawAndRefill();
    CHECK(from() == PlannedRecipe::From::lastRefill);
    CHECK_FALSE(desk->adviceJob({"Plover", {}, {}, false})->open);
    CHECK_FALSE(desk->drawDay("Plover")->choice);
}

TEST_CASE_METHOD(SpentPlan, "what is decided after the refill of the same day is for the next one",
                 "[desk][decision]") {
    adopt(bitter);
    drawAndRefill();
    adopt([](Setting& setting) { setting.recipe.bitterness = Ibu{5}; });
    CHECK(from() == PlannedRecipe::From::choice);
    CHECK(bitterness() == 5);
    Setting edited = *desk->setting("Plover");
    edited.recipe.bitterness = Ibu{6};
    REQUIRE(desk->revise("Plover", edited));
    CHECK(bitterness() == 6);
    REQUIRE(desk->undo());
    REQUIRE(desk->undo());
    CHECK(from() == PlannedRecipe::From::lastRefill); // the first one is as it was
    CHECK(bitterness() == 30);
    CHECK(desk->history("Plover")->promises.size() == 1);
}

TEST_CASE_METHOD(SpentPlan, "a recipe edited after the refill leaves the promise it went in by", "[desk][decision]") {
    adopt(bitter);
    drawAndRefill();
    Setting edited = *desk->setting("Plover");
    edited.recipe.bitterness = Ibu{6};
    REQUIRE(desk->revise("Plover", edited));
    CHECK(desk->history("Plover")->promises.size() == 2);
    CHECK(bitterness() == 6);
}

TEST_CASE_METHOD(SpentPlan, "a refill without a brew on record went in by the plan made for it", "[desk][decision]") {
    int books = 0;
    const auto bitternessNow = [&](const std::function<void()>& refill) {
        desk = *Desk::create(scratch / (std::to_string(++books) + ".cellar"), [this] { return now; });
        addPlover();
        refill();
        return desk->adviceJob({"Plover", {}, {}, false})->input.state.beer.isoTrans;
    };
    const double usual = bitternessNow([&] { drawAndRefill(); });
    const double planned = bitternessNow([&] {
        adopt(bitter);
        drawAndRefill();
    });
    const double brewed = bitternessNow([&] {
        const auto choice = adopt(bitter);
        BrewFact brew;
        brew.name = "Brew 1";
        brew.vessel = "Plover";
        brew.on = now;
        brew.recipe = choice.forecast->recipe;
        REQUIRE(desk->record(Fact{brew}));
        drawAndRefill(R"(, "brew": "Brew 1")");
    });
    CHECK(planned == Approx(brewed).epsilon(1e-9));
    CHECK(planned > 1.5 * usual);
}
