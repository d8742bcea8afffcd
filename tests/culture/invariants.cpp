// SPDX-License-Identifier: GPL-3.0-or-later
// What must hold whatever the constants: carbon, time, total functions.
#include "culture/culture_support.h"
#include "quantity/acid_base.h"

#include <limits>

using namespace staveline;
using namespace staveline::culture;
using namespace staveline::culture_test;

namespace {

AgeConditions anyConditions() {
    return {{uniform(1, 500)}, {uniform(4, 24)}, uniform(0, 40)};
}

VesselState inPieces(VesselState state, const AgeConditions& whole, int pieces, const CultureParameters& p = usual) {
    const AgeConditions piece{whole.days / pieces, whole.temperature, whole.oxygenPerYear};
    for (int i = 0; i < pieces; ++i)
        state = age(state, piece, p);
    return state;
}

bool allFinite(const VesselState& state) {
    for (const double x : numbers(state))
        if (!std::isfinite(x))
            return false;
    return true;
}

} // namespace

TEST_CASE("Carbon closes: what leaves the carbohydrates is in lactic acid and in Brettanomyces' alcohol",
          "[culture][property]") {
    CHECK_PROPERTY("balance", [] {
        const VesselState before = anyVessel();
        const AgeConditions c = anyConditions();
        const Composition a = before.beer, b = age(before, c, usual).beer;
        const double gone = a.sugar + a.dextrin + a.residue - b.sugar - b.dextrin - b.residue;
        const double toLactic = (b.lactic - a.lactic) / usual.lacticYield;
        const double toBrett = gone - toLactic;
        const double oxidised = aceticPerDay(c, usual) * c.days.d;
        RC_ASSERT(std::abs(b.ethanol - a.ethanol - usual.brettEthanol * toBrett + .767 * oxidised) < 1e-9);
        RC_ASSERT(std::abs(b.acetic - a.acetic - usual.aceticPerLactic * (b.lactic - a.lactic) - oxidised) < 1e-9);
        RC_ASSERT(toLactic >= -1e-12 && toBrett >= -1e-9);
    });
}

TEST_CASE("The ferulic acid of esters and phenols is never more than it was", "[culture][property]") {
    CHECK_PROPERTY("in mol", [] {
        const VesselState before = anyVessel();
        const auto mmol = [](const Composition& c) {
            return (c.esters + c.ferulic) / 194.18 + c.vinylGuaiacol / 150.17 + c.ethylGuaiacol / 152.19;
        };
        const double was = mmol(before.beer), is = mmol(age(before, anyConditions(), usual).beer);
        RC_ASSERT(is <= was * (1 + 1e-4)); // mass ratios of the model have four digits
    });
}

TEST_CASE("Two halves of an interval equal the whole", "[culture][property]") {
    CHECK_PROPERTY("same steps", [] {
        const VesselState state = anyVessel();
        const AgeConditions whole{{2.0 * *rc::gen::inRange(1, 200)}, {uniform(4, 24)}, 10};
        RC_ASSERT(relativeDifference(inPieces(state, whole, 2), age(state, whole, usual)) < 1e-6);
    });
    CHECK_PROPERTY("other steps", [] {
        const VesselState state = anyVessel();
        const AgeConditions whole{{uniform(20, 400)}, {uniform(4, 20)}, 10};
        RC_ASSERT(relativeDifference(inPieces(state, whole, 3), age(state, whole, usual), .1) < 3e-3);
    });
}

TEST_CASE("Two halves of an interval equal the whole while water evaporates", "[culture][property]") {
    CultureParameters dry = usual;
    dry.evaporation = .05;
    CHECK_PROPERTY("same steps", [&] {
        const VesselState state = anyVessel();
        const AgeConditions whole{{2.0 * *rc::gen::inRange(1, 200)}, {uniform(4, 24)}, 10};
        RC_ASSERT(relativeDifference(inPieces(state, whole, 2, dry), age(state, whole, dry)) < 1e-6);
    });
    CHECK_PROPERTY("other steps", [&] {
        const VesselState state = anyVessel();
        const AgeConditions whole{{uniform(20, 400)}, {uniform(4, 20)}, 10};
        RC_ASSERT(relativeDifference(inPieces(state, whole, 3, dry), age(state, whole, dry), .1) < 3e-3);
    });
}

