// SPDX-License-Identifier: GPL-3.0-or-later
// What acidulated malt, hulls and milk sugar do to a refill, with the built-in pantry.
#include "brewing/brew_plan.h"
#include "ingredient/pantry.h"
#include "quantity/acid_base.h"
#include "quantity/text.h"
#include "support/catch.h"

#include <algorithm>

using namespace staveline;
using namespace staveline::brewing;

namespace {

Recipe withPart(const std::string& grain, double share, const std::string& rest = "pilsner") {
    Recipe recipe;
    recipe.grist = {{rest, {1 - share}}, {grain, {share}}};
    recipe.mash = {{{66}, {60}}};
    return recipe;
}
RefillBeer refillOf(const Recipe& recipe) {
    return brew(resolve(recipe, ingredient::builtInPantry(), {1}).value());
}
BrewPlan planned(const Recipe& recipe) {
    const auto input = resolve(recipe, ingredient::builtInPantry(), {1}).value();
    return planBrew(input, brew(input), Equipment{}, BatchNeed{Litres{80}, Share{.05}, {}}).value();
}
const Message* findingOf(const BrewPlan& plan, std::string_view key) {
    const auto at =
        std::find_if(plan.findings.begin(), plan.findings.end(), [&](const Message& each) { return each.key == key; });
    return at == plan.findings.end() ? nullptr : &*at;
}

} // namespace

TEST_CASE("Acidulated malt brings its lactic acid into the refill", "[brewing]") {
    const RefillBeer plain = refillOf(withPart("wheat_malt", .05)), sour = refillOf(withPart("acidulated", .05));
    CHECK(plain.maltAcid == 0);
    // 12 P is 126 g/L of extract, from about 160 g/L of malt; a twentieth of it holds 3 % of lactic acid
    CHECK(sour.maltAcid == Approx(126 / .79 * .05 * .03).epsilon(.05));
    CHECK(sour.beer.lactic - plain.beer.lactic == Approx(sour.maltAcid));
    // an equivalent of acid is an equivalent of base in the titration
    CHECK((titratableAcidity(sour.beer) - titratableAcidity(plain.beer)).gPerL == Approx(sour.maltAcid).epsilon(.001));
    CHECK(ph(sour.beer) < ph(plain.beer));
    const RefillBeer twice = refillOf(withPart("acidulated", .10));
    CHECK(twice.maltAcid == Approx(2 * sour.maltAcid).epsilon(.03));
}

TEST_CASE("A refill that is soured before the boil needs less for it with acidulated malt", "[brewing]") {
    Recipe plain = withPart("wheat_malt", .05), sour = withPart("acidulated", .05);
    plain.preSoured = sour.preSoured = Share{1};
    const RefillBeer a = refillOf(plain), b = refillOf(sour);
    CHECK(b.beer.lactic - b.maltAcid < a.beer.lactic);
    CHECK(b.beer.lactic == Approx(a.beer.lactic).epsilon(.12)); // the acidity aimed at is the recipe's
}

TEST_CASE("The plan tells what acidulated malt brings, with its range", "[brewing]") {
    CHECK(findingOf(planned(withPart("wheat_malt", .05)), "brewing.malt_acid") == nullptr);
    const BrewPlan plan = planned(withPart("acidulated", .05));
    const Message* told = findingOf(plan, "brewing.malt_acid");
    REQUIRE(told);
    CHECK(render(*told).starts_with("0.24 g/L of lactic acid come from the acidulated malt (0.08 g/L to 0.32 g/L"));
}

TEST_CASE("Rice hulls give no extract and help the run-off", "[brewing]") {
    const BrewPlan sticky = planned(withPart("flaked_oats", .2)), plain = planned(withPart("wheat_malt", .05));
    CHECK(findingOf(sticky, "brewing.run_off_slow"));
    Recipe helped = withPart("flaked_oats", .2);
    helped.grist[0].share = Share{.75};
    helped.grist.push_back({"rice_hulls", {.05}});
    CHECK_FALSE(findingOf(planned(helped), "brewing.run_off_slow"));
    const BrewPlan hulls = planned(withPart("rice_hulls", .05, "pilsner"));
    const BrewPlan bare = planned(withPart("pilsner", .05, "pilsner"));
    CHECK((hulls.gristMass / bare.gristMass) == Approx(1 / .95).epsilon(.01));
    CHECK(plain.originalGravity == hulls.originalGravity);
}

TEST_CASE("Hulls alone are no grist", "[brewing]") {
    Recipe recipe = withPart("rice_hulls", .5, "rice_hulls");
    const auto refused = resolve(recipe, ingredient::builtInPantry(), {1});
    REQUIRE_FALSE(refused);
    CHECK(refused.error().path == "/grist");
    CHECK(refused.error().cause.key == "brewing.no_extract");
}

TEST_CASE("The primary leaves milk sugar for the culture", "[brewing]") {
    Recipe plain = withPart("wheat_malt", .05);
    plain.sugarShare = Share{.1};
    Recipe milk = plain;
    milk.sugar = "lactose";
    const RefillBeer a = refillOf(plain), b = refillOf(milk);
    CHECK(b.finalGravity > a.finalGravity);
    CHECK(b.beer.dextrin + b.beer.residue > a.beer.dextrin + a.beer.residue + 10);
}
