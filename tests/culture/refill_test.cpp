// SPDX-License-Identifier: GPL-3.0-or-later
#include "culture/culture_support.h"

#include <limits>

using namespace staveline;
using namespace staveline::culture;
using namespace staveline::culture_test;

TEST_CASE("A refill mixes beer by volume and keeps what the walls hold", "[culture]") {
    const VesselState old = reference::settledVessel;
    const VesselState filled = refill(old, reference::refillBeer, {.4}, usual);
    CHECK(filled.beer == blend(old.beer, reference::refillBeer, {.4}));
    CHECK(filled.lactics == Approx(old.lactics * (1 - .4 * .4))); // wood holds 60 %
    CHECK(filled.brett == Approx(old.brett * (1 - .4 * .4)));
    CHECK(filled.hopTolerance == old.hopTolerance);
}

TEST_CASE("The enzyme that refills bring blends by volume, and opens dextrin", "[culture]") {
    VesselState old = reference::settledVessel;
    old.enzyme = .01;
    const VesselState diluted = refill(old, reference::refillBeer, {.4}, usual);
    CHECK(diluted.enzyme == Approx(.006));
    CHECK(refill(old, reference::refillBeer, {.4}, usual, {.enzyme = .02}).enzyme == Approx(.6 * .01 + .4 * .02));
    VesselState without = diluted;
    without.enzyme = 0;
    const AgeConditions c{{100}, {16}, 10};
    CHECK(age(diluted, c, usual).beer.dextrin < age(without, c, usual).beer.dextrin);
    CHECK(age(diluted, c, usual).enzyme == diluted.enzyme);
}

TEST_CASE("The enzyme of refills is slower in a cold cellar and rests in frost", "[culture]") {
    VesselState sterile = reference::settledVessel; // only the enzyme opens anything
    sterile.beer.dextrin = 20;
    sterile.lactics = sterile.brett = 0;
    sterile.enzyme = .01;
    const auto opened = [&](double celsius) { return 20 - age(sterile, {{30}, {celsius}, 0}, usual).beer.dextrin; };
    CHECK(opened(12) < .7 * opened(18));
    CHECK(opened(12) > 0);
    CHECK(opened(0) == Approx(0).margin(1e-9));
}

TEST_CASE("A vessel whose own culture makes the enzyme has it once", "[culture]") {
    CultureParameters diastatic = usual;
    diastatic.enzymeOpening = .01;
    VesselState state = refill(reference::settledVessel, reference::refillBeer, {.4}, usual), brought = state;
    brought.enzyme = .004;
    const AgeConditions c{{100}, {16}, 10};
    CHECK(age(brought, c, diastatic).beer == age(state, c, diastatic).beer);
}

TEST_CASE("No refill changes nothing, a full one leaves only what the walls hold", "[culture]") {
    const VesselState old = reference::settledVessel;
    CHECK(refill(old, reference::refillBeer, {0}, usual) == old);
    CHECK(refill(old, reference::refillBeer, {-1}, usual) == old);
    CHECK(refill(old, reference::refillBeer, {std::numeric_limits<double>::quiet_NaN()}, usual) == old);
    const VesselState drained = refill(old, reference::refillBeer, {1}, usual);
    CHECK(drained.beer == reference::refillBeer);
    CHECK(drained.lactics == Approx(old.lactics * usual.heldBack));
    CHECK(refill(old, reference::refillBeer, {7}, usual) == drained);
}

TEST_CASE("Steel keeps less culture than wood, a pitched refill brings some", "[culture]") {
    CultureParameters steel = usual, pitched = usual;
    steel.heldBack = .1;
    pitched.refillLactics = pitched.refillBrett = .8;
    const VesselState old = reference::settledVessel;
    CHECK(refill(old, reference::refillBeer, {.7}, steel).brett <
          refill(old, reference::refillBeer, {.7}, usual).brett);
    CHECK(refill(old, reference::refillBeer, {.7}, pitched).lactics == Approx(old.lactics * (1 - .7 * .4) + .7 * .8));
}

TEST_CASE("Two small refills dilute as the law of shares says", "[culture][property]") {
    CHECK_PROPERTY("1 - (1-a)(1-b)", [] {
        const double a = uniform(0, 1), b = uniform(0, 1);
        const VesselState old = anyVessel();
        const Composition twice =
            refill(refill(old, reference::refillBeer, {a}, usual), reference::refillBeer, {b}, usual).beer;
        const Composition once = refill(old, reference::refillBeer, {1 - (1 - a) * (1 - b)}, usual).beer;
        for (const auto pool : compositionPools)
            RC_ASSERT(std::abs(twice.*pool - once.*pool) < 1e-9);
    });
}

TEST_CASE("Without Brettanomyces there is none after any refill, unless the beer brings it", "[culture]") {
    VesselState clean = reference::settledVessel;
    clean.brett = 0;
    for (int i = 0; i < 5; ++i)
        clean = age(refill(clean, reference::refillBeer, {.35}, usual), {{240}, {16}, 10}, usual);
    CHECK(clean.brett == 0);
    const VesselState infected = refill(clean, reference::refillBeer, {.2}, usual, {.lactics = .1, .brett = .5});
    CHECK(infected.brett == Approx(.1));
    CHECK(infected.lactics == Approx(clean.lactics * (1 - .2 * .4) + .2 * .1));
    CHECK(age(infected, {{365}, {16}, 10}, usual).brett > .5);
}

TEST_CASE("A young vessel holds the beer it was filled with and little culture", "[culture]") {
    const VesselState young = youngVessel(reference::refillBeer, usual);
    CHECK(young.beer == reference::refillBeer);
    CHECK(young.lactics == usual.startLactics);
    CHECK(young.brett == usual.startBrett);
    CHECK(young.lactics < .03);
    CHECK(young.brett < .05);
    CHECK(young.hopTolerance == usual.hopTolerance);
    CHECK(youngVessel(reference::refillBeer, neutral).lactics < .01);
    CHECK(youngVessel(reference::refillBeer, neutral).brett < .05);
}

TEST_CASE("A culture is never more than full, whatever the refill brings", "[culture]") {
    const VesselState full{reference::settledVessel.beer, 1, 1, 15};
    const VesselState mixed = refill(full, reference::refillBeer, {.5}, {}, {.lactics = 1, .brett = 1});
    CHECK(mixed.lactics == 1);
    CHECK(mixed.brett == 1);
}
