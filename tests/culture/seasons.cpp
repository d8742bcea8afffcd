// SPDX-License-Identifier: GPL-3.0-or-later
// Beer ages at the temperature of each month.
#include "culture/culture_support.h"

#include <cmath>

using namespace staveline;
using namespace staveline::culture;
using namespace staveline::culture_test;

namespace {

constexpr Day newYear = std::chrono::year{2025} / 1 / 1;

AgeConditions through(Days days, Day from, double swing, double mean = 14) {
    AgeConditions c{days, {mean}, 10};
    c.apart = vessel::yearBetween({-swing}, {swing}, 0);
    c.from = from;
    return c;
}

} // namespace

TEST_CASE("A year without seasons ages as one temperature does, to the last bit", "[culture][room][property]") {
    CHECK_PROPERTY("identity", [] {
        const VesselState vessel = anyVessel();
        const Days days{static_cast<double>(*rc::gen::inRange(1, 3000)) / 7};
        AgeConditions even{days, {uniform(4, 24)}, uniform(0, 40)};
        const VesselState steady = age(vessel, even, usual);
        even.from = newYear + std::chrono::days{*rc::gen::inRange(0, 4000)};
        RC_ASSERT(age(vessel, even, usual) == steady);
        even.apart.fill(2);
        AgeConditions warmer = even;
        warmer.apart.fill(0);
        warmer.temperature.c += 2;
        RC_ASSERT(age(vessel, even, usual) == age(vessel, warmer, usual));
    });
}

TEST_CASE("An interval parted at any day ages as the whole", "[culture][room][property]") {
    CHECK_PROPERTY("through the seasons", [] {
        const VesselState vessel = anyVessel();
        const int first = *rc::gen::inRange(1, 200), second = *rc::gen::inRange(1, 200);
        const Day from = newYear + std::chrono::days{*rc::gen::inRange(0, 400)};
        const VesselState whole = age(vessel, through({static_cast<double>(first + second)}, from, 6), usual);
        const VesselState half = age(vessel, through({static_cast<double>(first)}, from, 6), usual);
        const VesselState parts =
            age(half, through({static_cast<double>(second)}, from + std::chrono::days{first}, 6), usual);
        RC_ASSERT(relativeDifference(whole, parts, .02) < 5e-3);
    });
}

// Outside check: the mean of Q^((T-20)/10) over a sine of mean m and swing A is Q^((m-20)/10) I0(A ln Q / 10), I0 the
// modified Bessel function (DLMF 10.32.1). A culture that has nothing to eat only declines, at a speed that goes as
// Q^((T-20)/10): its logarithm after whole years shows that mean.
TEST_CASE("A year of seasons speeds the decline as the mean over its sine says", "[culture][room][outside]") {
    VesselState starved;
    starved.beer.ethanol = 40;
    starved.beer.buffer = 30;
    starved.beer.sid = 20;
    starved.brett = .8;
    for (const double swing : {0.0, 4.0, 8.0, 12.0}) {
        CAPTURE(swing);
        const Days fourYears{1461};
        const VesselState after = age(starved, through(fourYears, newYear, swing, 13), usual);
        const double speed = std::log(starved.brett / after.brett) / (usual.decline * fourYears.d);
        const double expected =
            std::pow(usual.speedPer10C, -.7) * std::cyl_bessel_i(0, swing * std::log(usual.speedPer10C) / 10);
        CHECK(speed == Approx(expected).epsilon(.01)); // the months are of unequal length
    }
}

TEST_CASE("Half a year that is warm sours more than half a year that is cold", "[culture][room]") {
    VesselState fresh = reference::settledVessel;
    fresh.beer = blend(fresh.beer, reference::refillBeer, {.35});
    const Day april = newYear + std::chrono::days{90}, october = april + std::chrono::days{183};
    const auto acid = [&](Day from) {
        return titratableAcidity(age(fresh, through({183}, from, 8), usual).beer).gPerL;
    };
    const double steady = titratableAcidity(age(fresh, {{183}, {14}, 10}, usual).beer).gPerL;
    CHECK(acid(april) > steady);
    CHECK(acid(october) < steady);
}
