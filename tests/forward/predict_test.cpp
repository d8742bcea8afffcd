// SPDX-License-Identifier: GPL-3.0-or-later
#include "forward/forward_support.h"
#include "quantity/acid_base.h"
#include "support/settled.h"

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::culture;
using namespace staveline::forward;
using namespace staveline::forward_test;

namespace {

const Plan cycle{.toThisDraw = {0}, .refillShare = {.35}, .interval = {240}, .temperature = {16}};

Outcome afterCycles(const Parameters& p, int count) {
    VesselState state = reference::settledVessel;
    Outcome outcome;
    for (int i = 0; i < count; ++i) {
        outcome = predict(p, state, vectorRefill(), cycle).nextDraw;
        state = outcome.state;
    }
    return outcome;
}

void checkScores(const Scores& got, double acid, double funk, double body, double margin) {
    CHECK(got[Dimension::acidity] == Approx(acid).margin(margin));
    CHECK(got[Dimension::funk] == Approx(funk).margin(margin));
    CHECK(got[Dimension::body] == Approx(body).margin(margin));
}

Scores nextScores(const Recipe& recipe, const Plan& plan = cycle) {
    return predict(usual, reference::settledVessel, reference::inputFor(recipe), plan).nextDraw.scores;
}

} // namespace

TEST_CASE("Regression V5: the next draw of a settled vessel", "[forward][regression]") {
    const Outcome next = predict(neutral, reference::settledVessel, vectorRefill(), cycle).nextDraw;
    CHECK(next.ph.ph == Approx(3.308753).margin(.0005));
    CHECK(next.ta.gPerL == Approx(5.912516).epsilon(1e-4));
    CHECK(next.bitterness.ibu == Approx(7.484129).epsilon(1e-4));
    checkScores(next.scores, 5.137083, 6.303123, 4.339369, .001);
}

TEST_CASE("Regression V7: a young vessel after a year", "[forward][regression]") {
    const VesselState young = youngVessel(reference::refillBeer, neutral.culture);
    const Outcome year = outcomeOf(age(young, {{365}, {16}, 10}, neutral.culture), neutral);
    CHECK(year.ph.ph == Approx(3.463583).margin(.0005));
    CHECK(year.ta.gPerL == Approx(4.510858).epsilon(1e-4));
    checkScores(year.scores, 4.018341, 5.443532, 4.507526, .001);
}

TEST_CASE("Regression V9: drained, refilled, a cold month", "[forward][regression]") {
    const Plan drained{.toThisDraw = {0}, .refillShare = {1}, .interval = {30}, .temperature = {10}};
    const Outcome next = predict(neutral, reference::settledVessel, vectorRefill(), drained).nextDraw;
    CHECK(next.ph.ph == Approx(3.987408).margin(.0005));
    CHECK(next.ta.gPerL == Approx(2.429371).epsilon(1e-4));
    checkScores(next.scores, 1.927163, 1.688958, 5.197154, .001);
}

TEST_CASE("Regression V10: twenty equal cycles", "[forward][regression]") {
    const Outcome end = afterCycles(neutral, 20);
    const Composition& beer = end.state.beer;
    CHECK(beer.lactic == Approx(4.04605).epsilon(1e-4));
    CHECK(end.ta.gPerL == Approx(5.913967).epsilon(1e-4));
    CHECK(end.ph.ph == Approx(3.306996).margin(.0005));
    CHECK(beer.ethylGuaiacol == Approx(1.080551).epsilon(1e-4));
    CHECK(beer.ethylPhenol == Approx(.268202).epsilon(1e-4));
    CHECK(beer.carbohydrate() == Approx(4.066962).epsilon(1e-4));
    CHECK(end.gravity.p == Approx(.148561).epsilon(2e-3));
    CHECK(end.alcohol.pct == Approx(6.29286).epsilon(1e-4));
    CHECK(end.state.lactics == Approx(.425847).epsilon(1e-4));
    CHECK(end.state.hopTolerance == Approx(33.656912).epsilon(1e-4));
    checkScores(end.scores, 5.132935, 6.275321, 4.329135, .001);
}

