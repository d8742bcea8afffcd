// SPDX-License-Identifier: GPL-3.0-or-later
#include "brewing/refill_beer.h"

#include "model_support.h"
#include "quantity/acid_base.h"
#include "quantity/density.h"
#include "support/neutral_parameters.h"

#include <cmath>

using namespace staveline;
using namespace staveline::brewing;
using reference::anyRecipe;
using reference::baseRecipe;
using reference::between;
using reference::brewed;
using reference::brewedAt;
using reference::inputFor;
using reference::ryeRecipe;

namespace {

bool allFinite(const Composition& beer) {
    return std::all_of(compositionPools.begin(), compositionPools.end(),
                       [&](auto pool) { return std::isfinite(beer.*pool) && beer.*pool >= 0; });
}
Recipe rested(double minutes) {
    Recipe recipe = baseRecipe();
    if (minutes > 0)
        recipe.mash.insert(recipe.mash.begin(), MashStep{{45}, {minutes}});
    return recipe;
}
/// All ferulic units of a beer as free acid [mg/L].
double ferulicUnits(const Composition& beer) {
    return beer.ferulic + beer.esters + beer.vinylGuaiacol / .7734;
}
double largestDifference(const Composition& a, const Composition& b) {
    double largest = 0;
    for (auto pool : compositionPools)
        largest = std::max(largest, std::abs(a.*pool - b.*pool) / (1 + std::abs(a.*pool)));
    return largest;
}

} // namespace

TEST_CASE("Any recipe that resolves gives a real beer", "[brewing][model]") {
    CHECK_PROPERTY("finite, not negative, within bounds", [] {
        const RefillBeer out = brew(inputFor(anyRecipe()));
        RC_ASSERT(allFinite(out.beer));
        RC_ASSERT(out.attenuationLimit > 0 && out.attenuationLimit < 1.1);
        RC_ASSERT(out.conversion > .2 && out.conversion < 1.05);
        RC_ASSERT(out.starch >= 0 && out.starch <= 1);
        RC_ASSERT(out.hexoseTaken >= 0 && out.hexoseTaken <= out.hexoseInWort);
    });
}

TEST_CASE("Any constants a brewer may set give a real beer too", "[brewing][model]") {
    CHECK_PROPERTY("finite, not negative, carbon closed", [] {
        BrewParameters p;
        p.maltotrioseForLactics = between(0, .6);
        p.accessibleDextrin = between(.2, .8);
        p.fermentabilityShift = between(-1, 1);
        p.estersSplit = between(0, .3);
        p.cloveYeastTurnover = between(.4, 1);
        p.phenolReleaseFactor = between(.2, 5);
        p.betaHalfLife65 = between(4, 25);
        p.gelatinisationShift = between(-4, 4);
        p.limitDextrinaseRate = between(.2, 5);
        const RefillBeer out = brew(inputFor(anyRecipe()), p);
        RC_ASSERT(allFinite(out.beer));
        const double left = out.beer.sugar + out.beer.dextrin + out.beer.residue;
        const double soured = out.beer.lactic - p.lacticFresh;
        RC_ASSERT(std::abs(out.hexoseTaken + soured + left - out.hexoseInWort) < 1e-9 * (1 + out.hexoseInWort));
    });
}

TEST_CASE("Carbon closes from wort to refill, souring included", "[brewing][model]") {
    CHECK_PROPERTY("wort = taken + soured + left", [] {
        const BrewParameters parameters;
        const RefillBeer out = brew(inputFor(anyRecipe()), parameters);
        const double soured = out.beer.lactic - parameters.lacticFresh;
        const double left = out.beer.sugar + out.beer.dextrin + out.beer.residue;
        RC_ASSERT(std::abs(out.hexoseTaken + soured + left - out.hexoseInWort) < 1e-9 * (1 + out.hexoseInWort));
    });
}

TEST_CASE("Alcohol is the yield of what the yeast took, less extra glycerol", "[brewing][model]") {
    CHECK_PROPERTY("ethanol from hexose", [] {
        const Recipe recipe = anyRecipe();
        const RefillBeer out = brew(inputFor(recipe));
        const double extra = out.beer.glycerol - 2 * recipe.originalGravity.p / 12;
        RC_ASSERT(std::abs(out.beer.ethanol - .461 * (out.hexoseTaken - extra)) < 1e-9 * (1 + out.beer.ethanol));
        RC_ASSERT(out.alcohol == out.beer.alcohol());
    });
}

