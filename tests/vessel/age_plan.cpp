// SPDX-License-Identifier: GPL-3.0-or-later
// Planning by age. Dates and ages are worked by hand beside each case, or found again by replaying what was planned.
#include "vessel/age_plan.h"
#include "ledger_support.h"
#include "support/property.h"
#include "vessel/schedule.h"

#include <cmath>

using namespace staveline;
using namespace staveline::vessel;
using namespace staveline::ledger_tests;

namespace {

constexpr VesselShape noLoss{Litres{225}, Share{0}};

ScheduleRule drawnAt(double wanted, double draw, double filled, VesselShape shape = noLoss) {
    ScheduleRule rule;
    rule.aim = AgeAim{Days{wanted}, Litres{draw}, Litres{0}, Litres{filled}, shape};
    return rule;
}

bool alike(double a, double b) {
    return std::abs(a - b) <= 1e-6 * std::max({1.0, std::abs(a), std::abs(b)});
}

} // namespace

TEST_CASE("an irregular history reaches its age on the day a spreadsheet says", "[age]") {
    // One row an entry: A day, B litres in (out: negative), C age of what goes in, D litres held, E mean age, F the day
    // on which it is 600 days old. Row 1: D1 = 200, E1 = 500. From row 2 on
    //   D2 = D1 + B2
    //   E2 = IF(B2 < 0, E1 + A2 - A1, ((E1 + A2 - A1) * D1 + C2 * B2) / D2)
    //   F2 = ROUNDUP(A2 + 600 - E2, 0)
    struct Row {
        int day;
        double moved, age, held, mean;
        int reached;
    };
    constexpr Row rows[] = {{0, 200, 500, 200, 500, 100},
                            {95, -60, 0, 140, 595, 100},
                            {95, 62, 21, 202, 418.821782, 277},
                            {160, 5, 30, 207, 472.859903, 288},
                            {300, -101.5, 0, 105.5, 612.859903, 288},
                            {318, 90, 12, 195.5, 345.962761, 573},
                            {400, 20, 900, 215.5, 471.771322, 529},
                            {455, -33.3, 0, 182.2, 526.771322, 529},
                            {455, 40, 200, 222.2, 467.946601, 588}};
    Book book;
    for (const Row& row : rows) {
        if (row.day == 0)
            book.opening(0, row.moved, row.age);
        else if (row.moved < 0)
            book.draw(row.day, -row.moved);
        else if (row.day == 160)
            book.topUp(row.day, row.moved, row.age);
        else
            book.refill(row.day, row.moved, row.age);
        CAPTURE(row.day, row.moved);
        const LedgerState now = book.on(row.day, noLoss).now;
        CHECK(now.volume.l == Approx(row.held).margin(1e-9));
        CHECK(now.meanAge.d == Approx(row.mean).margin(1e-6));
        CHECK(ageReached(now, Days{600}) == dayAfter(row.reached));
        CHECK(schedule(now, drawnAt(600, 60, 222), dayAfter(row.day)).drawDue ==
              std::max(dayAfter(row.reached), now.lastRefill.value_or(dayAfter(0))));
    }
}

TEST_CASE("drawn at four years, half the vessel is drawn every second year", "[age]") {
    // The steady state of the published example, turned round: wanted 4.0 years, f = 1/2, fresh refills: t = f x 4 = 2
    // years; the first draw of a vessel filled fresh comes after four. A day's rounding at each draw.
    const double wanted = 4 * daysPerYear;
    Book book;
    book.opening(0, 200);
    int drawn = 0;
    for (int n = 1; n <= 30; ++n) {
        ScheduleRule rule = drawnAt(wanted, 100, 200, {Litres{200}, Share{0}});
        rule.primary = Days{0};
        const auto now = book.on(drawn, {Litres{200}, Share{0}}).now;
        const auto dates = schedule(now, rule, dayAfter(drawn));
        const int day = daysBetween(dayAfter(0), dates.draw);
        CAPTURE(n);
        CHECK(day - drawn == Approx(n == 1 ? 1461 : 730.5).margin(1));
        CHECK(daysBetween(dates.draw, dates.nextDraw) == Approx(730.5).margin(1));
        CHECK(book.on(day, {Litres{200}, Share{0}}).now.meanAge.d == Approx(wanted).margin(1));
        book.draw(day, 100).refill(day, 100);
        drawn = day;
    }
}

