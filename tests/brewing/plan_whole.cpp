// SPDX-License-Identifier: GPL-3.0-or-later
// From a recipe by name to kilograms and degrees: pantry, mash model and sizing together.
#include "plan_support.h"

#include "quantity/density.h"

#include <cmath>

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::ingredient;
using namespace staveline::plan_tests;

namespace {

Recipe usual() {
    Recipe recipe;
    recipe.grist = {{"pilsner", {.75}, false}, {"wheat_malt", {.25}, false}};
    recipe.mash = {{{66}, {60}}};
    return recipe;
}
BrewPlan sized(const Recipe& recipe, double litres, const Equipment& kit = {}) {
    const auto input = resolve(recipe, builtInPantry(), kit.heatingRate);
    REQUIRE(input);
    return planned(*input, need(litres), kit, brew(*input));
}

} // namespace

TEST_CASE("the usual refill on the usual kit fits and is plausible") {
    const auto plan = sized(usual(), 84);
    CHECK(plan.findings.empty());
    CHECK(plan.gristMass.kg == Approx(19.2).margin(.6)); // 97 L at 12 P, four fifths efficiency: some 200 g a litre
    CHECK(plan.mash[0].waterTemperature.c == Approx(77.5).margin(.5)); // 66 + 48 (.41 * 19.2 + 6)/57.6
    CHECK(plan.strikeAndInfusion.l + plan.sparge.l == Approx(124).margin(4));
    CHECK(plan.hops[0].mass.g == Approx(85).margin(10)); // 10 IBU from 5 % alpha
    CHECK(plan.colour.ebc == Approx(7.5).margin(1.5));
    CHECK(toGravity(plan.originalGravity).sg == Approx(1.0484).margin(1e-4));
    CHECK(plan.alcohol.pct > 4.5);
    CHECK(plan.alcohol.pct < 5.5);
    CHECK(plan.finalGravity.p > 1);
    CHECK(plan.primaryDays == 14);
}

TEST_CASE("a ferulic rest by infusion takes more water, and its plan says when it no longer fits") {
    Recipe recipe = usual();
    recipe.mash = {{{45}, {20}}, {{66}, {60}}};
    const auto plan = sized(recipe, 84);
    CHECK(plan.mash[1].how == MashStage::How::infusion);
    CHECK(plan.mashVolume.l > 110);
    CHECK(has(plan.findings, "brewing.tun_thicker"));
    recipe.path = MashPath::ramp;
    CHECK_FALSE(has(sized(recipe, 84).findings, "brewing.tun_thicker"));
}

TEST_CASE("a rest too cool to convert takes more malt for the same wort") {
    Recipe cool = usual();
    cool.mash = {{{58}, {60}}};
    const auto plan = sized(cool, 60);
    CHECK(plan.gristMass.kg > 1.2 * sized(usual(), 60).gristMass.kg);
    CHECK(plan.extract.kg == Approx(sized(usual(), 60).extract.kg));
}

TEST_CASE("oats and raw grain late: warned of in the plan") {
    Recipe recipe = usual();
    recipe.grist = {{"pilsner", {.65}, false}, {"flaked_oats", {.15}, true}, {"raw_rye", {.2}, true}};
    recipe.mash = {{{45}, {20}}, {{66}, {60}}};
    const auto plan = sized(recipe, 40);
    CHECK(has(plan.findings, "brewing.late_cools"));
    CHECK(has(plan.findings, "brewing.run_off_slow"));
    CHECK_FALSE(has(plan.cautions, "caution.mash.restEatsGlucan"));
}
