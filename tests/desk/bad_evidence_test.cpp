// SPDX-License-Identifier: GPL-3.0-or-later
// Facts that say too little, or what cannot be: the answer says what is missing and steers by what is left.
#include "desk/plain_answer.h"

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::testing;
using tasting::VerdictKind;

TEST_CASE_METHOD(YearsFixture, "no target: an ordinary one is worked with, and that is said", "[desk][plain][bad]") {
    taste(cycle(0, 210), 8, 4, 4);
    const Answer answer = answerOf(*desk, {"Knot", {}, {}});
    keepsItsWord(answer);
    CHECK(answer.says("No target is set"));
    record(R"({"kind": "target", "vessel": "Knot", "on": "2020-01-01", "acidity": 5, "funk": 4, "body": 4})");
    CHECK_FALSE(answerOf(*desk, {"Knot", {}, {}}).says("No target is set"));
}

TEST_CASE_METHOD(YearsFixture, "nothing known but that there is beer in it", "[desk][plain][bad]") {
    record(R"([{"kind": "vessel", "name": "Twite", "capacity_l": 30},
               {"kind": "opening", "vessel": "Twite", "on": "2020-01-01", "volume_l": 20}])");
    now = cycle(0, 100);
    const Answer answer = answerOf(*desk, {"Twite", {}, {}});
    keepsItsWord(answer);
    CHECK(answer.leavesAlone());
    CHECK(answer.says("This vessel was never tasted: taste first."));
}

TEST_CASE_METHOD(PlainFixture, "one taster, once: a plan, and whether one more would change it", "[desk][plain][bad]") {
    tasted(6.5, 2.5, 4, {"Wren"});
    const Answer answer = asked();
    CHECK((answer.advice.tasting.dimension.has_value() || !answer.leavesAlone()));
    for (Dimension d : allDimensions)
        CHECK(render(answer.advice.verdicts[d].reason).find("±") != std::string::npos);
}

TEST_CASE_METHOD(PlainFixture, "tasters six points apart: their mean says little, and that is said",
                 "[desk][plain][bad]") {
    const std::string low = sittingJson("Knot", tastingDay(), 2, 4, 4, {"Rook"});
    const std::string high = sittingJson("Knot", tastingDay(), 8, 4, 4, {"Wren"});
    const auto scores = [](const std::string& sitting) {
        const auto from = sitting.find('[') + 1;
        return sitting.substr(from, sitting.rfind(']') - from);
    };
    now = tastingDay();
    record(low.substr(0, low.rfind(']')) + ", " + scores(high) + "]}");
    const Answer answer = asked();
    CHECK(answer.says("The tasters are 6.0 points apart on acidity"));
    const double apart = answer.advice.now[acidity].sd;
    REQUIRE(desk->undo());
    record(low.substr(0, low.rfind(']')) + ", " + scores(sittingJson("Knot", tastingDay(), 2, 4, 4, {"Wren"})) + "]}");
    CHECK(apart > 1.3 * asked().advice.now[acidity].sd);
    CHECK_FALSE(answer.says("apart on funk"));
}

TEST_CASE_METHOD(PlainFixture, "a sitting from before the vessel was taken over is refused", "[desk][plain][bad]") {
    now = tastingDay();
    const Fault fault = refused(sittingJson("Knot", day(2019, 12, 1), 7, 4, 4, fourTasters));
    CHECK(render(fault.cause).find("before the vessel was taken over") != std::string::npos);
    CHECK_FALSE(render(fault.remedy).empty());
    CHECK(asked().says("taste first"));
}

TEST_CASE_METHOD(PlainFixture, "locks that contradict each other or the target", "[desk][plain][bad]") {
    tasted(7, 2, 4);
    SECTION("the same lever twice: the last one holds") {
        CHECK(asked({{"sugar", 0.0}, {"sugar", 10.0}}).advice.leaveAlone.setting.recipe.sugarShare.of1 ==
              Approx(.1).margin(1e-9));
    }
    SECTION("above the ceiling of the target") {
        const Answer answer = asked({{"bitterness", 20.0}});
        CHECK(answer.advice.leaveAlone.setting.recipe.bitterness.ibu == 20);
        CHECK(answer.says("20 IBU, above the ceiling of 15 IBU"));
    }
    SECTION("late grain without a rest to be late for") {
        const auto job = desk->adviceJob({"Knot", {{"ferulic_rest", 0.0}, {"late_unmalted", "after rest"}}, {}});
        REQUIRE(job);
        if (const auto advice = advise(job->input); advice)
            keepsItsWord({*job, *advice});
        else
            CHECK_FALSE(render(advice.error().remedy).empty());
    }
    SECTION("all that there is") {
        std::vector<LeverLock> all;
        const auto job = desk->adviceJob({"Knot", {}, {}});
        for (const auto& row : builtInLevers())
            all.push_back({row.id, leverValue(job->input.base, row.id, *job->pantry)});
        const Answer answer = asked(all);
        CHECK(answer.leavesAlone());
        CHECK(answer.says("Nothing that can be brewed is better than leaving it alone."));
        CHECK(answer.says("The lock on"));
    }
}

TEST_CASE_METHOD(PlainFixture, "an event on the day of a sitting comes after it", "[desk][plain][bad]") {
    years(5, 4, 4, 2);
    taste(cycle(2, 210), 5, 2, 4);
    const Answer before = asked();
    record(fmt::format(R"({{"kind": "event", "vessel": "Knot", "on": "{}", "what": "racked"}})", isoDay(now)));
    const Answer after = asked();
    CHECK(after.advice.now[funk].mean == Approx(before.advice.now[funk].mean).margin(1e-9));
    CHECK(after.advice.now[funk].sd > before.advice.now[funk].sd + .3);
}

TEST_CASE_METHOD(PlainFixture, "two hundred sittings in a month are one table's word", "[desk][plain][bad]") {
    std::vector<facts::Fact> sittings;
    for (int i = 0; i < 200; ++i)
        sittings.push_back(
            facts::parseRecords(noted(sittingJson("Knot", cycle(0, 181 + i % 30), 7, 4, 4, {"Wren"}), i))->front());
    now = tastingDay();
    REQUIRE(desk->record(sittings));
    const Answer answer = asked();
    CHECK(answer.advice.now[acidity].sd > .2);
    CHECK(answer.ways().size() <= 2);
}

TEST_CASE_METHOD(PlainFixture, "acid that no vessel has is asked back, and steers nothing", "[desk][plain][bad]") {
    tasted(5, 4, 4);
    const Answer before = asked();
    titrate(tastingDay(), .5);
    const Answer after = asked();
    CHECK(after.says("A titration of 0.50 g/L on 29 Jul 2020: no running vessel has that."));
    CHECK(after.advice.now == before.advice.now);
    CHECK(after.ways() == before.ways());
    target(9, 4, 4);
    REQUIRE(asked().anyWay().contains("more of the refill soured beforehand"));
    titrate(tastingDay(), 40); // sour enough, were it true
    CHECK(asked().anyWay().contains("more of the refill soured beforehand"));
}

TEST_CASE_METHOD(PlainFixture, "a titration and a pH that cannot both be true are asked back", "[desk][plain][bad]") {
    tasted(5, 4, 4);
    record(fmt::format(R"({{"kind": "reading", "vessel": "Knot", "on": "{}", "ta_g_l": 12, "ph": 3.9}})",
                       isoDay(tastingDay())));
    CHECK(asked().says("titration and pH cannot both be true"));
}