TEST_CASE("what a draw and its refill make of an age", "[age]") {
    // m 28, refill 1: 8/27 of the vessel brings it to 20 months of one day each; 225 L full: 66.667 L
    const Exchange full{Litres{225}, Litres{225}, Days{28}, Days{1}};
    CHECK(drawToReach(full, Days{20})->l == Approx(225 * 8 / 27.).margin(1e-9));
    CHECK(ageAfter(full, Litres{225 * 8 / 27.}).d == Approx(20).margin(1e-12));
    // 9 L evaporated: they are part of what is replaced
    const Exchange low{Litres{216}, Litres{225}, Days{28}, Days{1}};
    CHECK(drawToReach(low, Days{20})->l == Approx(225 * 8 / 27. - 9).margin(1e-9));
    CHECK(ageAfter(low, Litres{0}).d == Approx((216 * 28 + 9) / 225.).margin(1e-12));
    CHECK_FALSE(drawToReach(low, Days{27})); // topping up alone makes it 26.92
    CHECK_FALSE(drawToReach(full, Days{28.5}));
    CHECK_FALSE(drawToReach(full, Days{1})); // all of it drawn would be as old
    CHECK(ageAfter(full, Litres{400}).d == 1);
}

TEST_CASE("an age that is past is due since then, and the next draw waits for a brew", "[age]") {
    Book book;
    book.opening(0, 225, 700).draw(100, 20).refill(100, 20, 14);
    const auto now = book.on(130, noLoss).now; // 205 of 225 L 800 days old: 730.1 after the refill, 760.1 now
    const auto dates = schedule(now, drawnAt(740, 20, 225), dayAfter(130));
    CHECK(dates.drawDue == dayAfter(110));
    CHECK(dates.draw == dayAfter(144));
    CHECK(dates.nextDraw == dayAfter(178)); // 774.1 at the draw, 706.6 after it: 33.4 days more
    CHECK(nextJob(now, drawnAt(740, 20, 225), dates).kind == DueKind::taste);
    const auto wayPast = schedule(now, drawnAt(300, 20, 225), dayAfter(130));
    CHECK(wayPast.drawDue == dayAfter(100)); // not before the cycle began
    CHECK(wayPast.nextDraw == wayPast.draw + std::chrono::days{14});
}

TEST_CASE("an age that nothing fresh comes below is no aim: the interval goes on", "[age]") {
    Book book;
    book.opening(0, 225, 300).draw(10, 70).refill(10, 70, 14);
    const auto now = book.on(20, noLoss).now;
    const ScheduleRule rule = drawnAt(14, 70, 225);
    CHECK_FALSE(byAge(rule));
    CHECK(schedule(now, rule, dayAfter(20)).draw == dayAfter(250));
    CHECK(byAge(drawnAt(15, 70, 225)));
}

TEST_CASE("an empty vessel is drawn first when its fill is as old as wanted", "[age]") {
    ScheduleRule rule = drawnAt(400, 70, 225);
    rule.empty = true;
    const auto dates = schedule(LedgerState{}, rule, dayAfter(0));
    CHECK(dates.draw == dayAfter(14));
    CHECK(dates.nextDraw == dayAfter(400)); // it counts from the brew day
}

TEST_CASE("the brewer's own day, a fault and a late brew outrank the age", "[age]") {
    Book book;
    book.opening(0, 225, 300);
    const auto now = book.on(20, noLoss).now;
    ScheduleRule rule = drawnAt(400, 70, 225);
    CHECK(schedule(now, rule, dayAfter(20)).draw == dayAfter(100));
    rule.fixed = dayAfter(60);
    CHECK(schedule(now, rule, dayAfter(20)).draw == dayAfter(60));
    rule.fixed.reset();
    rule.fault = dayAfter(120);
    CHECK(schedule(now, rule, dayAfter(20)).drawDue == dayAfter(134));
}

namespace {

/// A vessel of 225 L with some years behind it.
Book anyYears(int& last) {
    Book book;
    book.opening(0, *rc::gen::inRange(100, 226), *rc::gen::inRange(0, 2000));
    last = 0;
    const int cycles = *rc::gen::inRange(0, 12);
    for (int n = 0; n < cycles; ++n) {
        last += *rc::gen::inRange(20, 500);
        book.draw(last, *rc::gen::inRange(5, 90)).refill(last, *rc::gen::inRange(5, 90), *rc::gen::inRange(0, 400));
        if (*rc::gen::arbitrary<bool>())
            book.topUp(last += *rc::gen::inRange(1, 60), *rc::gen::inRange(1, 10), *rc::gen::inRange(0, 90));
        if (*rc::gen::inRange(0, 3) == 0)
            book.transferOut(last += *rc::gen::inRange(1, 60), *rc::gen::inRange(1, 20));
    }
    return book;
}

} // namespace

TEST_CASE("the day that is told is the first on which the replay is that old", "[age]") {
    CHECK_PROPERTY("age on the day", [] {
        int last = 0;
        const Book book = anyYears(last);
        const VesselShape shape{Litres{225}, Share{*rc::gen::inRange(0, 10) / 100.}};
        const int today = last + *rc::gen::inRange(0, 100);
        const auto now = book.on(today, shape).now;
        RC_PRE(now.volume.l > 1);
        const double wanted = now.meanAge.d + *rc::gen::inRange(1, 40000) / 10.;
        const int day = daysBetween(dayAfter(0), ageReached(now, Days{wanted}));
        RC_PRE(book.on(day, shape).now.volume.l > 0); // else all of it has evaporated by then
        RC_ASSERT(book.on(day, shape).now.meanAge.d >= wanted - 1e-5);
        RC_ASSERT(book.on(day - 1, shape).now.meanAge.d < wanted);
    });
}

