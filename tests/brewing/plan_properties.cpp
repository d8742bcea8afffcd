// SPDX-License-Identifier: GPL-3.0-or-later
// What holds for any brew that can be sized.
#include "plan_support.h"

#include "quantity/density.h"
#include "support/property.h"

#include <cmath>

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::plan_tests;

namespace {

double between(double low, double high) {
    return low + (high - low) * *rc::gen::inRange(0, 1001) / 1000;
}

Equipment anyKit() {
    Equipment kit;
    kit.efficiency = {between(.5, 1)};
    kit.boilOff = {between(0, 20)};
    kit.kettleLoss = {between(0, 10)};
    kit.shrinkage = {between(0, .05)};
    kit.absorption = {between(.4, 1.3)};
    kit.fermenterLoss = {between(0, .2)};
    kit.transferLoss = {between(0, 3)};
    kit.heatingRate = {between(.2, 2)};
    kit.tunWaterEquivalent = {between(0, 20)};
    kit.grainTemperature = {between(2, 28)};
    return kit;
}
BrewInput anyInput() {
    BrewInput input = simple();
    const double oatShare = between(0, .3), ryeShare = between(0, .3);
    input.grist = {{malt("pilsner"), {1 - oatShare - ryeShare}, false},
                   {oats(), {oatShare}, *rc::gen::arbitrary<bool>()},
                   {rye(), {ryeShare}, false}};
    input.recipe.mash = {{{between(40, 52)}, {20}}, {{between(60, 74)}, {60}}};
    input.recipe.path = *rc::gen::element(MashPath::jump, MashPath::ramp);
    input.recipe.liquorToGrist = {between(1.8, 5)};
    input.recipe.originalGravity = {between(5, 20)};
    input.recipe.bitterness = {between(0, 40)};
    input.recipe.boil = {between(1, 120)};
    input.recipe.sugarShare = {between(0, .25)};
    input.sugar = sucrose();
    return input;
}
RefillBeer anyBeer() {
    RefillBeer fresh = beer();
    fresh.conversion = between(.5, 1);
    return fresh;
}
bool near(double a, double b) {
    return std::abs(a - b) <= 1e-9 * std::max(std::abs(a), std::abs(b));
}

} // namespace

TEST_CASE("water in is water out") {
    CHECK_PROPERTY("water balance", [] {
        const auto kit = anyKit();
        const auto input = anyInput();
        const auto plan = planBrew(input, anyBeer(), kit, need(between(10, 200)));
        RC_ASSERT(plan);
        const double in = plan->strikeAndInfusion.l + plan->sparge.l;
        const double boiledAway = kit.boilOff.lPerH * input.recipe.boil.min / 60 * (1 - kit.shrinkage.of1);
        double out = kit.absorption.lPerKg * plan->gristMass.kg + boiledAway + kit.kettleLoss.l +
                     plan->intoFermenter.l * kit.fermenterLoss.of1 + kit.transferLoss.l + plan->leftOver.l +
                     plan->intoVessel.l;
        for (const auto* key : {"brewing.water_thicker", "brewing.water_heat"})
            if (const auto* tooMuch = find(plan->findings, key))
                out += argument<Litres>(tooMuch, "over").l;
        RC_ASSERT(near(in, out));
        RC_ASSERT(plan->sparge.l >= 0);
    });
}

TEST_CASE("the extract of grist and sugar is that of the wort") {
    CHECK_PROPERTY("extract balance", [] {
        const auto kit = anyKit();
        const auto input = anyInput();
        const auto fresh = anyBeer();
        const auto plan = planBrew(input, fresh, kit, need(between(10, 200)));
        RC_ASSERT(plan);
        double kilograms = plan->sugar.kg * input.sugar.extractDryBasis * (1 - input.sugar.moisture);
        double shares = 0;
        for (std::size_t i = 0; i < plan->grist.size(); ++i) {
            const auto& grain = input.grist[i].grain;
            kilograms += plan->grist[i].mass.kg * grain.extractDryBasis * (1 - grain.moisture) * kit.efficiency.of1 *
                         fresh.conversion;
            shares += plan->grist[i].mass / plan->gristMass;
        }
        const double wort = plan->postBoil.l * extractPerLitre(input.recipe.originalGravity).gPerL / 1000;
        RC_ASSERT(near(kilograms, wort));
        RC_ASSERT(near(plan->extract.kg, wort));
        RC_ASSERT(near(shares, 1));
        RC_ASSERT(near(
            plan->preBoilHot.l * (1 - kit.shrinkage.of1) * extractPerLitre(plan->preBoilGravity).gPerL / 1000, wort));
    });
}