TEST_CASE("Two brews of one input are the same to the last bit", "[brewing][model]") {
    CHECK_PROPERTY("bit-identical", [] {
        const BrewInput input = inputFor(anyRecipe());
        const RefillBeer a = brew(input), b = brew(input);
        RC_ASSERT(a.beer == b.beer);
        RC_ASSERT(a.finalGravity == b.finalGravity);
        RC_ASSERT(a.conversion == b.conversion && a.starch == b.starch);
    });
}

TEST_CASE("The order of the grist does not matter", "[brewing][model]") {
    CHECK_PROPERTY("reversed grist", [] {
        Recipe recipe = anyRecipe();
        const Composition forward = brewed(recipe).beer;
        std::reverse(recipe.grist.begin(), recipe.grist.end());
        RC_ASSERT(largestDifference(forward, brewed(recipe).beer) < 1e-6);
    });
}

TEST_CASE("A part may be given in two", "[brewing][model]") {
    Recipe recipe = baseRecipe();
    const Composition once = brewed(recipe).beer;
    recipe.grist = {{"pilsner", {.50}}, {"wheat_malt", {.25}}, {"pilsner", {.25}}};
    CHECK(largestDifference(once, brewed(recipe).beer) < 1e-9);
}

TEST_CASE("A rest given in two halves is one rest", "[brewing][model]") {
    CHECK_PROPERTY("split rest", [] {
        Recipe recipe = anyRecipe();
        for (auto& part : recipe.grist)
            part.late = false;
        const Composition whole = brewed(recipe).beer;
        auto halves = recipe.mash;
        for (auto& step : halves)
            step.minutes = step.minutes / 2;
        recipe.mash.clear();
        for (const auto& half : halves)
            recipe.mash.insert(recipe.mash.end(), {half, half});
        RC_ASSERT(largestDifference(whole, brewed(recipe).beer) < 1e-2);
    });
}

TEST_CASE("Above 65 C a hotter mash always lowers the attenuation limit", "[brewing][model]") {
    CHECK_PROPERTY("monotone in temperature", [] {
        Recipe recipe = anyRecipe(true);
        recipe.mash = {{{between(65, 78)}, {between(30, 120)}}};
        for (auto& part : recipe.grist)
            part.late = false;
        const double cooler = brewed(recipe).attenuationLimit;
        recipe.mash[0].temperature.c += 1;
        RC_ASSERT(brewed(recipe).attenuationLimit < cooler);
    });
}

TEST_CASE("A longer 45 C rest gives more ferulic acid and less glucan", "[brewing][model]") {
    CHECK_PROPERTY("monotone in the rest", [] {
        const double minutes = between(0, 60);
        const Composition shorter = brewed(rested(minutes)).beer, longer = brewed(rested(minutes + 5)).beer;
        RC_ASSERT(ferulicUnits(longer) > ferulicUnits(shorter));
        RC_ASSERT(longer.betaGlucan < shorter.betaGlucan);
    });
}

TEST_CASE("More gravity is more of everything that comes from grain", "[brewing][model]") {
    Recipe recipe = baseRecipe();
    const Composition at12 = brewed(recipe).beer;
    recipe.originalGravity = {14};
    const Composition at14 = brewed(recipe).beer;
    for (auto pool : {&Composition::buffer, &Composition::dextrin, &Composition::residue, &Composition::ethanol,
                      &Composition::otherExtract, &Composition::glycerol, &Composition::betaGlucan,
                      &Composition::arabinoxylan, &Composition::ferulic, &Composition::esters})
        CHECK(at14.*pool > 1.15 * at12.*pool);
    CHECK(at14.isoCis == at12.isoCis);
}

TEST_CASE("Yeasts leave what they cannot take", "[brewing][model]") {
    Recipe recipe = baseRecipe();
    const auto with = [&](const char* yeast) {
        recipe.yeast = yeast;
        return brewed(recipe);
    };
    const auto low = with("low"), clean = with("clean"), high = with("high"), diastatic = with("diastatic");
    CHECK(low.finalGravity > clean.finalGravity);
    CHECK(clean.finalGravity > high.finalGravity);
    CHECK(high.finalGravity > diastatic.finalGravity);
    CHECK(low.alcohol < clean.alcohol);
    CHECK(high.alcohol < diastatic.alcohol);
    CHECK(low.hexoseInWort == Approx(diastatic.hexoseInWort).epsilon(1e-12));
    CHECK(with("saison").beer.vinylGuaiacol > 5 * high.beer.vinylGuaiacol);
    CHECK(with("wine").beer.glycerol == Approx(5.5));
}

