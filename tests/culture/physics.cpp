// SPDX-License-Identifier: GPL-3.0-or-later
// Directions that brewers know, over many vessels: hops, warmth, draws, air.
#include "culture/culture_support.h"
#include "quantity/acid_base.h"

using namespace staveline;
using namespace staveline::culture;
using namespace staveline::culture_test;

namespace {

double acidity(const VesselState& state) {
    return titratableAcidity(state.beer).gPerL;
}

} // namespace

TEST_CASE("Hops hold lactics back", "[culture][property]") {
    CHECK_PROPERTY("more bitterness, not more acid", [] {
        VesselState mild = anyVessel(), bitter = mild;
        bitter.beer.isoCis += uniform(1, 40);
        const AgeConditions c{{uniform(30, 400)}, {uniform(8, 22)}, 10};
        RC_ASSERT(age(bitter, c, usual).beer.lactic <= age(mild, c, usual).beer.lactic + 1e-6);
    });
    CHECK_PROPERTY("a tolerant culture is held back less", [] {
        const Ibu hops{uniform(1, 60)};
        const Ph at{uniform(3, 5)};
        RC_ASSERT(hopFreedom(hops, 40, at, usual) > hopFreedom(hops, 10, at, usual));
    });
    CHECK_PROPERTY("hops bite harder in sour beer", [] {
        const Ibu hops{uniform(1, 60)};
        RC_ASSERT(hopFreedom(hops, 20, {3.3}, usual) < hopFreedom(hops, 20, {4.3}, usual));
    });
}

TEST_CASE("The hop brake is open without hops and half closed at the tolerance", "[culture]") {
    CHECK(hopFreedom({0}, 20, {4.2}, usual) == 1);
    CHECK(hopFreedom({20}, 20, {4.2}, usual) == Approx(.5));
    struct Row {
        double tolerance, ibu, freedom;
    };
    // Regression: the reference model's table at pH 4.2, exponent 2.
    for (const Row row : {Row{10, 5, .80}, Row{10, 20, .20}, Row{20, 10, .80}, Row{20, 30, .31}, Row{45, 20, .84}})
        CHECK(hopFreedom({row.ibu}, row.tolerance, {4.2}, usual) == Approx(row.freedom).margin(.006));
}

TEST_CASE("Bitterness teaches the culture, its absence lets it forget", "[culture]") {
    VesselState hopped = reference::settledVessel, plain = hopped;
    hopped.beer.isoCis = 30;
    plain.beer.isoCis = plain.beer.isoTrans = 0;
    const AgeConditions c{{200}, {16}, 10};
    CHECK(age(hopped, c, neutral).hopTolerance > 30 + 5);
    CHECK(age(plain, c, neutral).hopTolerance < 30 - 3);
    CHECK(age(plain, c, usual).hopTolerance < 30 - 3);
}

TEST_CASE("Regression: what bitterness teaches the culture as shipped", "[culture][regression]") {
    // Less than at neutral constants: 45 IBU is the most, and wood takes the bitterness.
    VesselState hopped = reference::settledVessel;
    hopped.hopTolerance = 30;
    hopped.beer.isoCis = 30;
    CHECK(age(hopped, {{200}, {16}, 10}, usual).hopTolerance == Approx(32.223).margin(.001));
}

TEST_CASE("Alpha acids that were not isomerised brake like bitterness and are lost like trans", "[culture]") {
    VesselState alpha = reference::settledVessel, iso = alpha;
    alpha.beer = iso.beer = reference::refillBeer;
    alpha.beer.isoCis = iso.beer.isoCis = 0;
    alpha.beer.isoTrans = 0, alpha.beer.alphaAcids = iso.beer.isoTrans = 12;
    const AgeConditions c{{200}, {16}, 10};
    const VesselState a = age(alpha, c, usual), b = age(iso, c, usual);
    CHECK(a.beer.lactic == Approx(b.beer.lactic));
    CHECK(a.beer.alphaAcids == Approx(b.beer.isoTrans));
    CHECK(a.beer.bitterness().ibu == 0);
}

TEST_CASE("Strong beer slows lactics from 8 % vol and stops them at 14", "[culture]") {
    const auto madeAt = [](double percent) {
        VesselState state = {reference::refillBeer, .5, 0, 20};
        state.beer.ethanol = percent * ethanolPerPercent;
        state.beer.sugar = 20;
        return age(state, {{10}, {18}, 0}, usual).beer.lactic - state.beer.lactic;
    };
    CHECK(madeAt(5) == Approx(madeAt(7.9)).epsilon(1e-9));
    CHECK(madeAt(11) < .6 * madeAt(7.9));
    CHECK(madeAt(11) > 0);
    CHECK(madeAt(14.5) == 0);
}