TEST_CASE("Regression: the usual vessel as shipped, settled and young", "[forward][regression]") {
    Recipe recipe = reference::baseRecipe();
    recipe.yeast = "ale_clean";
    const RefillBeer beer = brew(resolve(recipe, ingredient::builtInPantry(), {1}).value(), usual.brew);
    const VesselState young = youngVessel(beer.beer, usual.culture);
    const Outcome end = reference::settledOutcome(usual, young, beer, cycle);
    CHECK(end.ta.gPerL == Approx(5.937796).epsilon(1e-4));
    CHECK(end.ph.ph == Approx(3.304821).margin(.0005));
    CHECK(end.state.beer.lactic == Approx(4.069341).epsilon(1e-4));
    CHECK(end.state.beer.ethylGuaiacol == Approx(.817818).epsilon(1e-4));
    CHECK(end.state.beer.ethylPhenol == Approx(.436571).epsilon(1e-4));
    CHECK(end.gravity.p == Approx(.184186).epsilon(2e-3));
    CHECK(end.alcohol.pct == Approx(6.302206).epsilon(1e-4));
    CHECK(end.bitterness.ibu == Approx(2.291903).epsilon(1e-4));
    CHECK(end.state.lactics == Approx(.496382).epsilon(1e-4));
    CHECK(end.state.hopTolerance == Approx(22.642988).epsilon(1e-4));
    checkScores(end.scores, 5.150241, 5.782690, 4.395843, .001);
    const Outcome months = outcomeOf(age(young, {{240}, {16}, 10}, usual.culture), usual);
    CHECK(months.state.beer.lactic == Approx(2.781209).epsilon(1e-4));
    CHECK(months.ph.ph == Approx(3.450568).margin(.0005));
    checkScores(months.scores, 4.109507, 4.227220, 4.796824, .001);
}

TEST_CASE("If kept up is where equal cycles lead, from wherever they start", "[forward]") {
    const Outcome settled = reference::settledOutcome(usual, reference::settledVessel, vectorRefill(), cycle);
    const Outcome again = predict(usual, settled.state, vectorRefill(), cycle).nextDraw;
    const VesselState young = youngVessel(reference::refillBeer, usual.culture);
    const Outcome fromYoung = reference::settledOutcome(usual, young, vectorRefill(), cycle);
    for (const Dimension d : allDimensions) {
        CHECK(again.scores[d] == Approx(settled.scores[d]).margin(1e-4));
        CHECK(fromYoung.scores[d] == Approx(settled.scores[d]).margin(5e-3));
        CHECK(settled.scores[d] == Approx(afterCycles(usual, 40).scores[d]).margin(1e-3));
    }
}

TEST_CASE("Predicting from the recipe and from the brewed beer agree to the bit, every time", "[forward]") {
    const BrewInput input = baseInput();
    const Plan plan{};
    const RefillBeer beer = brew(input, usual.brew);
    const Prediction a = predict(usual, reference::settledVessel, input, plan);
    const Prediction b = predict(usual, reference::settledVessel, beer, plan);
    CHECK(a.thisDraw.state == b.thisDraw.state);
    CHECK(a.nextDraw.state == b.nextDraw.state);
    CHECK(a.nextDraw.scores == b.nextDraw.scores);
    CHECK(a.nextDraw.scores == predict(usual, reference::settledVessel, input, plan).nextDraw.scores);
}

TEST_CASE("This draw is the remaining beer aged, whatever goes in after it", "[forward]") {
    Recipe other = reference::ryeRecipe();
    const Plan plan{.toThisDraw = {45}};
    const Prediction a = predict(usual, reference::settledVessel, baseInput(), plan);
    const Prediction b = predict(usual, reference::settledVessel, reference::inputFor(other), plan);
    CHECK(a.thisDraw.state == b.thisDraw.state);
    CHECK(a.thisDraw.state == age(reference::settledVessel, {{45}, {16}, 10}, usual.culture));
    CHECK_FALSE(a.nextDraw.state == b.nextDraw.state);
}

TEST_CASE("The gravity of beer in the vessel is its own, whatever refill is planned", "[forward]") {
    const auto with = [](double plato) {
        Recipe recipe = reference::baseRecipe();
        recipe.originalGravity = {plato};
        return predict(usual, reference::settledVessel, reference::inputFor(recipe), Plan{});
    };
    const Prediction weak = with(10.5), strong = with(18);
    CHECK(weak.thisDraw.gravity == strong.thisDraw.gravity);
    CHECK(weak.nextDraw.state.beer.original == Approx(.65 * 12 + .35 * 10.5));
    CHECK(strong.nextDraw.state.beer.original == Approx(.65 * 12 + .35 * 18));
}

