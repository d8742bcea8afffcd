// SPDX-License-Identifier: GPL-3.0-or-later
#include "brewing/primary.h"

#include "model_support.h"
#include "quantity/density.h"

#include <cmath>

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::ingredient;
using reference::allOf;
using reference::between;
using reference::brewed;

namespace {

/// The reference pantry with one more grain that keeps its own fermentability.
Pantry withOwn(const std::string& id, double fermentability, GrainKind kind = GrainKind::caramel) {
    Pantry pantry = reference::pantry();
    Grain own = pantry.grain("caramel").value();
    own.id = id;
    own.kind = kind;
    own.ownRdf = fermentability;
    pantry.put(own);
    return pantry;
}
BrewInput partly(const std::string& id, double share, const Pantry& pantry, double celsius = 65) {
    Recipe recipe = allOf("pilsner", {{{celsius}, {60}}});
    recipe.grist = {{"pilsner", {1 - share}}, {id, {share}}};
    return resolve(recipe, pantry, {1}).value();
}
double sharesSum(const MaltExtract& e) {
    return e.total();
}

const StarchPools typical{.02, .001, .05, .15, .55, .14, .05};

} // namespace

TEST_CASE("Shares of the malt's extract sum to 1 and show the mash unchanged", "[brewing][wort]") {
    const auto grist = sumsOf(reference::inputFor(reference::baseRecipe()).grist);
    const MaltWort wort = maltWort(typical, grist, 0);
    const MaltExtract mashed = extractOf(typical);
    CHECK(sharesSum(wort.shares) == Approx(1).epsilon(1e-12));
    CHECK(wort.conversion == Approx(mashed.total()).epsilon(1e-14));
    CHECK(wort.shares.maltose == Approx(mashed.maltose / mashed.total()).epsilon(1e-14));
    CHECK(wort.starch == typical.polymer);
}

TEST_CASE("The calibration shifts the logit of the fermentability and keeps the sum", "[brewing][wort]") {
    const auto grist = sumsOf(reference::inputFor(reference::baseRecipe()).grist);
    const auto logit = [](double x) { return std::log(x / (1 - x)); };
    const double base = logit(maltWort(typical, grist, 0).shares.fermentable());
    for (double shift : {-.4, -.1, .15, .3}) {
        const MaltWort wort = maltWort(typical, grist, shift);
        CHECK(logit(wort.shares.fermentable()) - base == Approx(shift).epsilon(1e-9));
        CHECK(sharesSum(wort.shares) == Approx(1).epsilon(1e-12));
        CHECK(wort.shares.dextrin >= 0);
    }
    CHECK(maltWort(typical, grist, 20).shares.dextrin == Approx(0).margin(1e-12));
}

TEST_CASE("A grain with the fermentability the mash gives anyway is neutral", "[brewing][wort]") {
    const BrewInput plain = reference::inputFor(allOf("pilsner", {{{65}, {60}}}));
    const double limit = brew(plain).attenuationLimit;
    const auto mixed = partly("own", .3, withOwn("own", limit * realPerApparent));
    // Not exactly: the caramel brings no enzymes, so the rest of the mash is a little weaker.
    CHECK(brew(mixed).attenuationLimit == Approx(limit).margin(.01));
}

TEST_CASE("Caramel malt lowers the attenuation limit in step with its extract", "[brewing][wort]") {
    const Pantry pantry = withOwn("own", .40);
    const double base = brew(reference::inputFor(allOf("pilsner", {{{65}, {60}}}))).attenuationLimit;
    const double at10 = base - brew(partly("own", .10, pantry)).attenuationLimit;
    const double at20 = base - brew(partly("own", .20, pantry)).attenuationLimit;
    // Rule of the trade: 10 % caramel costs 2-3 points (common practice, no source).
    CHECK(at10 > .02);
    CHECK(at10 < .045);
    CHECK(at20 == Approx(2 * at10).epsilon(.15));
}

TEST_CASE("A more fermentable caramel gives a more fermentable wort", "[brewing][wort]") {
    double before = 0;
    for (double own : {0., .2, .4, .6, .8}) {
        const double limit = brew(partly("own", .2, withOwn("own", own))).attenuationLimit;
        CHECK(limit > before);
        before = limit;
    }
}

