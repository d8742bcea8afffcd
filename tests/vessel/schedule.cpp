// SPDX-License-Identifier: GPL-3.0-or-later
#include "vessel/schedule.h"
#include "ledger_support.h"
#include "quantity/day_limits.h"
#include "support/property.h"

#include <limits>

using namespace staveline;
using namespace staveline::vessel;
using namespace staveline::ledger_tests;

namespace {

LedgerState refilledOn(int day) {
    LedgerState state;
    state.opened = dayAfter(0);
    state.lastRefill = dayAfter(day);
    return state;
}
constexpr ScheduleRule rule{Days{240}, {}, Days{30}, Days{14}, {}, {}};

} // namespace

TEST_CASE("in time, the interval alone decides") {
    const auto dates = schedule(refilledOn(100), rule, dayAfter(150));
    CHECK(dates.draw == dayAfter(340));
    CHECK(dates.sample == dayAfter(310));
    CHECK(dates.brew == dayAfter(326));
    CHECK(dates.nextDraw == dayAfter(580));
    CHECK(dates.nextSample == dayAfter(550));
    CHECK(dates.drawDue == dates.draw);
    CHECK(dates.sampleDue == dates.sample);
}

TEST_CASE("before the first refill the opening counts, before that today") {
    LedgerState state;
    CHECK(schedule(state, rule, dayAfter(7)).draw == dayAfter(247));
    state.opened = dayAfter(3);
    CHECK(schedule(state, rule, dayAfter(7)).draw == dayAfter(243));
}

TEST_CASE("another interval after the draw leaves the draw where it is") {
    ScheduleRule shorter = rule;
    shorter.nextInterval = Days{120};
    const auto dates = schedule(refilledOn(100), shorter, dayAfter(150));
    CHECK(dates.draw == dayAfter(340));
    CHECK(dates.sample == dayAfter(310));
    CHECK(dates.nextDraw == dayAfter(460));
    CHECK(dates.nextSample == dayAfter(430));
}

TEST_CASE("overdue: planned from today on, and still seen to be overdue") {
    const auto dates = schedule(refilledOn(100), rule, dayAfter(400));
    CHECK(dates.drawDue == dayAfter(340));
    CHECK(dates.sampleDue == dayAfter(310));
    CHECK(dates.sample == dayAfter(400));
    CHECK(dates.brew == dayAfter(400));
    CHECK(dates.draw == dayAfter(414)); // the refill must first be brewed
    CHECK(dates.nextDraw == dayAfter(654));
}

TEST_CASE("what was done keeps its day, and a beer that is ready need not be waited for") {
    ScheduleRule done = rule;
    done.sampled = dayAfter(305);
    done.brewed = dayAfter(325);
    const auto dates = schedule(refilledOn(100), done, dayAfter(335));
    CHECK(dates.sample == dayAfter(305));
    CHECK(dates.brew == dayAfter(325));
    CHECK(dates.draw == dayAfter(340));
    CHECK(schedule(refilledOn(100), done, dayAfter(360)).draw == dayAfter(360));
    done.brewed = dayAfter(334); // late: it needs its fortnight
    CHECK(schedule(refilledOn(100), done, dayAfter(335)).draw == dayAfter(348));
}

TEST_CASE("sampling earlier than the interval is long falls on the refill day") {
    const auto dates = schedule(refilledOn(100), {Days{20}, {}, Days{30}, Days{14}, {}, {}}, dayAfter(100));
    CHECK(dates.sampleDue == dayAfter(100));
    CHECK(dates.nextSample == dates.draw);
}

TEST_CASE("a rule that makes no sense still gives dates") {
    constexpr double nan = std::numeric_limits<double>::quiet_NaN(), inf = std::numeric_limits<double>::infinity();
    for (const double days : {nan, inf, -inf, -7.0})
        CHECK(schedule(refilledOn(0), {Days{days}, {}, Days{days}, Days{days}, {}, {}}, dayAfter(50)).draw ==
              dayAfter(50));
}