TEST_CASE("the bitterness of the additions is that of the recipe") {
    CHECK_PROPERTY("bitterness", [] {
        auto input = anyInput();
        const double first = between(0, 1);
        input.recipe.hops = {{"a", {between(.01, .2)}, {input.recipe.boil}, {first}},
                             {"b", {between(.01, .2)}, {input.recipe.boil / 2}, {1 - first}}};
        const auto plan = planBrew(input, anyBeer(), anyKit(), need(between(10, 200)));
        RC_ASSERT(plan);
        RC_ASSERT(near(plan->hops[0].brings.ibu + plan->hops[1].brings.ibu, input.recipe.bitterness.ibu));
        RC_ASSERT(plan->hops[0].mass.g >= 0 && plan->hops[1].mass.g >= 0);
    });
}

TEST_CASE("a kit and a batch k times as large take k times as much") {
    CHECK_PROPERTY("scaling", [] {
        const double k = between(.2, 8);
        const auto kit = anyKit();
        auto larger = kit;
        larger.boilOff = kit.boilOff * k;
        larger.kettleLoss = kit.kettleLoss * k;
        larger.transferLoss = kit.transferLoss * k;
        larger.tunWaterEquivalent = kit.tunWaterEquivalent * k;
        const auto input = anyInput();
        const auto fresh = anyBeer();
        const double litres = between(10, 200);
        const auto small = planBrew(input, fresh, kit, need(litres));
        const auto large = planBrew(input, fresh, larger, need(litres * k));
        RC_ASSERT(small && large);
        RC_ASSERT(near(large->intoFermenter.l, k * small->intoFermenter.l));
        RC_ASSERT(near(large->preBoilHot.l, k * small->preBoilHot.l));
        RC_ASSERT(near(large->gristMass.kg, k * small->gristMass.kg));
        RC_ASSERT(near(large->sugar.kg, k * small->sugar.kg));
        RC_ASSERT(near(large->strikeAndInfusion.l, k * small->strikeAndInfusion.l));
        RC_ASSERT(std::abs(large->sparge.l - k * small->sparge.l) < 1e-8 * large->preBoilHot.l);
        RC_ASSERT(near(large->mashVolume.l, k * small->mashVolume.l));
        RC_ASSERT(near(large->hops[0].mass.g, k * small->hops[0].mass.g));
        RC_ASSERT(near(large->colour.ebc, small->colour.ebc));
        RC_ASSERT(near(large->mash[0].waterTemperature.c, small->mash[0].waterTemperature.c));
        RC_ASSERT(near(large->mash[1].heating.min, small->mash[1].heating.min));
    });
}

TEST_CASE("a poorer mash takes more grist, a longer boil more water") {
    CHECK_PROPERTY("monotone", [] {
        const auto kit = anyKit();
        auto input = anyInput();
        const auto fresh = anyBeer();
        const auto batch = need(between(10, 200));
        const auto plan = planBrew(input, fresh, kit, batch);
        auto poorer = fresh;
        poorer.conversion *= .9;
        const auto more = planBrew(input, poorer, kit, batch);
        RC_ASSERT(plan && more);
        RC_ASSERT(near(more->gristMass.kg, plan->gristMass.kg / .9));
        input.recipe.boil += Minutes{30};
        const auto longer = planBrew(input, fresh, kit, batch);
        RC_ASSERT(longer);
        RC_ASSERT(longer->preBoilHot.l - plan->preBoilHot.l >= kit.boilOff.lPerH / 2 - 1e-9);
        RC_ASSERT(near(longer->gristMass.kg, plan->gristMass.kg));
    });
}