TEST_CASE("A warmer cellar sours more by the next draw", "[culture][property]") {
    CHECK_PROPERTY("10 to 22 C", [] {
        const VesselState filled = refill(reference::settledVessel, reference::refillBeer, {uniform(.1, .8)}, usual);
        const double cold = uniform(10, 20), days = uniform(60, 400);
        const auto at = [&](double t) { return acidity(age(filled, {{days}, {t}, 10}, usual)); };
        RC_ASSERT(at(cold + 2) > at(cold));
    });
}

TEST_CASE("Neither frost nor heat sours: the culture stands still below 2 C and above 38 C", "[culture]") {
    const VesselState filled = refill(reference::settledVessel, reference::refillBeer, {.35}, usual);
    const auto end = [&](double celsius) { return age(filled, {{240}, {celsius}, 0}, usual); };
    for (double celsius : {-2., 2., 38., 45.}) {
        CAPTURE(celsius);
        CHECK(end(celsius).beer.lactic == filled.beer.lactic);
        CHECK(end(celsius).beer.dextrin == filled.beer.dextrin);
        CHECK(end(celsius).beer.ethylGuaiacol == filled.beer.ethylGuaiacol);
    }
    CHECK(acidity(end(4)) < acidity(end(10)));
    CHECK(acidity(end(35)) < acidity(end(28)));
    // In a cellar nothing changes.
    CultureParameters endless = usual;
    endless.coldest = -1e3, endless.warmest = 1e3;
    for (double celsius : {10., 16., 28.})
        CHECK(age(filled, {{240}, {celsius}, 0}, endless) == end(celsius));
}

TEST_CASE("A bigger refill leaves less acid right after", "[culture][property]") {
    CHECK_PROPERTY("share of fresh beer", [] {
        const double share = uniform(0, .9);
        const auto after = [](double f) {
            return acidity(refill(reference::settledVessel, reference::refillBeer, {f}, usual));
        };
        RC_ASSERT(after(share + .1) < after(share));
    });
}

TEST_CASE("What evaporates leaves its acid, its extract and its buffer behind", "[culture]") {
    CultureParameters dry = usual;
    dry.evaporation = .12;
    const AgeConditions c{{365.25}, {16}, 0};
    VesselState still = reference::settledVessel; // where nothing lives, nothing is made of what grows stronger
    still.lactics = still.brett = 0;
    const VesselState tight = age(still, c, usual), open = age(still, c, dry);
    const double factor = std::exp(.12);
    CHECK(acidity(open) == Approx(factor * acidity(tight)));
    CHECK(open.beer.lactic == Approx(factor * tight.beer.lactic));
    CHECK(open.beer.buffer == Approx(factor * tight.beer.buffer));
    CHECK(open.beer.betaGlucan == Approx(factor * tight.beer.betaGlucan));
    CHECK(open.beer.bitterness().ibu == Approx(factor * tight.beer.bitterness().ibu));
    CHECK(open.beer.ethanol == tight.beer.ethanol);
    CHECK(acidity(age(reference::settledVessel, c, dry)) > 1.1 * acidity(age(reference::settledVessel, c, usual)));
    CHECK(age(reference::settledVessel, {{0}, {16}, 10}, dry) == reference::settledVessel);
}

TEST_CASE("Air makes acetic acid and nothing else sour", "[culture]") {
    const auto after = [](double oxygen) { return age(reference::settledVessel, {{365}, {16}, oxygen}, usual).beer; };
    CHECK(after(200).acetic > after(10).acetic + .15);
    CHECK(after(200).lactic == Approx(after(10).lactic).epsilon(.02));
    CHECK(after(200).ethanol < after(10).ethanol);
}

TEST_CASE("Without Brettanomyces dextrin stays and nothing smells of horse", "[culture]") {
    VesselState clean = {reference::refillBeer, .5, 0, 20};
    const VesselState end = age(clean, {{300}, {16}, 0}, usual);
    CHECK(end.brett == 0);
    CHECK(end.beer.dextrin == reference::refillBeer.dextrin);
    CHECK(end.beer.residue == reference::refillBeer.residue);
    CHECK(end.beer.ethylPhenol == 0);
    CHECK(end.beer.ethylGuaiacol == 0);
}