TEST_CASE("dates come in their order and never before today") {
    CHECK_PROPERTY("ordered", [] {
        const ScheduleRule any{Days{*rc::gen::inRange(10, 800) + 0.0}, {}, Days{*rc::gen::inRange(0, 60) + 0.0},
                               Days{*rc::gen::inRange(0, 40) + 0.0},   {}, {}};
        const Day today = dayAfter(*rc::gen::inRange(0, 2000));
        const auto dates = schedule(refilledOn(*rc::gen::inRange(0, 1000)), any, today);
        RC_ASSERT(dates.sample >= today && dates.brew >= today && dates.draw >= today);
        RC_ASSERT(dates.sample <= std::max(dates.draw, today));
        RC_ASSERT(daysBetween(dates.brew, dates.draw) >= static_cast<int>(any.primary.d));
        RC_ASSERT(dates.draw < dates.nextDraw && dates.draw <= dates.nextSample && dates.nextSample <= dates.nextDraw);
        RC_ASSERT(dates.drawDue <= dates.draw && dates.sampleDue <= dates.sample);
    });
}

TEST_CASE("a draw that is made already sets the dates, early or late", "[schedule]") {
    ScheduleRule drawn = rule;
    drawn.drawn = dayAfter(320);
    const auto dates = schedule(refilledOn(100), drawn, dayAfter(325));
    CHECK(dates.drawDue == dayAfter(320));
    CHECK(dates.sampleDue == dayAfter(290));
    drawn.brewed = dayAfter(300);
    const auto ready = schedule(refilledOn(100), drawn, dayAfter(325));
    CHECK(nextJob(refilledOn(100), drawn, ready).kind == DueKind::refill);
    CHECK(nextJob(refilledOn(100), drawn, ready).on == dayAfter(320));
}

TEST_CASE("a draw made before its beer is brewed waits for that beer, and the next job is to brew it", "[schedule]") {
    ScheduleRule drawn = rule;
    drawn.drawn = dayAfter(320);
    const auto dates = schedule(refilledOn(100), drawn, dayAfter(325));
    CHECK(nextJob(refilledOn(100), drawn, dates).kind == DueKind::brew);
    CHECK(nextJob(refilledOn(100), drawn, dates).on == dates.brewDue);
    CHECK(dates.brew == dayAfter(325));
    CHECK(dates.draw == dates.brew + std::chrono::days{14});
}

TEST_CASE("nothing is planned beyond the calendar of the book", "[schedule][bad]") {
    LedgerState late = refilledOn(0);
    late.lastRefill = lastDay - std::chrono::days{10};
    const auto dates = schedule(late, rule, lastDay);
    for (const Day day : {dates.sample, dates.brew, dates.draw, dates.nextSample, dates.nextDraw, dates.sampleDue,
                          dates.brewDue, dates.drawDue})
        CHECK(day <= lastDay);
}

TEST_CASE("a late brew is late, and its draw waits for it", "[schedule]") {
    ScheduleRule tasted = rule;
    tasted.sampled = dayAfter(305);
    const auto late = schedule(refilledOn(100), tasted, dayAfter(331));
    CHECK(late.brewDue == dayAfter(326));
    CHECK(late.brew == dayAfter(331));
    CHECK(late.draw == dayAfter(345));
    CHECK(nextJob(refilledOn(100), tasted, late).on == dayAfter(326));
    tasted.brewed = dayAfter(331);
    const auto brewed = schedule(refilledOn(100), tasted, dayAfter(350));
    CHECK(brewed.drawDue == dayAfter(345)); // not overdue before the beer was ready
    CHECK(nextJob(refilledOn(100), tasted, brewed).on == dayAfter(345));
}