TEST_CASE("A measured gravity at the opening is met whatever was blended", "[forward]") {
    OpeningFacts facts{.on = std::chrono::year{2024} / 3 / 2, .gravity = Plato{.9}};
    Recipe strong = reference::baseRecipe();
    strong.originalGravity = {16};
    const VesselState state = openingState(facts, reference::inputFor(strong), {{}, {16}, 10}, usual);
    CHECK(outcomeOf(state, usual).gravity.p == Approx(.9));
    CHECK(state.beer.original == Approx(16));
}

TEST_CASE("Levers move what brewers say they move", "[forward]") {
    const Recipe base = reference::baseRecipe();
    const Scores before = nextScores(base);
    const auto change = [&](Dimension d, const Recipe& recipe) { return nextScores(recipe)[d] - before[d]; };
    Recipe hot = base, rested = base, bitter = base, oats = base, strong = base;
    hot.mash = {{{72}, {60}}};
    rested.mash = {{{45}, {20}}, {{66}, {60}}};
    bitter.bitterness = {30};
    oats.grist = {{"pilsner", {.65}}, {"wheat_malt", {.20}}, {"flaked_oats", {.15}}};
    strong.originalGravity = {14};
    CHECK(change(Dimension::acidity, hot) > .2);
    CHECK(change(Dimension::acidity, bitter) < 0);
    CHECK(change(Dimension::funk, rested) > .15);
    CHECK(change(Dimension::body, oats) > .05);
    CHECK(change(Dimension::body, strong) > .1);
}

TEST_CASE("More bitterness is never more acid at the next draw", "[forward][property]") {
    CHECK_PROPERTY("IBU", [] {
        Recipe mild = reference::baseRecipe(), bitter = mild;
        mild.bitterness = {uniform(0, 30)};
        bitter.bitterness = {mild.bitterness.ibu + uniform(1, 20)};
        RC_ASSERT(nextScores(bitter)[Dimension::acidity] <= nextScores(mild)[Dimension::acidity] + 1e-9);
    });
}

TEST_CASE("A longer interval sours and dries the next draw", "[forward]") {
    Plan shorter = cycle, longer = cycle;
    shorter.interval = {120}, longer.interval = {365};
    const Outcome soon = predict(usual, reference::settledVessel, baseInput(), shorter).nextDraw;
    const Outcome late = predict(usual, reference::settledVessel, baseInput(), longer).nextDraw;
    CHECK(late.ta.gPerL > soon.ta.gPerL);
    CHECK(late.gravity.p < soon.gravity.p);
    CHECK(late.scores[Dimension::funk] > soon.scores[Dimension::funk]);
}

TEST_CASE("A stronger buffer keeps the fresh pH and raises acidity at the next draw", "[forward]") {
    Parameters strong = usual;
    strong.beerBuffer = 1.3;
    const RefillBeer beer = vectorRefill();
    CHECK(freshBeer(beer, usual) == beer.beer);
    const Composition fresh = freshBeer(beer, strong);
    CHECK(fresh.buffer == Approx(1.3));
    CHECK(ph(fresh).ph == Approx(ph(beer.beer).ph).margin(1e-9));
    CHECK(titratableAcidity(fresh).gPerL > titratableAcidity(beer.beer).gPerL + .4);
    CHECK(fresh.lactic == beer.beer.lactic);
}

TEST_CASE("Scores over draws are one prediction each, in order", "[forward]") {
    const auto draws = parameterDraws(usual, 5);
    const DrawnScores drawn = scoresOver(draws, reference::settledVessel, baseInput(), cycle);
    REQUIRE(drawn.thisDraw.size() == 5);
    REQUIRE(drawn.nextDraw.size() == 5);
    for (std::size_t i = 0; i < draws.size(); ++i) {
        const Prediction one = predict(draws[i], reference::settledVessel, baseInput(), cycle);
        CHECK(drawn.thisDraw[i] == one.thisDraw.scores);
        CHECK(drawn.nextDraw[i] == one.nextDraw.scores);
    }
}

TEST_CASE("Every draw predicts numbers on the scale", "[forward]") {
    for (const Parameters& p : parameterDraws(usual)) {
        const Prediction made = predict(p, reference::settledVessel, baseInput(), Plan{});
        CHECK(sound(made.nextDraw.state));
        for (const Dimension d : allDimensions) {
            CHECK(made.nextDraw.scores[d] >= 0);
            CHECK(made.nextDraw.scores[d] <= 10);
        }
    }
}
