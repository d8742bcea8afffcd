// SPDX-License-Identifier: GPL-3.0-or-later
// What a vessel becomes by habit. Expected values are worked by hand beside each case, or come from the replay, which
// knows nothing of habits.
#include "vessel/routine.h"
#include "ledger_support.h"

#include <cmath>
#include <rapidcheck.h>

using namespace staveline;
using namespace staveline::vessel;
using namespace staveline::ledger_tests;

namespace {

Routine routine(double share, double interval, double refillAge) {
    return {{100}, {100 * share}, {interval}, {0}, {refillAge}, {0}};
}

} // namespace

TEST_CASE("a habit settles at refill age + interval / share") {
    struct Row {
        double share, interval, refillAge, before, after, variance;
    };
    for (const auto& row : {Row{1 / 2., 2, 0, 4, 2, 8}, Row{1 / 3., 1, 0, 3, 2, 6}, Row{1 / 4., 1, 0, 4, 3, 12},
                            Row{.3, 9, 1, 31, 22, 630}, Row{.4, 6, 1.5, 16.5, 10.5, 135}}) {
        CAPTURE(row.share, row.interval);
        const auto settled = settledAge(routine(row.share, row.interval, row.refillAge));
        CHECK(settled.beforeDraw.d == Approx(row.before).margin(5e-5));
        CHECK(settled.afterRefill.d == Approx(row.after).margin(5e-5));
        CHECK(settled.sd.d == Approx(std::sqrt(row.variance)).margin(5e-5));
    }
}

TEST_CASE("the way there is the replay of the same entries") {
    // 30 % every 90 days with beer of ten days: the first four draws, worked by hand in months of ten days:
    // 10, 16.3, 20.71, 23.797 before and 7.3, 11.71, 14.797, 16.9579 after
    const auto points = growth(routine(.3, 90, 10), 4, {{10}});
    constexpr double before[] = {100, 163, 207.1, 237.97}, after[] = {73, 117.1, 147.97, 169.579};
    constexpr double sd[] = {0, 41.243, 78.145, 111.502}, first[] = {.7, .49, .343, .2401};
    REQUIRE(points.size() == 4);
    for (std::size_t n = 0; n < 4; ++n) {
        CHECK(points[n].before.d == Approx(before[n]).margin(1e-9));
        CHECK(points[n].after.d == Approx(after[n]).margin(1e-9));
        CHECK(points[n].sd.d == Approx(sd[n]).margin(1e-3));
        CHECK(points[n].first.of1 == Approx(first[n]).margin(1e-12));
        CHECK(points[n].since.d == 90 * static_cast<double>(n + 1));
    }
    rc::check("as the ledger has it", [] {
        const int cycles = *rc::gen::inRange(1, 30), step = *rc::gen::inRange(1, 400);
        const double share = *rc::gen::inRange(5, 95) / 100., refillAge = *rc::gen::inRange(0, 60);
        const auto now = solera(225, share, step, refillAge, cycles).on(cycles * step).now;
        const auto last = growth(routine(share, step, refillAge), cycles, {{refillAge}}).back();
        RC_ASSERT(std::abs(now.meanAge.d - last.after.d) < 1e-6 * (1 + last.after.d));
    });
}

TEST_CASE("a vessel in use begins with its coming draw, one that is drawn with its refill") {
    // 200 days old, drawn in 20 days, 40 % then refilled with beer of ten days: 220 - 0.4 x 210 = 136 days after
    const auto points = growth(routine(.3, 90, 10), 2, {{200}, {0}, false, Days{20}, Share{.4}});
    CHECK(points[0].since.d == 20);
    CHECK(points[0].before.d == Approx(220));
    CHECK(points[0].after.d == Approx(136));
    CHECK(points[1].since.d == 110);
    CHECK(points[1].before.d == Approx(226));
    CHECK(points[1].after.d == Approx(226 - .3 * 216)); // by habit from then on
    // refilled first: 200 - 0.4 x 190 = 124; variance 0.4 x 0.6 x 190^2
    const auto drawn = growth(routine(.3, 90, 10), 1, {{200}, {0}, true, {}, Share{.4}});
    CHECK(drawn[0].since.d == 90);
    CHECK(drawn[0].before.d == Approx(214));
    CHECK(drawn[0].after.d == Approx(214 - .3 * 204));
    CHECK(drawn[0].sd.d == Approx(93.081).margin(1e-3));
}