TEST_CASE("the brewer's own day outranks the interval, both ways", "[schedule]") {
    for (const int day : {300, 400}) {
        ScheduleRule set = rule;
        set.fixed = dayAfter(day);
        const auto dates = schedule(refilledOn(100), set, dayAfter(200));
        CHECK(dates.draw == dayAfter(day));
        CHECK(dates.sample == dayAfter(day - 30));
        CHECK(dates.brew == dayAfter(day - 14));
        CHECK(dates.nextDraw == dayAfter(day + 240));
        set.drawn = dayAfter(310); // what was done outranks what was meant
        CHECK(schedule(refilledOn(100), set, dayAfter(312)).drawDue == dayAfter(310));
    }
}

TEST_CASE("a fault is looked at again before anything is drawn", "[schedule]") {
    ScheduleRule sick = rule;
    sick.sampled = dayAfter(310);
    sick.fault = dayAfter(400);
    const auto dates = schedule(refilledOn(100), sick, dayAfter(320));
    CHECK(dates.sample == dayAfter(400));
    CHECK(dates.brew == dayAfter(400)); // not before it is known to be wanted
    CHECK(dates.draw == dayAfter(414));
    CHECK(nextJob(refilledOn(100), sick, dates).kind == DueKind::taste);
    CHECK(nextJob(refilledOn(100), sick, dates).on == dayAfter(400));
    ScheduleRule brewed = sick;
    brewed.brewed = dayAfter(305); // what is brewed keeps
    CHECK(schedule(refilledOn(100), brewed, dayAfter(320)).draw == dayAfter(400));
    sick.fault = dayAfter(315); // clears long before the draw
    CHECK(schedule(refilledOn(100), sick, dayAfter(312)).draw == dayAfter(340));
}

TEST_CASE("only a tasting in the second half of a cycle looks at the draw", "[schedule]") {
    CHECK_FALSE(looksAtDraw(dayAfter(219), refilledOn(100), Days{240}));
    CHECK(looksAtDraw(dayAfter(220), refilledOn(100), Days{240}));
    CHECK_FALSE(looksAtDraw(dayAfter(220), LedgerState{}, Days{240}));
}

TEST_CASE("what is not done yet is next: taste, brew, draw", "[schedule]") {
    const auto state = refilledOn(100);
    const auto next = [&](const ScheduleRule& given) {
        return nextJob(state, given, schedule(state, given, dayAfter(200)));
    };
    ScheduleRule done = rule;
    CHECK(next(done).kind == DueKind::taste);
    CHECK(next(done).on == dayAfter(310));
    done.sampled = dayAfter(305);
    CHECK(next(done).kind == DueKind::brew);
    CHECK(next(done).on == dayAfter(326));
    done.brewed = dayAfter(320);
    CHECK(next(done).kind == DueKind::draw);
    CHECK(next(done).on == dayAfter(340));
    CHECK(nextJob(LedgerState{}, done, {}).kind == DueKind::nothing);
}

TEST_CASE("an empty vessel is brewed for today and filled when that is ready, whatever came before", "[schedule]") {
    ScheduleRule empty = rule;
    empty.empty = true;
    const LedgerState never;
    const auto dates = schedule(never, empty, dayAfter(100));
    CHECK(dates.brew == dayAfter(100));
    CHECK(dates.draw == dayAfter(114));
    CHECK(dates.nextDraw == dayAfter(354));
    CHECK(dates.nextSample == dayAfter(324));
    CHECK(nextJob(never, empty, dates).kind == DueKind::brew);
    empty.brewed = dayAfter(90);
    const auto brewed = schedule(refilledOn(10), empty, dayAfter(110));
    CHECK(brewed.drawDue == dayAfter(104));
    CHECK(brewed.draw == dayAfter(110));
    CHECK(nextJob(refilledOn(10), empty, brewed).kind == DueKind::refill);
    CHECK(nextJob(refilledOn(10), empty, brewed).on == dayAfter(104));
}
