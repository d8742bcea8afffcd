// SPDX-License-Identifier: GPL-3.0-or-later
// A decision belongs to its refill: until it goes in, the cycle runs on as it was.
#include "desk/support.h"

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::vessel;
using namespace staveline::testing;

namespace {

struct DecisionFixture : DeskFixture {
    DecisionFixture() {
        now = day(2025, 12, 29);
        addPlover(); // every 240 days since 1 June 2025: due on 27 January
    }
    [[nodiscard]] AdviceJob job() const {
        auto job = desk->adviceJob({"Plover", {}, {}, false});
        REQUIRE(job);
        return *job;
    }
    ChoiceFact adopt(const std::function<void(Setting&)>& change) {
        const AdviceJob asked = job();
        Setting setting = asked.input.base;
        change(setting);
        const auto trial = TryBoard(asked.input).trial(setting, TrialDepth::next);
        REQUIRE(trial);
        auto choice = desk->adopt(asked, *trial);
        REQUIRE(choice);
        return choice->choice;
    }
    void drawAndRefill(const std::string& on, double litres) {
        const std::string at = R"(", "vessel": "Plover", "on": ")" + on + R"(", "volume_l": )" + std::to_string(litres);
        record(R"([{"kind": "draw_off)" + at + R"(}, {"kind": "refill)" + at + "}]");
    }
    [[nodiscard]] Schedule dates() const { return desk->vessel("Plover")->dates; }
};

} // namespace

TEST_CASE_METHOD(DecisionFixture, "a chosen interval counts from the refill it was chosen for", "[desk][decision]") {
    const Schedule before = dates();
    REQUIRE(before.draw == day(2026, 1, 27));
    const auto choice = adopt([](Setting& setting) { setting.interval = Days{120}; });
    CHECK(dates().draw == before.draw);
    CHECK(dates().sampleDue == before.sampleDue);
    CHECK(dates().brew == before.brew);
    CHECK(dates().nextDraw == before.draw + std::chrono::days{120});
    CHECK(desk->vessel("Plover")->due.inDays >= -1);
    CHECK(choice.forecast->thisDraw == dates().draw);
    CHECK(choice.forecast->nextDraw == dates().nextDraw);
    CHECK(job().input.toThisDraw.d == 29);
    now = day(2026, 1, 27);
    drawAndRefill("2026-01-27", 79);
    now = day(2026, 2, 1);
    CHECK(dates().draw == day(2026, 1, 27) + std::chrono::days{120});
}

TEST_CASE_METHOD(DecisionFixture, "a longer interval does not put off the draw that is due", "[desk][decision]") {
    adopt([](Setting& setting) { setting.interval = Days{360}; });
    CHECK(dates().draw == day(2026, 1, 27));
    CHECK(dates().nextDraw == day(2026, 1, 27) + std::chrono::days{360});
}

TEST_CASE_METHOD(DecisionFixture, "chosen litres are those of the coming draw", "[desk][decision]") {
    adopt([](Setting& setting) { setting.draw = Litres{95}; });
    CHECK(desk->setting("Plover")->draw.l == 95);
    CHECK(desk->drawDay("Plover")->plannedDraw.l == 95);
    CHECK(job().input.base.draw.l != 95);
}

TEST_CASE_METHOD(DecisionFixture, "what was chosen for a refill goes on until another choice", "[desk][decision]") {
    adopt([](Setting& setting) {
        setting.interval = Days{120};
        setting.recipe.bitterness = Ibu{14};
    });
    CHECK(desk->planned("Plover")->from == PlannedRecipe::From::choice);
    now = day(2026, 1, 27);
    drawAndRefill("2026-01-27", 79);
    now = day(2026, 2, 1);
    const auto planned = desk->planned("Plover");
    CHECK(planned->from == PlannedRecipe::From::lastRefill);
    CHECK(planned->setting.recipe.bitterness.ibu == 14);
    CHECK(planned->moves.empty());
    CHECK(job().input.base == planned->setting);
    CHECK_FALSE(job().open);
}

TEST_CASE_METHOD(DecisionFixture, "choosing twice is choosing once", "[desk][decision]") {
    const auto choose = [&] {
        const AdviceJob asked = job();
        const auto advice = advise(asked.input);
        REQUIRE(advice);
        REQUIRE_FALSE(advice->proposals.empty());
        const auto choice = desk->choose(asked, *advice, 1);
        REQUIRE(choice);
        return choice->choice;
    };
    record(R"([{"kind": "target", "vessel": "Plover", "on": "2025-12-01", "acidity": 3, "funk": 4, "body": 4},
               {"kind": "sitting", "vessel": "Plover", "on": "2025-12-20", "scores": [
                {"taster": "Rook", "attribute": "TA1", "cold": 7, "cellar": 7},
                {"taster": "Teal", "attribute": "TA1", "cold": 7, "cellar": 7}]}])");
    const AdviceJob before = job();
    const ChoiceFact first = choose();
    const AdviceJob after = job();
    const Schedule once = dates();
    REQUIRE(after.open);
    CHECK(after.input.base == before.input.base);
    CHECK(after.input.toThisDraw == before.input.toThisDraw);
    CHECK(after.input.volumeAtDraw == before.input.volumeAtDraw);
    CHECK(after.inUse.recipe == first.forecast->recipe);
    const ChoiceFact second = choose();
    CHECK(second == first);
    CHECK(job().input.base == before.input.base);
    CHECK(dates().draw == once.draw);
    CHECK(dates().nextDraw == once.nextDraw);
    CHECK(desk->planned("Plover")->moves == first.forecast->moves);
}
