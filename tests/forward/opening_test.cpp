// SPDX-License-Identifier: GPL-3.0-or-later
#include "brewing/gravity.h"
#include "forward/forward_support.h"
#include "quantity/acid_base.h"
#include "support/settled.h"

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::culture;
using namespace staveline::forward;
using namespace staveline::forward_test;

namespace {

const Day opened = std::chrono::sys_days{std::chrono::year{2024} / 3 / 2};

VesselState open(OpeningFacts facts, const Parameters& parameters = usual) {
    facts.on = opened;
    return openingState(facts, baseInput(), {{}, {16}, 10}, parameters);
}
double acidAfter(double years, const Parameters& parameters) {
    return titratableAcidity(open({.yearsRunning = years}, parameters).beer).gPerL;
}

double shareOfD(const Composition& beer) {
    return beer.dextrin / (beer.dextrin + beer.residue);
}

} // namespace

TEST_CASE("A vessel run for long on one recipe is where its cycles lead", "[forward]") {
    const RefillBeer beer = brew(baseInput(), usual.brew);
    const Plan plan{.refillShare = {.35}, .interval = {240}};
    const Outcome settled = reference::settledOutcome(usual, youngVessel(beer.beer, usual.culture), beer, plan);
    const Outcome now = outcomeOf(open({.yearsRunning = 40}), usual);
    for (const Dimension d : allDimensions)
        CHECK(now.scores[d] == Approx(settled.scores[d]).margin(.01));
}

TEST_CASE("A vessel just filled holds the fresh beer, a year makes it sour", "[forward]") {
    const Composition fresh = brew(baseInput(), usual.brew).beer;
    CHECK(open({.yearsRunning = 0}).beer == fresh);
    CHECK(open({.yearsRunning = 0}) == youngVessel(fresh, usual.culture));
    const double one = titratableAcidity(open({.yearsRunning = 1}).beer).gPerL;
    const double four = titratableAcidity(open({.yearsRunning = 4}).beer).gPerL;
    CHECK(one > titratableAcidity(fresh).gPerL + 1);
    CHECK(four > one);
    CHECK(acidAfter(4, neutral) > acidAfter(1, neutral) + .5);
}

TEST_CASE("Regression: what three years more make of a vessel as shipped", "[forward][regression]") {
    CHECK(acidAfter(4, usual) - acidAfter(1, usual) == Approx(.41551).margin(1e-4));
}

TEST_CASE("The years are spent in whole intervals, the rest before the first", "[forward]") {
    const Composition fresh = brew(baseInput(), usual.brew).beer;
    const VesselState first = age(youngVessel(fresh, usual.culture), {{365.25 * 2 - 300}, {16}, 10}, usual.culture);
    const VesselState second = age(refill(first, fresh, {.5}, usual.culture), {{300}, {16}, 10}, usual.culture);
    CHECK(open({.usualInterval = {300}, .usualShare = {.5}, .yearsRunning = 2}) == second);
}

TEST_CASE("Brettanomyces at the opening: at home, just pitched or none", "[forward]") {
    const VesselState home = open({.yearsRunning = 4});
    const VesselState young = open({.yearsRunning = 4, .brett = BrettAtOpening::young});
    const VesselState none = open({.yearsRunning = 4, .brett = BrettAtOpening::none});
    CHECK(home.brett > .9);
    CHECK(young.brett == usual.culture.startBrett);
    CHECK(none.brett == 0);
    CHECK(young.beer == none.beer);
    CHECK(none.beer.ethylGuaiacol == 0);
    CHECK(none.beer.dextrin > 5 * home.beer.dextrin);
    CHECK(outcomeOf(none, usual).scores[Dimension::funk] < 1);
}

TEST_CASE("A measured gravity or bitterness is met", "[forward]") {
    CHECK(apparentGravity(open({.gravity = Plato{.9}}).beer).p == Approx(.9));
    CHECK(open({.bitterness = Ibu{14}}).beer.bitterness().ibu == Approx(14));
}

TEST_CASE("Each measurement moves only its own pools", "[forward]") {
    const VesselState plain = open({});
    const VesselState drier = open({.gravity = Plato{-.2}});
    VesselState expected = plain;
    expected.beer.dextrin = drier.beer.dextrin, expected.beer.residue = drier.beer.residue;
    CHECK(drier == expected);
    CHECK(shareOfD(drier.beer) == Approx(shareOfD(plain.beer)));
    const VesselState bitter = open({.bitterness = Ibu{20}});
    CHECK(bitter.beer.isoTrans / bitter.beer.isoCis == Approx(plain.beer.isoTrans / plain.beer.isoCis));
}

TEST_CASE("A gravity below what other extract leaves room for empties the dextrins", "[forward]") {
    const Composition beer = open({.gravity = Plato{-3}}).beer;
    CHECK(beer.dextrin == 0);
    CHECK(beer.residue == 0);
}

TEST_CASE("Opening is total: any numbers give a state", "[forward][property]") {
    CHECK_PROPERTY("numbers out of any range", [] {
        const OpeningFacts facts{.on = opened,
                                 .usualInterval = {anyNumber()},
                                 .usualShare = {anyNumber()},
                                 .yearsRunning = std::min(30.0, anyNumber()),
                                 .gravity = Plato{anyNumber()},
                                 .bitterness = Ibu{anyNumber()}};
        const VesselState state = openingState(facts, baseInput(), {{}, {anyNumber()}, anyNumber()}, usual);
        RC_ASSERT(sound(state));
        RC_ASSERT(state.beer.lactic >= 0 && state.beer.dextrin >= 0 && state.beer.isoCis >= 0);
        RC_ASSERT(sound(age(state, {{240}, {16}, 10}, usual.culture)));
    });
}

TEST_CASE("Apparent gravity of fresh beer is that of Balling", "[forward]") {
    // 12 P, real extract 4.48 %: apparent 2.82 by 0.1808 and 0.8192.
    const Composition beer{.lactic = .2, .otherExtract = 44.8, .glycerol = 2, .original = 12};
    CHECK(apparentGravity(beer).p == Approx((4.48 - .1808 * 12) / .8192));
    CHECK(realExtractAt(apparentGravity(beer), {12}) == Approx(realExtractOf(beer)));
}