TEST_CASE("how near a habit is to where it settles depends on where it begins") {
    // 310 - 210 x 0.7^(n - 1): within 15.5 days from the ninth draw on
    CHECK(settledFrom(growth(routine(.3, 90, 10), 40, {{10}}), {310}, {15.5}) == 9);
    CHECK(settledFrom(growth(routine(.3, 90, 10), 40, {{220}}), {310}, {15.5}) == 1);
    CHECK_FALSE(settledFrom(growth(routine(.3, 90, 10), 8, {{10}}), {310}, {15.5}));
    // near at first by chance, then away and back: 300, 310 - 150, ...
    const auto past = growth(routine(.3, 90, 10), 40, {{300}, {0}, false, Days{0}, Share{.8}});
    CHECK(past[0].before.d == 300);
    CHECK(settledFrom(past, {310}, {15.5}) == 9); // 310 - 152 x 0.7^(n - 2)
}

TEST_CASE("draws until a habit has settled") {
    // ln 0.05 / ln(1 - f), rounded up
    for (const auto& [share, draws] :
         {std::pair{.1, 29}, {.2, 14}, {.25, 11}, {.3, 9}, {1 / 3., 8}, {.4, 6}, {.5, 5}, {1., 1}})
        CHECK(drawsToSettle(routine(share, 1, 0)) == draws);
}

TEST_CASE("evaporation is made good by the refill and makes the beer younger") {
    // 225 L, 5 % a year = 11.25 L, 75 L drawn each year: refilled 86.25 L, share 0.38333, 1 / 0.38333 = 2.6087 years
    const Routine habit{{225}, {75}, {daysPerYear}, {.05}, {0}, {0}};
    CHECK(evaporated(habit).l == Approx(11.25));
    CHECK(refillShare(habit).of1 == Approx(.383333).margin(1e-6));
    CHECK(settledAge(habit).beforeDraw.d / daysPerYear == Approx(2.6087).margin(5e-5));
    CHECK(drawnPerYear(habit).l == Approx(75));
}

TEST_CASE("the interval or the draw for a wanted age") {
    // 31 = 1 + 9 / 0.3
    CHECK(intervalFor(routine(.3, 1, 1), {31})->d == Approx(9));
    CHECK(drawFor(routine(.9, 9, 1), {31})->l == Approx(30));
    CHECK_FALSE(intervalFor(routine(.3, 1, 10), {10})); // the refill is that old itself
    CHECK_FALSE(drawFor(routine(.3, 90, 10), {99}));    // 90 days and a refill of ten make 100 at least
    // what evaporates alone keeps it younger than that
    CHECK_FALSE(intervalFor({{100}, {10}, {100}, {.1}, {0}, {0}}, {11 * daysPerYear}));
    CHECK_FALSE(drawFor({{100}, {10}, {100}, {.1}, {0}, {0}}, {11 * daysPerYear}));
    rc::check("either brings the age that was asked for", [] {
        Routine habit{{200},
                      {*rc::gen::inRange(10, 150) * 1.},
                      {*rc::gen::inRange(30, 700) * 1.},
                      {*rc::gen::inRange(0, 8) / 100.},
                      {*rc::gen::inRange(0, 90) * 1.},
                      {0}};
        const Days wanted{habit.refillAge.d + *rc::gen::inRange(1, 2000)};
        if (const auto interval = intervalFor(habit, wanted)) {
            auto changed = habit;
            changed.interval = *interval;
            RC_ASSERT(std::abs(settledAge(changed).beforeDraw.d - wanted.d) < 1e-6);
        }
        if (const auto draw = drawFor(habit, wanted)) {
            habit.draw = *draw;
            RC_ASSERT(std::abs(settledAge(habit).beforeDraw.d - wanted.d) < 1e-6);
        }
    });
}

TEST_CASE("a row of vessels adds a spread and an age for each") {
    struct Row {
        int vessels;
        double share;
        int draw;
        double age;
    };
    // 1 x sum over the draws of the chance that fewer than k moves were made; the share of a binomial, by hand for
    // n = 5, k = 4: 4 + (1 - 0.5^4) = 4.9375
    for (const auto& row : {Row{1, .5, 5, 1.9375}, Row{1, .25, 10, 3.7747}, Row{4, .5, 5, 4.9375},
                            Row{4, .25, 20, 14.6244}, Row{8, .5, 10, 9.9766}, Row{8, .1, 50, 49.0363}})
        CHECK(ageInRow(routine(row.share, 1, 0), row.vessels, row.draw).d == Approx(row.age).margin(5e-5));
    CHECK(settledAgeInRow(routine(.25, 1, 2), 4).beforeDraw.d == Approx(18));
    CHECK(ageInRow(routine(.25, 1, 2), 4, 400).d == Approx(18).margin(1e-6));
    CHECK(settledAgeInRow(routine(.25, 1, 0), 1).sd.d == Approx(settledAge(routine(.25, 1, 0)).sd.d));
}