TEST_CASE("The enzyme of diastatic yeast opens dextrin without Brettanomyces", "[culture]") {
    CultureParameters diastatic = usual;
    diastatic.enzymeOpening = .01;
    const VesselState filled = {reference::refillBeer, .5, 0, 20};
    const AgeConditions c{{240}, {16}, 0};
    const Composition plain = age(filled, c, usual).beer, opened = age(filled, c, diastatic).beer;
    CHECK(opened.dextrin < .3 * plain.dextrin);
    CHECK(opened.residue < plain.residue);
    CHECK(opened.lactic > plain.lactic + .5);
    CHECK(opened.ethanol > plain.ethanol + 3);
    CHECK(opened.ethylGuaiacol == 0);
}

TEST_CASE("Lactics without sugar decline, with sugar they do not", "[culture]") {
    VesselState starved = {reference::refillBeer, .8, 0, 20}, fed = starved;
    starved.beer.sugar = 0;
    fed.beer.sugar = 40;
    const AgeConditions c{{100}, {20}, 0};
    CHECK(age(starved, c, usual).lactics == Approx(.8 * std::exp(-100 * usual.starvedDecline)).epsilon(1e-4));
    CHECK(age(fed, c, usual).lactics > .9);
}

TEST_CASE("Brettanomyces grows four times slower for 10 C below 22 C, twice faster above", "[culture]") {
    // Little of it in much food: the logarithm of its number rises by rate and days.
    VesselState pitched = {reference::refillBeer, 0, 1e-5, 20};
    pitched.beer.sugar = 1e6;
    const auto rate = [&](double celsius) { return std::log(age(pitched, {{1}, {celsius}, 0}, usual).brett / 1e-5); };
    const double decline = usual.decline;
    CHECK((rate(20) + decline) / (rate(10) + decline / 2) == Approx(4).epsilon(.02));
    CHECK((rate(28) + decline * 1.74) / (rate(22) + decline * 1.15) == Approx(std::exp2(.6)).epsilon(.02));
}

TEST_CASE("Regression: esters left after a year as shipped", "[culture][regression]") {
    CHECK(age({{.sid = 16, .esters = 8}, 0, 1, 20}, {{365}, {16}, 0}, usual).beer.esters ==
          Approx(7.6517).margin(.001));
}

TEST_CASE("Esters set both acids free, and Brettanomyces makes both ethyl phenols of them", "[culture]") {
    const VesselState start = {{.sid = 16, .dextrin = 20, .esters = 8}, 0, 1, 20};
    const Composition end = age(start, {{2000}, {18}, 0}, usual).beer;
    const double split = start.beer.esters - end.esters;
    CHECK(split > 1);
    CHECK(end.ethylGuaiacol > .3 * split);
    // By molar mass 4-ethylphenol is .95 of 4-ethylguaiacol from as much acid; both lose alike on the way.
    CHECK(end.ethylPhenol / end.ethylGuaiacol == Approx(.95 * usual.coumaricPerEster).epsilon(.02));
}

TEST_CASE("Regression: bitterness left in the bottle after months at 20 C", "[culture][regression]") {
    struct Row {
        double months, percent;
    };
    for (const Row row : {Row{3, 92.59}, Row{6, 86.07}, Row{9, 80.31}, Row{12, 75.20}, Row{18, 66.55}, Row{24, 59.53},
                          Row{36, 48.86}, Row{48, 41.06}, Row{60, 35.00}}) {
        const VesselState fresh{{.sid = 16, .isoCis = 68, .isoTrans = 32}, 0, 0, 20};
        CAPTURE(row.months);
        CHECK(age(fresh, {{row.months * 30.4375}, {20}, 0}, neutral).beer.bitterness().ibu ==
              Approx(row.percent).margin(.01));
    }
}

TEST_CASE("Cis bitterness lasts, trans does not", "[culture]") {
    VesselState state = reference::settledVessel;
    state.beer.isoCis = 10, state.beer.isoTrans = 10;
    const Composition later = age(state, {{365.25}, {20}, 10}, neutral).beer;
    CHECK(later.isoTrans == Approx(5).epsilon(1e-9));
    CHECK(later.isoCis == Approx(10 * std::exp2(-.2)).epsilon(1e-9));
    const Composition cold = age(state, {{365.25}, {10}, 10}, neutral).beer;
    CHECK(cold.isoTrans == Approx(10 * std::exp2(-1 / 3.)).epsilon(1e-9));
    // The vessel takes its share of both, warm or cold.
    const Composition vessel = age(state, {{365.25}, {10}, 10}, usual).beer;
    CHECK(vessel.isoTrans / cold.isoTrans == Approx(std::exp(-12 * usual.vesselHopLoss)).epsilon(1e-9));
    CHECK(vessel.isoCis / cold.isoCis == Approx(vessel.isoTrans / cold.isoTrans).epsilon(1e-9));
}
