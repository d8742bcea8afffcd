// SPDX-License-Identifier: GPL-3.0-or-later
// A decision belongs to its refill: until it goes in, the cycle runs on as it was.
#include "desk/support.h"
#include "facts/kept_words.h"

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
    std::vector<std::string> told;
    for (const auto& move : first.forecast->moves)
        told.push_back(facts::toldWords(move));
    CHECK(desk->planned("Plover")->moves == told);
}

TEST_CASE_METHOD(DecisionFixture, "the empty plan is leaving it alone, to the last digit", "[desk][decision]") {
    record(R"([{"kind": "target", "vessel": "Plover", "on": "2025-12-01", "acidity": 4, "funk": 4, "body": 4},
               {"kind": "sitting", "vessel": "Plover", "on": "2025-12-20", "scores": [
                {"taster": "Rook", "attribute": "TA1", "cold": 7, "cellar": 7}]}])");
    const auto same = [&] {
        const auto left = desk->leftAlone("Plover");
        REQUIRE(left);
        const auto predicted = desk->predict("Plover", *parseSetting("{}", *left));
        const auto advice = desk->advise({"Plover", {}, {}, true});
        REQUIRE(predicted);
        REQUIRE(advice);
        CHECK(*left == advice->leaveAlone.setting);
        for (Dimension d : allDimensions) {
            CHECK(predicted->loss[d] == Approx(advice->leaveAlone.loss[d]).margin(1e-9));
            for (auto [one, other] : {std::pair(predicted->thisDraw[d], advice->leaveAlone.thisDraw[d]),
                                      std::pair(predicted->next[d], advice->leaveAlone.next[d]),
                                      std::pair(predicted->settled[d], advice->leaveAlone.settled[d])}) {
                CHECK(one.value == Approx(other.value).margin(1e-9));
                CHECK(one.low == Approx(other.low).margin(1e-9));
                CHECK(one.high == Approx(other.high).margin(1e-9));
            }
        }
    };
    same();
    adopt([](Setting& setting) { setting.recipe.bitterness = Ibu{14}; }); // a plan, not what goes on without one
    same();
    record(R"({"kind": "lock", "vessel": "Plover", "on": "2025-12-21", "lever": "mash_ph", "value": 5.3})");
    same();
}

TEST_CASE_METHOD(DecisionFixture, "what a vessel is known to taste beside the model is in the prediction of any plan",
                 "[desk][decision]") {
    const Setting setting = job().input.base;
    const auto before = desk->predict("Plover", setting);
    record(R"({"kind": "sitting", "vessel": "Plover", "on": "2025-12-20", "scores": [
               {"taster": "Rook", "attribute": "TA1", "cold": 9, "cellar": 9},
               {"taster": "Teal", "attribute": "TA1", "cold": 9, "cellar": 9}]})");
    const auto after = desk->predict("Plover", setting);
    REQUIRE(before);
    REQUIRE(after);
    CHECK(after->next[Dimension::acidity].value > before->next[Dimension::acidity].value + .5);
    CHECK(after->nextBeer.ta.gPerL > before->nextBeer.ta.gPerL);
    CHECK(after->next[Dimension::acidity].low < after->next[Dimension::acidity].value);
}

TEST_CASE_METHOD(DecisionFixture,
                 "leaving alone is the last refill as it was brewed, the usual recipe stands beside it",
                 "[desk][decision]") {
    Setting usual = job().input.base;
    CHECK_FALSE(job().input.usual); // none on record
    REQUIRE(desk->record(Fact{BaseRecipeFact{"Plover", day(2025, 12, 1), usual.recipe}}));
    brewing::Recipe brewed = usual.recipe;
    brewed.bitterness = Ibu{13};
    now = day(2026, 2, 1);
    REQUIRE(desk->record(Fact{BrewFact{"Brew 7", "Plover", day(2026, 1, 5), brewed, {}, {}, {}, {}}}));
    record(R"([{"kind": "draw_off", "vessel": "Plover", "on": "2026-01-27", "volume_l": 79},
               {"kind": "refill", "vessel": "Plover", "on": "2026-01-27", "volume_l": 79, "brew": "Brew 7"}])");
    CHECK(job().input.base.recipe == brewed);
    REQUIRE(job().input.usual);
    CHECK(job().input.usual->recipe == usual.recipe);
    const auto advice = desk->advise({"Plover", {}, {}, false});
    REQUIRE(advice);
    CHECK(advice->leaveAlone.setting.recipe.bitterness.ibu == 13);
    REQUIRE(advice->usual);
    CHECK(advice->usual->setting.recipe.bitterness == usual.recipe.bitterness);
}

TEST_CASE_METHOD(DecisionFixture, "what was soured beforehand for one refill is in none after it", "[desk][decision]") {
    adopt([](Setting& setting) {
        setting.recipe.preSoured = Share{.3};
        setting.recipe.bitterness = Ibu{14};
    });
    CHECK(desk->setting("Plover")->recipe.preSoured.of1 == Approx(.3));
    CHECK(job().input.base.recipe.preSoured.of1 == 0);
    now = day(2026, 1, 27);
    drawAndRefill("2026-01-27", 79);
    now = day(2026, 2, 1);
    CHECK(desk->setting("Plover")->recipe.preSoured.of1 == 0);
    CHECK(desk->setting("Plover")->recipe.bitterness.ibu == 14);
    CHECK(job().input.base.recipe.preSoured.of1 == 0);
    CHECK(desk->planned("Plover")->moves.size() == 1); // taken back
}

TEST_CASE_METHOD(DecisionFixture, "as many levers as the brewer allows", "[desk][decision]") {
    const auto most = [&](std::optional<int> levers) {
        AdviceRequest request{"Plover", {}, {}, false};
        request.maxMoved = levers;
        return desk->adviceJob(request)->input.maxMoved;
    };
    CHECK(most({}) == 2);
    CHECK(most(1) == 1);
    CHECK(most(4) == 4);
    CHECK(most(9) == 4);
    CHECK(most(-1) == 1);
}

TEST_CASE_METHOD(DecisionFixture, "a usual recipe written anew is the plan for the coming refill", "[desk][decision]") {
    brewing::Recipe recipe = job().input.base.recipe;
    REQUIRE(desk->record(Fact{BaseRecipeFact{"Plover", day(2025, 6, 1), recipe}}));
    CHECK_FALSE(job().open);
    recipe.bitterness = Ibu{13};
    REQUIRE(desk->record(Fact{BaseRecipeFact{"Plover", day(2025, 12, 20), recipe}}));
    const AdviceJob asked = job();
    CHECK(asked.input.base.recipe.bitterness.ibu != 13); // leaving alone is still the last refill
    CHECK(asked.inUse.recipe.bitterness.ibu == 13);
    REQUIRE(asked.open);
    REQUIRE(asked.open->size() == 1);
    CHECK(asked.open->front().lever == "bitterness");
}