TEST_CASE("The boil turns ferulic acid into vinyl guaiacol, mole for mole", "[brewing][model]") {
    Recipe recipe = rested(20);
    recipe.boil = {0};
    const Composition none = brewed(recipe).beer;
    recipe.boil = {60};
    const Composition hour = brewed(recipe).beer;
    recipe.boil = {120};
    const Composition two = brewed(recipe).beer;
    CHECK(hour.vinylGuaiacol > none.vinylGuaiacol);
    CHECK(two.vinylGuaiacol > hour.vinylGuaiacol);
    CHECK(two.ferulic < hour.ferulic);
    CHECK(ferulicUnits(none) == Approx(ferulicUnits(two)).epsilon(1e-9));
    CHECK(hour.esters == none.esters);
}

TEST_CASE("Pre-souring brings the soured part to its titratable acidity at fixed strong ions", "[brewing][model]") {
    const BrewParameters beerAlike = reference::neutralBrew(); // wort as beer: the numbers follow by hand
    const auto brewed = [&](const Recipe& r) { return reference::brewed(r, beerAlike); };
    Recipe recipe = baseRecipe();
    const Composition plain = brewed(recipe).beer;
    recipe.preSourTa = {8};
    recipe.preSoured = {1};
    const Composition all = brewed(recipe).beer;
    CHECK(titratableAcidity(all).gPerL == Approx(8).epsilon(1e-9));
    CHECK(all.sid == plain.sid);
    CHECK(ph(all).ph < ph(plain).ph - .5);
    recipe.preSoured = {.25};
    const Composition quarter = brewed(recipe).beer;
    CHECK(titratableAcidity(quarter).gPerL == Approx(.75 * titratableAcidity(plain).gPerL + .25 * 8).epsilon(1e-9));
    CHECK(plain.ethanol - quarter.ethanol == Approx(.461 * (quarter.lactic - plain.lactic)).epsilon(1e-9));
}

TEST_CASE("Soured wort is titrated as wort: it starts at its own pH and buffers more", "[brewing][model]") {
    Recipe recipe = baseRecipe();
    const Composition plain = brewed(recipe).beer;
    const BrewParameters p;
    Composition wort = plain;
    wort.buffer = p.wortBuffer;
    const double ownTa = titratableAcidity(withPh(wort, {p.phWort})).gPerL;
    recipe.preSoured = {1};
    recipe.preSourTa = {8};
    CHECK(brewed(recipe).beer.lactic == Approx(plain.lactic + 8 - ownTa).epsilon(1e-3));
    recipe.preSourTa = {ownTa - .1};
    CHECK(brewed(recipe).beer.lactic == plain.lactic);
}

TEST_CASE("Pre-souring never takes acid out", "[brewing][model]") {
    Recipe recipe = baseRecipe();
    recipe.preSoured = {.5};
    recipe.preSourTa = {1}; // below what the beer has anyway
    CHECK(brewed(recipe).beer == brewed(baseRecipe()).beer);
}

TEST_CASE("Bitterness arrives whole", "[brewing][model]") {
    Recipe recipe = baseRecipe();
    for (double ibu : {0., 10., 35.}) {
        recipe.bitterness = {ibu};
        CHECK(brewed(recipe).beer.bitterness().ibu == Approx(ibu).margin(1e-12));
    }
}

TEST_CASE("Late hops leave more alpha acids beside their bitterness, up to what beer holds", "[brewing][model]") {
    Recipe recipe = baseRecipe();
    const auto alpha = [&] { return brewed(recipe).beer.alphaAcids; };
    const BrewParameters p;
    CHECK(alpha() == Approx(10 * p.alphaKept * .4726 / .4759).epsilon(1e-3)); // an hour: as much alpha as iso
    recipe.hops = {{"early", {.05}, {60}, {.5}}, {"late", {.05}, {15}, {.5}}};
    CHECK(alpha() == Approx(10 * p.alphaKept * .5 * (.4726 / .4759 + .8292 / .1668)).epsilon(1e-3));
    recipe.hops = {{"flame-out", {.05}, {0}, {1}}};
    recipe.bitterness = {60};
    CHECK(alpha() == 14);
    recipe.bitterness = {0};
    CHECK(alpha() == 0);
}

TEST_CASE("Fresh beer has the pH it is meant to have", "[brewing][model]") {
    BrewParameters parameters;
    parameters.phFresh = 4.15;
    for (double plato : {8., 12., 16.}) {
        Recipe recipe = baseRecipe();
        recipe.originalGravity = {plato};
        CHECK(ph(brewed(recipe, parameters).beer).ph == Approx(4.15).epsilon(1e-6));
    }
}

