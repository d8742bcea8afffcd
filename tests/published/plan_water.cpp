// SPDX-License-Identifier: GPL-3.0-or-later
// Water, heat and extract of a brew against published figures.
#include "brewing/brew_plan.h"
#include "brewing/heat.h"
#include "quantity/density.h"
#include "support/catch.h"

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::ingredient;

namespace {

constexpr double pound = .45359237, quart = .946353; // kg, L
double celsius(double fahrenheit) {
    return (fahrenheit - 32) / 1.8;
}
double fahrenheit(Celsius temperature) {
    return temperature.c * 1.8 + 32;
}

} // namespace

TEST_CASE("Palmer's mash of three rests (How to Brew, chapter 16, figures from memory)") {
    // 8 lb at 70 F with 1 qt/lb: 110.8 F for a rest at 104 F; water of 210 F: 4.9 qt to 140 F, 5.0 qt more to 158 F.
    // The book takes .2 qt/lb for the heat of malt, which is .417 L/kg; ours is .41.
    const Kilograms malt{8 * pound};
    Litres water{8 * quart};
    CHECK(fahrenheit(strikeTemperature({celsius(104)}, malt, {celsius(70)}, water, {0}, {celsius(70)})) ==
          Approx(110.8).margin(.2));
    const Litres first = infusion({celsius(104)}, {celsius(140)}, malt, water, {0}, {celsius(210)});
    CHECK(first.l / quart == Approx(4.9).margin(.05));
    water += first;
    const Litres second = infusion({celsius(140)}, {celsius(158)}, malt, water, {0}, {celsius(210)});
    CHECK(second.l / quart == Approx(5.0).margin(.05));
}

TEST_CASE("the default shrinkage is that of water between boiling and 20 C") {
    // CRC Handbook of Chemistry and Physics, density of water: 0.9584 at 100 C, 0.9982 at 20 C [g/mL]
    CHECK(Equipment{}.shrinkage.of1 == Approx(1 - .9584 / .9982).margin(5e-4));
}

TEST_CASE("a pound of sugar in a US gallon gives 46 points (Palmer, How to Brew, extract table)") {
    const Plato wort = platoFromExtract({pound}, {4 * quart});
    CHECK(toGravity(wort).sg == Approx(1.046).margin(5e-4));
}

TEST_CASE("a brew of 46 points from sugar weighs a pound a gallon (same figure, the other way round)") {
    BrewInput input;
    Grain sugar;
    sugar.kind = GrainKind::sugar;
    sugar.extractDryBasis = 1;
    sugar.moisture = 0;
    Grain malt;
    malt.diastaticPowerWk = 280;
    input.grist = {{malt, {1}, false}};
    input.recipe.mash = {{{66}, {60}}};
    input.recipe.originalGravity = toPlato({1.0462});
    input.recipe.sugarShare = {.25};
    input.sugar = sugar;
    Equipment kit;
    kit.kettleLoss = {0};
    BatchNeed need;
    need.fixedBrewLength = Litres{400 * quart}; // a hundred gallons
    const auto plan = planBrew(input, {}, kit, need);
    REQUIRE(plan);
    CHECK(plan->sugar.kg / pound == Approx(25).margin(.1));
}