TEST_CASE("Malt extract needs no enzymes and does not thin them", "[brewing][wort]") {
    const Pantry pantry = withOwn("dry", .62, GrainKind::extract);
    Recipe recipe = allOf("dry", {{{65}, {30}}});
    const RefillBeer all = brew(resolve(recipe, pantry, {1}).value());
    CHECK(all.attenuationLimit == Approx(.62 / realPerApparent).epsilon(1e-9));
    CHECK(all.conversion == Approx(1).epsilon(1e-9));
    const auto half = sumsOf(partly("dry", .5, pantry).grist);
    CHECK(half.first.starch.enzyme == Approx(280. / 250).epsilon(1e-12));
    const auto caramel = sumsOf(partly("own", .5, withOwn("own", .4)).grist);
    CHECK(caramel.first.starch.enzyme == Approx(140. / 250).epsilon(1e-12));
}

TEST_CASE("Enzymes are counted to one and a half times a pale malt", "[brewing][wort]") {
    Pantry pantry = reference::pantry();
    Grain strong = pantry.grain("pilsner").value();
    strong.id = "strong";
    strong.diastaticPowerWk = 500;
    pantry.put(strong);
    const auto sums = sumsOf(resolve(allOf("strong", {{{65}, {60}}}), pantry, {1}).value().grist);
    CHECK(sums.first.starch.enzyme == Approx(1.5).epsilon(1e-12));
}

TEST_CASE("Late grain takes its starch, enzymes and precursors with it", "[brewing][wort]") {
    Recipe recipe = reference::ryeRecipe();
    const auto early = sumsOf(reference::inputFor(recipe).grist);
    recipe.grist[2].late = true;
    const auto sums = sumsOf(reference::inputFor(recipe).grist);
    CHECK_FALSE(early.hasLate);
    CHECK(sums.hasLate);
    CHECK(sums.first.starch.starch + sums.late.starch.starch == Approx(1).epsilon(1e-12));
    CHECK(sums.first.starch.enzyme + sums.late.starch.enzyme == Approx(early.first.starch.enzyme).epsilon(1e-12));
    CHECK(sums.late.phenols.ferulicBound == Approx(.25 * 75));
    CHECK(sums.late.glucan.malt == Approx(.25 * 10));
    CHECK(sums.first.phenols.ferulicBound + sums.late.phenols.ferulicBound == Approx(sums.ferulicBound));
}

TEST_CASE("Converting power is measured against what needs converting", "[brewing][wort]") {
    CHECK(convertingPower(reference::inputFor(reference::baseRecipe()).grist) == Approx(.75 * 280 + .25 * 250));
    CHECK(convertingPower(partly("own", .5, withOwn("own", .4)).grist) == Approx(280));
    const auto extractOnly = resolve(allOf("dry", {{{65}, {30}}}), withOwn("dry", .62), {1}).value();
    CHECK(std::isinf(convertingPower(extractOnly.grist)));
}

TEST_CASE("Hexose in the wort is its extract with the water of hydrolysis", "[brewing][wort]") {
    CHECK_PROPERTY("between 1 and 1.098 g per g of carbohydrate", [] {
        const Recipe recipe = reference::anyRecipe();
        const BrewInput input = reference::inputFor(recipe);
        const RefillBeer beer = brew(input);
        const double extract = extractModel(recipe.originalGravity).gPerL;
        const double carbohydrate = extract - .12 / beer.conversion * extract * (1 - recipe.sugarShare.of1);
        RC_ASSERT(beer.hexoseInWort > carbohydrate * .995);
        RC_ASSERT(beer.hexoseInWort < carbohydrate * 1.105);
    });
}

TEST_CASE("The yeast's bite is taken from the wort and nothing else", "[brewing][wort]") {
    CHECK_PROPERTY("taken + left = wort, pools not negative", [] {
        const WortHexose wort{between(0, 40), between(0, 80), between(0, 30), between(0, 90), 120};
        Yeast yeast;
        yeast.takesMaltose = between(0, 1);
        yeast.takesMaltotriose = between(0, 1);
        yeast.takesDextrin = between(0, 1);
        BrewParameters parameters;
        parameters.accessibleDextrin = between(.2, .8);
        parameters.maltotrioseForLactics = between(0, .6);
        const Attenuation a = attenuate(wort, yeast, {12}, parameters);
        RC_ASSERT(std::abs(a.taken + a.sugar + a.dextrin + a.residue - wort.total()) < 1e-9);
        RC_ASSERT(std::min({a.sugar, a.dextrin, a.residue}) >= 0);
    });
}

