// SPDX-License-Identifier: GPL-3.0-or-later
#include "estimate/carried_states.h"

#include "support/catch.h"

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::culture;
using namespace staveline::estimate;
using namespace staveline::forward;
using namespace staveline::ingredient;

namespace {

constexpr Day opened = std::chrono::year{2025} / 1 / 1;

Day after(int days) {
    return opened + std::chrono::days{days};
}

RefillBeer plainBeer() {
    Recipe recipe;
    recipe.grist = {{"pilsner", {1}, false}};
    recipe.mash = {{{66}, {60}}};
    return brew(resolve(recipe, builtInPantry(), jumpRate).value(), {});
}

/// Opened, refilled by a third after 100 days, its gravity read after 150.
CarriedStates refilledCask() {
    BlendEvent refill, reading;
    refill.on = after(100);
    refill.share = {.35};
    reading.on = after(150);
    reading.gravity = Plato{1};
    CarriedStates states({refill, reading}, plainBeer(), {{}, {16}, 10}, {});
    states.start(opened, youngVessel(plainBeer().beer, {}));
    return states;
}

VesselState on(CarriedStates& states, Day day) {
    return states.on(day, states.countUntil(day, false), {});
}

} // namespace

TEST_CASE("events count to the end of a day, or to its first filling", "[estimate][states]") {
    auto states = refilledCask();
    CHECK(states.countUntil(after(99), false) == 0);
    CHECK(states.countUntil(after(100), false) == 1);
    CHECK(states.countUntil(after(100), true) == 0);
    CHECK(states.countUntil(after(150), true) == 2); // a reading puts nothing in
}

TEST_CASE("what an event needs is asked for once", "[estimate][states]") {
    auto states = refilledCask();
    CHECK(states.known(2) == 0);
    on(states, after(120));
    CHECK(states.known(2) == 1);
    CHECK(states.known(0) == 0);
    on(states, after(200));
    CHECK(states.known(2) == 2);
}

TEST_CASE("a day is the same whatever was looked at before, to the last bit", "[estimate][states]") {
    auto plain = refilledCask(), often = refilledCask();
    for (const int day : {10, 37, 61, 99, 111, 149, 171, 199})
        on(often, after(day));
    for (const int day : {90, 100, 140, 150, 200})
        CHECK(on(often, after(day)) == on(plain, after(day)));
}

TEST_CASE("a look back in time is what an earlier look would have seen", "[estimate][states]") {
    auto forward = refilledCask(), back = refilledCask();
    const auto early = on(forward, after(90));
    on(back, after(200));
    CHECK(on(back, after(90)) == early);
}

TEST_CASE("a measured gravity corrects the state on its day", "[estimate][states]") {
    auto states = refilledCask();
    const auto dextrins = [](const VesselState& state) { return state.beer.dextrin + state.beer.residue; };
    const auto read = on(states, after(150));
    CHECK(dextrins(read) != Approx(dextrins(on(states, after(149)))).epsilon(.01));
}
