// SPDX-License-Identifier: GPL-3.0-or-later
// A measured final gravity corrects the beer that goes into the vessel.
#include "brewing/as_brewed.h"
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