TEST_CASE("a row that evaporates is topped with more, the younger the more") {
    // 100 L each, 10 L drawn a year, 5 L a year lost from each: from the oldest on they take 15, 20 and 25 L, so
    // 100 / 15 + 100 / 20 + 100 / 25 = 15.6667 years, and refills of a year on top
    const Routine row{{100}, {10}, {daysPerYear}, {.05}, {daysPerYear}, {0}};
    CHECK(settledAgeInRow(row, 3).beforeDraw.d == Approx((100 / 15. + 5 + 4 + 1) * daysPerYear).margin(1e-6));
    CHECK(ageInRow(row, 3, 400).d == Approx(settledAgeInRow(row, 3).beforeDraw.d).margin(1e-6));
    CHECK(refillOfRow(row, 3).l == Approx(25).margin(1e-9));
    std::vector<double> ages(3, daysPerYear); // vessel by vessel, the oldest first
    for (int n = 1; n <= 60; ++n) {
        for (double& age : ages)
            age += daysPerYear;
        CHECK(ageInRow(row, 3, n).d == Approx(ages[0]).margin(1e-6));
        for (std::size_t i = 0; i < 3; ++i) {
            const double share = (15 + 5. * static_cast<double>(i)) / 100;
            const double from = i < 2 ? ages[i + 1] : daysPerYear;
            ages[i] = (1 - share) * ages[i] + share * from;
        }
    }
}

TEST_CASE("draws until a row has settled, and the interval that settles it at an age") {
    const Routine row = routine(.25, 1, 0);
    CHECK(drawsToSettleInRow(row, 1) == drawsToSettle(row));
    const int draws = drawsToSettleInRow(row, 4); // 16 in the end: 15.2 and above
    CHECK(ageInRow(row, 4, draws).d >= 15.2);
    CHECK(ageInRow(row, 4, draws - 1).d < 15.2);
    CHECK(intervalForRow(row, 4, {16})->d == Approx(1).margin(1e-6));
    CHECK(intervalForRow(row, 1, {4})->d == Approx(1).margin(1e-6));
    CHECK_FALSE(intervalForRow(routine(.25, 1, 5), 4, {5}));
    Routine dry = row;
    dry.evaporationPerYear = {.2};
    CHECK_FALSE(intervalForRow(dry, 2, {1e5})); // it evaporates faster than it ages
}

TEST_CASE("drawn at an age it is that old at each draw, at once where it is older") {
    // half drawn at 4 days, fresh refills: first after 4 days, then every 2; the spread of the long run is 2.8284
    const auto points = growthAtAge(routine(.5, 9, 0), {4}, 40, {{0}});
    CHECK(points.front().since.d == 4);
    CHECK(points[1].since.d == 6);
    CHECK(points.back().before.d == Approx(4).margin(1e-12));
    CHECK(points.back().sd.d == Approx(2.8284).margin(5e-5));
    // never two draws on one day, where a refill takes three to be ready: 10, 5 + 3, 4 + 3
    const auto waiting = growthAtAge(routine(.5, 9, 0), {4}, 3, {{10}}, {3});
    CHECK(waiting[0].since.d == 0);
    CHECK(waiting[1].since.d == 3);
    CHECK(waiting[1].before.d == 8);
    CHECK(waiting[2].since.d == 6);
    CHECK(waiting[2].before.d == 7);
    const auto older = growthAtAge(routine(.5, 9, 0), {4}, 3, {{10}});
    CHECK(older[0].since.d == 0);
    CHECK(older[0].before.d == 10);
    CHECK(older[1].since.d == 0); // 5 days old after it: drawn again
    CHECK(older[2].since.d == Approx(1.5).margin(1e-12));
}

TEST_CASE("how much to replace for a younger vessel") {
    CHECK(shareToReach({28}, {20}, {1})->of1 == Approx(.2963).margin(5e-5)); // (28 - 20) / (28 - 1)
    CHECK_FALSE(shareToReach({28}, {30}, {1}));
    CHECK_FALSE(shareToReach({28}, {20}, {20}));
}