TEST_CASE("A yeast that takes dextrin leaves mostly the hard part", "[brewing][wort]") {
    const WortHexose wort{10, 50, 15, 30, 120};
    Yeast yeast;
    yeast.takesMaltotriose = 1;
    const Attenuation none = attenuate(wort, yeast, {12}, {});
    CHECK(none.dextrin == Approx(.5 * 30));
    yeast.takesDextrin = .5;
    const Attenuation half = attenuate(wort, yeast, {12}, {});
    CHECK(half.dextrin == Approx((.5 - .35) / .5 * 15));
    CHECK(half.residue == Approx(.7 * 15));
    yeast.takesDextrin = 1;
    CHECK(attenuate(wort, yeast, {12}, {}).dextrin == 0);
}

TEST_CASE("Extra glycerol costs alcohol", "[brewing][wort]") {
    const WortHexose wort{10, 50, 15, 30, 120};
    Yeast plain, rich;
    rich.glycerolAt12P = 5.5;
    const Attenuation a = attenuate(wort, plain, {12}, {}), b = attenuate(wort, rich, {12}, {});
    CHECK(b.glycerol - a.glycerol == Approx(3.5));
    CHECK(a.ethanol - b.ethanol == Approx(.461 * 3.5));
}

TEST_CASE("Sugar ferments by its own fermentability", "[brewing][wort]") {
    Recipe recipe = reference::baseRecipe();
    const RefillBeer none = brewed(recipe);
    recipe.sugarShare = {.10};
    const RefillBeer sucrose = brewed(recipe);
    recipe.sugar = "honey";
    const RefillBeer honey = brewed(recipe);
    recipe.sugar = "maltodextrin";
    const RefillBeer maltodextrin = brewed(recipe);
    CHECK(sucrose.beer.ethanol > none.beer.ethanol + 1);
    CHECK(sucrose.attenuationLimit == none.attenuationLimit);
    // 5 % of a tenth of 125.6 g extract is dextrin, as hexose.
    CHECK(honey.beer.dextrin + honey.beer.residue - sucrose.beer.dextrin - sucrose.beer.residue ==
          Approx(.05 * 12.558 * 1.098).epsilon(1e-3));
    CHECK(sucrose.hexoseTaken - honey.hexoseTaken == Approx(.05 * 12.558 * 1.0526).epsilon(1e-3));
    CHECK(maltodextrin.beer.ethanol < none.beer.ethanol);
    CHECK(sucrose.beer.otherExtract == Approx(.9 * none.beer.otherExtract).epsilon(1e-12));
    CHECK(sucrose.beer.betaGlucan < none.beer.betaGlucan);
}

TEST_CASE("A poor mash needs more grain for the same gravity", "[brewing][wort]") {
    const Recipe recipe = reference::baseRecipe();
    CHECK(gristGravity(recipe, 1).p == Approx(12));
    CHECK(gristGravity(recipe, .8).p == Approx(15));
    CHECK(gristGravity(recipe, .1).p == Approx(24));
    GristSums grist;
    grist.extract = .8;
    CHECK(gristPerLitre(recipe, 1, grist) == Approx(.15697).epsilon(1e-4));
}

TEST_CASE("Decarboxylation moves acid to vinyl phenol by molar mass", "[brewing][wort]") {
    double acid = 4, vinyl = .1;
    decarboxylate(acid, vinyl, .25, constants::primary::vinylGuaiacolPerFerulic);
    CHECK(acid == Approx(3));
    CHECK(vinyl == Approx(.1 + .7734));
    CHECK(constants::primary::vinylGuaiacolPerFerulic == Approx(150.17 / 194.18).margin(1e-4));
    CHECK(constants::primary::vinylPhenolPerCoumaric == Approx(120.15 / 164.16).margin(1e-4));
}