TEST_CASE("Steps of a tenth of a day change nothing one could see", "[culture]") {
    const VesselState start = refill(reference::settledVessel, reference::refillBeer, {.35}, usual);
    const AgeConditions whole{{240}, {16}, 10};
    CHECK(relativeDifference(inPieces(start, whole, 2400), age(start, whole, usual)) < 1e-3);
}

TEST_CASE("Nothing happens in no time, and time does not run back", "[culture]") {
    const VesselState state = reference::settledVessel;
    CHECK(age(state, {{0}, {16}, 10}, usual) == state);
    CHECK(age(state, {{-40}, {16}, 10}, usual) == state);
    CHECK_FALSE(age(state, {{1}, {16}, 10}, usual) == state);
}

TEST_CASE("Ageing is total: any days, any temperature, any constants give numbers", "[culture]") {
    constexpr double nan = std::numeric_limits<double>::quiet_NaN(), inf = std::numeric_limits<double>::infinity();
    const VesselState state = refill(reference::settledVessel, reference::refillBeer, {.5}, usual);
    for (const double days : {1e-12, .001, 1., 365., 1e5, inf, nan})
        for (const double temperature : {-300., 0., 45., 1e4, inf, nan})
            for (const double oxygen : {-5., 0., 300., inf, nan}) {
                CAPTURE(days, temperature, oxygen);
                CHECK(allFinite(age(state, {{days}, {temperature}, oxygen}, usual)));
            }
}

TEST_CASE("Fast cultures take shorter steps and still balance", "[culture]") {
    CultureParameters fast = usual;
    fast.souring = 3;
    fast.halfSpeedSugar = .2;
    const VesselState before = refill(reference::settledVessel, reference::refillBeer, {.9}, usual);
    const AgeConditions warm{{60}, {30}, 0};
    const Composition a = before.beer, b = age(before, warm, fast).beer;
    const double gone = a.sugar + a.dextrin + a.residue - b.sugar - b.dextrin - b.residue;
    const double toLactic = (b.lactic - a.lactic) / fast.lacticYield;
    CHECK(b.sugar >= 0);
    CHECK(b.ethanol - a.ethanol == Approx(fast.brettEthanol * (gone - toLactic)).margin(1e-9));
}

TEST_CASE("Pools stay where they can be", "[culture][property]") {
    CHECK_PROPERTY("not negative, cultures within 0..1", [] {
        const VesselState start = anyVessel(), end = age(start, anyConditions(), usual);
        for (const double x : numbers(end))
            RC_ASSERT(x >= 0);
        RC_ASSERT(end.lactics <= 1 && end.brett <= 1);
        // A culture may come with more tolerance than hops would give it, and loses it slowly.
        RC_ASSERT(end.hopTolerance <= std::max(start.hopTolerance, usual.mostHopTolerance) + 1e-6);
    });
}

TEST_CASE("A century is the longest, and the air and warmth of a cellar have ends", "[culture]") {
    const VesselState state = reference::settledVessel;
    CHECK(age(state, {{1e6}, {16}, 10}, usual) == age(state, {{36525}, {16}, 10}, usual));
    CHECK(age(state, {{30}, {90}, 10}, usual) == age(state, {{30}, {45}, 10}, usual));
    CHECK(age(state, {{30}, {-40}, 10}, usual) == age(state, {{30}, {-5}, 10}, usual));
    CHECK(age(state, {{30}, {16}, 1e6}, usual) == age(state, {{30}, {16}, 1e4}, usual));
    CHECK(age(state, {{30}, {16}, -1}, usual) == age(state, {{30}, {16}, 0}, usual));
}

TEST_CASE("Vinyl phenols that go fast go in steps small enough", "[culture]") {
    CultureParameters fast = usual;
    fast.vinylLoss = .02, fast.vinylEnergy = 140, fast.vinylMost = 10; // the ends of their ranges
    VesselState sour = reference::settledVessel;
    sour.beer.lactic = 8, sour.beer.vinylGuaiacol = 1, sour.beer.vinylPhenol = 1;
    const Composition hot = age(sour, {{10}, {45}, 0}, fast).beer;
    for (const double left : {hot.vinylGuaiacol, hot.vinylPhenol}) {
        CHECK(left >= 0);
        CHECK(left < .01);
    }
}