TEST_CASE("the draw that is told, recorded, makes the beer that old", "[age]") {
    CHECK_PROPERTY("age after the refill", [] {
        int last = 0;
        Book book = anyYears(last);
        const VesselShape shape{Litres{225}, Share{*rc::gen::inRange(0, 10) / 100.}};
        const auto now = book.on(last, shape).now;
        RC_PRE(now.volume.l > 1);
        const int ahead = *rc::gen::inRange(0, 300), refillAge = *rc::gen::inRange(0, 200);
        const AgeAim aim{Days{1}, Litres{50}, Litres{0}, Litres{225}, shape};
        const Exchange exchange = exchangeOn(now, aim, dayAfter(last + ahead), Days{refillAge + 0.});
        const double wanted = *rc::gen::inRange(0, 3000);
        const auto draw = drawToReach(exchange, Days{wanted});
        RC_PRE(draw.has_value());
        RC_ASSERT(draw->l <= exchange.held.l);
        RC_ASSERT(alike(ageAfter(exchange, *draw).d, wanted));
        if (draw->l > 0)
            book.draw(last + ahead, draw->l);
        const double room = 225 - book.on(last + ahead, shape).now.volume.l;
        const auto after = book.refill(last + ahead, room, refillAge).on(last + ahead, shape).now;
        RC_ASSERT(alike(after.meanAge.d, wanted));
    });
}

TEST_CASE("the next draw is the first day on which the refilled vessel is as old as wanted", "[age]") {
    CHECK_PROPERTY("next draw", [] {
        int last = 0;
        Book book = anyYears(last);
        const VesselShape shape{Litres{225}, Share{*rc::gen::inRange(0, 10) / 100.}};
        const auto now = book.on(last, shape).now;
        RC_PRE(now.volume.l > 1);
        const double wanted = *rc::gen::inRange(20, 3000), draw = *rc::gen::inRange(0, 120);
        const auto dates = schedule(now, drawnAt(wanted, draw, 225, shape), dayAfter(last));
        const int day = daysBetween(dayAfter(0), dates.draw), next = daysBetween(dayAfter(0), dates.nextDraw);
        if (draw > 0)
            book.draw(day, draw);
        const double room = 225 - book.on(day, shape).now.volume.l;
        RC_PRE(room > 0 && next > day); // filled up
        book.refill(day, room, daysBetween(dates.brew, dates.draw));
        RC_ASSERT(book.on(next, shape).now.meanAge.d >= wanted - 1e-5);
        RC_ASSERT(next - day == 14 || book.on(next - 1, shape).now.meanAge.d < wanted);
        RC_ASSERT(dates.draw <= dates.nextSample && dates.nextSample <= dates.nextDraw);
    });
}

TEST_CASE("with beer that brings its generations along, the mean age is that of the shares", "[age][transfer]") {
    CHECK_PROPERTY("shares and increments", [] {
        int fromDay = 0, toDay = 0;
        const Book from = anyYears(fromDay);
        Book to = anyYears(toDay);
        const int day = std::max(fromDay, toDay) + *rc::gen::inRange(0, 200);
        const auto source = from.on(day, noLoss).now;
        const auto before = to.on(day, noLoss).now;
        RC_PRE(source.volume.l > 1 && before.volume.l > 1 && before.volume.l < 220);
        to.refill(day, *rc::gen::inRange(1, static_cast<int>(225 - before.volume.l)));
        auto& moved = to.entries.back();
        moved.age = source.meanAge;
        for (Generation part : source.generations) {
            part.birthAge = ageOf(part, day == 0 ? dayAfter(0) : dayAfter(day));
            moved.brought.push_back(part);
        }
        const auto now = to.on(day, noLoss).now;
        const double poured = moved.volume.l / now.volume.l;
        RC_ASSERT(alike(now.meanAge.d, (1 - poured) * before.meanAge.d + poured * source.meanAge.d));
        double byShares = 0, shares = 0;
        for (const Generation& part : now.generations) {
            byShares += part.share.of1 * ageOf(part, now.on).d;
            shares += part.share.of1;
        }
        RC_ASSERT(alike(shares, 1));
        RC_ASSERT(alike(byShares, now.meanAge.d));
        LedgerWalk walk(noLoss, to.entries);
        for (const auto& entry : to.entries)
            walk.apply(entry);
        RC_ASSERT(alike(walk.on(dayAfter(day)).meanAge.d, now.meanAge.d));
    });
}
