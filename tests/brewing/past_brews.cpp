// SPDX-License-Identifier: GPL-3.0-or-later
// A house as its measured brews show it: shrunk when they are few, right when they are many.
#include "brewing/past_brews.h"

#include "model_support.h"
#include "quantity/density.h"
#include "quantity/text.h"

#include <cmath>

using namespace staveline;
using namespace staveline::brewing;

namespace {

std::vector<PastBrew> brewsThatEnd(double points, int count) {
    const Plato planned = reference::brewed(reference::baseRecipe()).finalGravity;
    PastBrew brew{.plannedOriginal = {12}, .plannedFinal = planned};
    brew.final = toPlato(SpecificGravity{toGravity(planned).sg + points / 1000});
    return std::vector<PastBrew>(static_cast<std::size_t>(count), brew);
}

/// Brews of a house that wins `factor` of what its kit says and plans each with what the ones before taught it.
std::vector<PastBrew> brewsWinning(double factor, int count) {
    std::vector<PastBrew> brews;
    for (int i = 0; i < count; ++i) {
        const double planned = houseFrom(brews).efficiency({.5}).of1 / .5;
        PastBrew brew{.plannedOriginal = {12}};
        brew.original = platoFromExtract({extractPerLitre({12}).gPerL * factor / planned / 1000}, {1});
        brews.push_back(brew);
    }
    return brews;
}

} // namespace

TEST_CASE("a brew that was weighed speaks for the kit by itself, whatever its plan was") {
    std::vector<PastBrew> brews;
    for (int i = 0; i < 30; ++i) {
        PastBrew brew{.plannedOriginal = {12}};
        brew.original = {12}; // as planned, from more malt
        brew.won = .9;
        brews.push_back(brew);
    }
    const House house = houseFrom(brews);
    CHECK(house.efficiency({.8}).of1 == Approx(.72).epsilon(.01));
    // Hand: 48 points are 1/0.9 of those that the kit's extract would have been over, some 5 points.
    CHECK(house.extract.points == Approx(-5.3).margin(.3));
    brews = {PastBrew{.plannedOriginal = {12}, .won = 1.0}};
    CHECK(houseFrom(brews).extract.shift == 0);
    CHECK(houseFrom(brews).extract.brews == 1);
    brews = {PastBrew{.plannedOriginal = {12}, .won = 0.0}};
    CHECK(houseFrom(brews).extract.brews == 0);
}

TEST_CASE("a brew whose weights say nothing still speaks for how far its beer ferments", "[brewing][house]") {
    std::vector<PastBrew> brews = brewsThatEnd(-2, 1);
    const House plain = houseFrom(brews);
    brews.front().won = 0;
    CHECK(plain.fermentability.brews == 1);
    CHECK(houseFrom(brews).fermentability.brews == 1);
    CHECK(houseFrom(brews).fermentability.shift == plain.fermentability.shift);
}

TEST_CASE("Without a measured brew the house is as its kit and the model say", "[brewing][house]") {
    for (const auto& brews : {std::vector<PastBrew>{}, std::vector<PastBrew>(5)}) {
        const House house = houseFrom(brews);
        CHECK(house.efficiency({.8}).of1 == .8);
        CHECK(house.parameters({}) == BrewParameters{});
        CHECK(house.extract.error > 0);
        CHECK(houseNotes(house, {.8}).empty());
    }
}

TEST_CASE("Many brews that end lower bring the plan there, one brings it half way", "[brewing][house]") {
    const Plato asModel = reference::brewed(reference::baseRecipe()).finalGravity;
    const auto planned = [&](int brews) {
        const House house = houseFrom(brewsThatEnd(-3, brews));
        const Plato now = reference::brewed(reference::baseRecipe(), house.parameters({})).finalGravity;
        return 1000 * (toGravity(now).sg - toGravity(asModel).sg);
    };
    CHECK(planned(1) == Approx(-1.5).margin(.3));
    CHECK(planned(5) == Approx(-2.5).margin(.3));
    CHECK(planned(40) == Approx(-3).margin(.3));
}

TEST_CASE("A house that plans with what it learnt finds its efficiency and keeps it", "[brewing][house]") {
    CHECK(houseFrom(brewsWinning(.87, 1)).efficiency({.8}).of1 == Approx(.8 * std::pow(.87, .41)).epsilon(.01));
    CHECK(houseFrom(brewsWinning(.87, 30)).efficiency({.8}).of1 == Approx(.8 * .87).epsilon(.01));
    CHECK(houseFrom(brewsWinning(1.1, 30)).efficiency({.8}).of1 == Approx(.8 * 1.1).epsilon(.01));
    CHECK(houseFrom(brewsWinning(3, 30)).efficiency({.8}).of1 == 1);
}

TEST_CASE("Each further brew makes the house surer, whatever it shows", "[brewing][house]") {
    double before = 1;
    for (int n = 0; n < 10; ++n) {
        const double error = houseFrom(brewsThatEnd(n % 2 ? 4 : -4, n)).fermentability.error;
        CHECK(error < before);
        before = error;
    }
}

TEST_CASE("The plan says what it counts on, in points", "[brewing][house]") {
    const auto notes = houseNotes(houseFrom(brewsThatEnd(-3, 5)), {.8});
    REQUIRE(notes.size() == 1);
    CHECK(render(notes[0]) ==
          "5 measured brews ended 3.0 points lower than planned: this plan reckons with 2.5 points of that.");
    CHECK(notes[0].key == "brewing.house.final.low");
    CHECK(houseNotes(houseFrom(brewsThatEnd(2, 1)), {.8})[0].key == "brewing.house.final.high.one");
    CHECK(houseNotes(houseFrom(brewsThatEnd(-.2, 5)), {.8}).empty());
    const auto weak = houseNotes(houseFrom(brewsWinning(.87, 4)), {.8});
    REQUIRE(weak.size() == 1);
    CHECK(weak[0].key == "brewing.house.extract.low");
    for (const auto& each : {notes[0], weak[0]})
        CHECK(render(each).find('{') == std::string::npos);
}

TEST_CASE("A gravity that cannot be does not count", "[brewing][house]") {
    PastBrew bad{.plannedOriginal = {0}};
    bad.original = Plato{-3};
    bad.final = Plato{50};
    CHECK(houseFrom({&bad, 1}).extract.brews == 0);
    CHECK(houseFrom({&bad, 1}).fermentability.brews == 0);
}
