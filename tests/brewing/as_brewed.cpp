// SPDX-License-Identifier: GPL-3.0-or-later
// A measured final gravity corrects the beer that goes into the vessel.
#include "brewing/as_brewed.h"
#include "brewing/brew_plan.h"
#include "quantity/density.h"
#include "support/catch.h"

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::ingredient;

namespace {

constexpr Plato original{12};

RefillBeer brewed() {
    Recipe recipe;
    recipe.grist = {{"pilsner", {1}, false}};
    recipe.mash = {{{66}, {60}}};
    recipe.originalGravity = original;
    return brew(resolve(recipe, builtInPantry(), jumpRate).value());
}

double hexose(const Composition& beer) {
    return beer.sugar + beer.dextrin + beer.residue;
}

} // namespace

TEST_CASE("the gravity is the measured one, above and below what was expected") {
    const auto beer = brewed();
    for (double shift : {-.8, -.3, 0., .4, 1.5}) {
        const Plato measured{beer.finalGravity.p + shift};
        CHECK(withFinalGravity(beer, original, measured).finalGravity.p == Approx(measured.p).margin(1e-6));
    }
}

TEST_CASE("carbon closes: what is not there was fermented") {
    const auto beer = brewed();
    const BrewParameters p;
    for (double shift : {-.8, .6}) {
        const auto corrected = withFinalGravity(beer, original, {beer.finalGravity.p + shift}, p);
        const double fermented = hexose(beer.beer) - hexose(corrected.beer);
        CHECK(corrected.beer.ethanol - beer.beer.ethanol == Approx(p.ethanolPerHexose * fermented).margin(1e-9));
        CHECK((shift < 0) == (fermented > 0));
        CHECK(corrected.beer.lactic == beer.beer.lactic);
        CHECK(corrected.beer.isoCis == beer.beer.isoCis);
    }
}

// Balling's relation between original gravity, apparent extract and alcohol (ASBC Beer-4A form), not our beer model.
TEST_CASE("alcohol follows Balling within a tenth of a percent for a tenth of a Plato") {
    const auto beer = brewed();
    const auto lower = withFinalGravity(beer, original, {beer.finalGravity.p - 1});
    const double told = lower.alcohol.pct - beer.alcohol.pct;
    const double balling =
        alcoholByVolume(original, {beer.finalGravity.p - 1}).pct - alcoholByVolume(original, beer.finalGravity).pct;
    CHECK(told == Approx(balling).margin(.1));
}

TEST_CASE("what cannot be met is met as far as it can be") {
    const auto beer = brewed();
    const auto dry = withFinalGravity(beer, original, {-5});
    CHECK(hexose(dry.beer) == Approx(0).margin(1e-9));
    CHECK(dry.finalGravity.p > -5);
    const auto unfermented = withFinalGravity(beer, original, original);
    CHECK(unfermented.beer.ethanol >= 0);
    CHECK(unfermented.beer.ethanol < 1);
}

namespace {

/// A plan for 84 L into the vessel, brewed as it says.
struct Weighed {
    BrewInput input;
    RefillBeer beer;
    BrewPlan plan;

    explicit Weighed(Recipe recipe, const Equipment& kit) {
        if (recipe.grist.empty())
            recipe.grist = {{"pilsner", {.7}, false}, {"wheat_malt", {.2}, false}, {"flaked_oats", {.1}, false}};
        recipe.mash = {{{66}, {60}}};
        input = resolve(recipe, builtInPantry(), jumpRate).value();
        beer = brew(input);
        BatchNeed need;
        need.intoVessel = {84};
        plan = planBrew(input, beer, kit, need).value();
        for (std::size_t i = 0; i < plan.grist.size(); ++i)
            input.recipe.grist[i].mass = plan.grist[i].mass;
    }
    [[nodiscard]] WonExtract won(const Equipment& kit) const {
        const auto found = wonExtract(input, beer, kit, plan.intoFermenter);
        REQUIRE(found);
        return *found;
    }
};

} // namespace

TEST_CASE("what was brewed as the kit plans it won what the kit says") {
    for (const double efficiency : {.6, .74, .95})
        for (const double sugar : {0., .15}) {
            Equipment kit;
            kit.efficiency = {efficiency};
            Recipe recipe;
            recipe.sugarShare = {sugar};
            CAPTURE(efficiency, sugar);
            CHECK(Weighed(recipe, kit).won(kit).efficiency.of1 == Approx(efficiency).epsilon(1e-9));
        }
}

TEST_CASE("twice the malt for the same wort is half the efficiency, and as much less certain") {
    const Equipment kit;
    Weighed made(Recipe{}, kit);
    const WonExtract once = made.won(kit);
    for (GristPart& part : made.input.recipe.grist)
        part.mass = *part.mass * 2;
    const WonExtract twice = made.won(kit);
    CHECK(twice.efficiency.of1 == Approx(once.efficiency.of1 / 2));
    CHECK(twice.error / twice.efficiency == Approx(once.error / once.efficiency));
    // 0.001 in 1.048, 2 % of the litres, 1 % of the malt's extract: 3.1 % of it together.
    CHECK(once.error / once.efficiency == Approx(.031).margin(.002));
}

TEST_CASE("an efficiency needs every grain weighed and something that was mashed") {
    const Equipment kit;
    Weighed made(Recipe{}, kit);
    made.input.recipe.grist[1].mass.reset();
    CHECK_FALSE(isWeighed(made.input.recipe));
    CHECK_FALSE(wonExtract(made.input, made.beer, kit, {90}));
    CHECK_FALSE(isWeighed(Recipe{}));
}

TEST_CASE("shares follow the kilograms, and stay where a scale reads no finer") {
    Recipe recipe;
    recipe.grist = {{"pilsner", {.75}, false, Kilograms{5.1}}, {"wheat_malt", {.25}, false, Kilograms{3.41}}};
    const Recipe weighed = asWeighed(recipe);
    CHECK(weighed.grist[0].share.of1 == Approx(5.1 / 8.51));
    CHECK(weighed.grist[1].share.of1 == Approx(3.41 / 8.51));
    CHECK(weighed.grist[1].mass == Kilograms{3.41});
    recipe.grist[0].mass = {7.501};
    recipe.grist[1].mass = {2.5};
    CHECK(asWeighed(recipe) == recipe);
    recipe.grist[0].mass = {12.};
    recipe.grist[1].mass.reset();
    CHECK(asWeighed(recipe) == recipe);
    CHECK_FALSE(withoutWeights(recipe).grist[0].mass);
    CHECK(withoutWeights(recipe).grist[0].share == recipe.grist[0].share);
}

TEST_CASE("kilograms to weigh out are no finer than a scale of their size reads") {
    CHECK(asScaleReads(Kilograms{14.6664}).kg == Approx(14.67));
    CHECK(asScaleReads(Kilograms{3.51764}).kg == Approx(3.518));
}