TEST_CASE("Final gravity agrees with Balling's sum of extract and alcohol", "[brewing][model]") {
    // Two independent bookkeepings of one fermentation: carbon here, densities there.
    for (const auto& recipe : {baseRecipe(), ryeRecipe(), reference::hotRecipe()}) {
        const RefillBeer out = brewed(recipe);
        CHECK(out.alcohol.pct == Approx(alcoholByVolume(recipe.originalGravity, out.finalGravity).pct).margin(.25));
    }
}

TEST_CASE("A neutral multiplier changes nothing, others act where they should", "[brewing][model]") {
    const RefillBeer base = brewed(rested(20));
    BrewParameters p;
    p.ferulicFactor = 2;
    const Composition doubled = brewed(rested(20), p).beer;
    CHECK(ferulicUnits(doubled) - doubled.esters > 1.5 * (ferulicUnits(base.beer) - base.beer.esters));
    CHECK(doubled.coumaric == base.beer.coumaric);
    p = {};
    p.coumaricFactor = 2;
    CHECK(brewed(rested(20), p).beer.coumaric == Approx(2 * base.beer.coumaric).epsilon(1e-12));
    p = {};
    p.phenolReleaseFactor = 1.5;
    CHECK(brewed(rested(20), p).beer.ferulic > 1.1 * base.beer.ferulic);
    p = {};
    p.fermentabilityShift = .2;
    CHECK(brewed(rested(20), p).attenuationLimit > base.attenuationLimit + .02);
    p = {};
    p.wortEsters = 16;
    CHECK(brewed(rested(20), p).beer.esters == Approx(2 * base.beer.esters).epsilon(1e-12));
    p = {};
    p.maltotrioseForLactics = 0;
    CHECK(brewed(rested(20), p).beer.sugar == Approx(0).margin(1e-12));
}

TEST_CASE("A mash too cold to gelatinise says so in its conversion", "[brewing][model]") {
    const RefillBeer cold = brewedAt(50), good = brewedAt(66);
    CHECK(cold.conversion < .25);
    CHECK(good.conversion > .98);
    CHECK(good.starch < .001);
    CHECK(brewedAt(80, 20).starch > .02);
}

TEST_CASE("No beer ends below the limit of its wort, however cool the mash", "[brewing][model]") {
    for (double celsius = 45; celsius <= 78; celsius += 1) {
        CAPTURE(celsius);
        const RefillBeer beer = brewedAt(celsius);
        const double apparent = 1 - beer.finalGravity / Plato{12};
        CHECK(apparent <= beer.attenuationLimit);
        CHECK(apparent > .75 * beer.attenuationLimit);
    }
}

TEST_CASE("The extract of the wort is all in the beer: sugars, alcohol and the rest", "[brewing][model]") {
    for (double celsius : {50., 55., 57., 60., 66., 72.}) {
        CAPTURE(celsius);
        const RefillBeer beer = brewedAt(celsius);
        const BrewParameters p;
        const double carbohydrate = beer.beer.carbohydrate(), hexose = beer.hexoseTaken;
        const double extract = extractModel({12}).gPerL;
        // A gram of hexose was 0.93 to 0.975 g of extract: glucose, maltose and maltotriose.
        CHECK(beer.beer.otherExtract + carbohydrate + .93 * hexose < extract * 1.002);
        CHECK(beer.beer.otherExtract + carbohydrate + .975 * hexose > extract * .998);
        CHECK(beer.beer.ethanol == Approx(p.ethanolPerHexose * hexose));
    }
}

TEST_CASE("A mash that leaves the starch closed knows how much", "[brewing][model]") {
    CHECK(brewedAt(66).opens());
    CHECK(brewedAt(62).opens());
    CHECK_FALSE(brewedAt(57).opens());
    CHECK(brewedAt(57).opened == Approx(.24).margin(.03));
    CHECK(brewedAt(45).opened < .01);
}

TEST_CASE("A late part misses the hotter fermentability of the rests before", "[brewing][model]") {
    Recipe recipe = ryeRecipe();
    recipe.mash = {{{63}, {40}}, {{74}, {30}}};
    const RefillBeer early = brewed(recipe);
    recipe.grist[2].late = true;
    const RefillBeer late = brewed(recipe);
    CHECK(late.attenuationLimit < early.attenuationLimit - .02);
    CHECK(late.conversion == Approx(early.conversion).margin(.02));
}
