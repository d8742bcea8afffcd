// SPDX-License-Identifier: GPL-3.0-or-later
// What is known of a vessel, case by case. Values marked "regression" are what the model gives, never evidence.
#include "estimate/estimates.h"

#include "forward/predict.h"
#include "support/catch.h"

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::culture;
using namespace staveline::estimate;
using namespace staveline::forward;
using namespace staveline::ingredient;
using namespace staveline::tasting;

namespace {

constexpr Day today = std::chrono::year{2026} / 3 / 2;

Day ago(int days) {
    return today - std::chrono::days{days};
}

BrewInput paleInput() {
    Recipe recipe;
    recipe.grist = {{"pilsner", {.75}, false}, {"wheat_malt", {.25}, false}};
    recipe.mash = {{{66}, {60}}};
    return resolve(recipe, builtInPantry(), jumpRate).value();
}

/// A cask that has lived on a plain pale beer for eight years, two months after its last numbers.
VesselState settledState() {
    OpeningFacts opening;
    opening.yearsRunning = 8;
    opening.ta = GramsPerLitre{6};
    return age(openingState(opening, paleInput(), {16}, 10, {}), {{60}, {16}, 10}, {});
}

KnownOfVessel cask() {
    KnownOfVessel known;
    known.today = today;
    known.lastRefill = ago(180);
    known.state = settledState();
    known.cellaring.temperature = {16};
    known.cellaring.oxygenPerYear = 10;
    return known;
}

/// Every line of the short sheet, at both temperatures.
Sitting scoredBy(const std::vector<std::string>& tasters, double score, Day on) {
    Sitting sitting;
    sitting.on = on;
    for (const auto& taster : tasters)
        for (const auto& attribute : builtInSheet().attributes)
            if (attribute.dimension)
                sitting.scores.push_back({taster, attribute.code, score, score});
    return sitting;
}

void checkEstimate(const Estimate& estimate, double mean, double sd) {
    CHECK(estimate.mean == Approx(mean).epsilon(1e-6));
    CHECK(estimate.sd == Approx(sd).epsilon(1e-6));
}

} // namespace

TEST_CASE("without a sitting the model alone speaks", "[estimate]") {
    const auto known = cask();
    const auto estimates = estimatesFrom(known);
    CHECK_FALSE(estimates.tastedOn);
    CHECK_FALSE(estimates.ta);
    const Scores modelled = scores(known.state.beer);
    for (Dimension d : allDimensions) {
        CHECK(estimates.evidence[d].size() == 1);
        CHECK(estimates.model[d].mean == modelled[d]);
        checkEstimate(estimates.combined[d], modelled[d], EstimateConstants{}.modelSd[d]);
    }
    checkEstimate(estimates.combined[Dimension::acidity], 5.2831765, 1.2); // regression
    checkEstimate(estimates.combined[Dimension::funk], 5.8799843, 2.0);    // regression
    checkEstimate(estimates.combined[Dimension::body], 4.3571669, .55);    // regression
}

TEST_CASE("one taster speaks with a large error, several with a smaller one", "[estimate]") {
    auto known = cask();
    const auto one = scoredBy({"Rook"}, 6, ago(3)), four = scoredBy({"Rook", "Wren", "Teal", "Knot"}, 6, ago(3));
    known.tasted = Tasted{&one, known.state};
    const auto alone = estimatesFrom(known);
    known.tasted = Tasted{&four, known.state};
    const auto panel = estimatesFrom(known);
    CHECK(alone.tastedOn == ago(3));
    CHECK(panel.combined[Dimension::funk].sd < alone.combined[Dimension::funk].sd);
    checkEstimate(alone.combined[Dimension::acidity], 5.6990679, .7775161); // regression
    checkEstimate(alone.combined[Dimension::funk], 5.9740405, .9301633);    // regression
    checkEstimate(panel.combined[Dimension::acidity], 5.9228564, .3936635); // regression
    checkEstimate(panel.combined[Dimension::funk], 5.9947221, .4194141);    // regression
    checkEstimate(panel.combined[Dimension::body], 5.1472692, .3319528);    // regression
}

TEST_CASE("a taster's own target leaves the taster's offset out", "[estimate]") {
    auto known = cask();
    const auto sitting = scoredBy({"Rook"}, 6, ago(3));
    known.tasted = Tasted{&sitting, known.state};
    const auto others = estimatesFrom(known);
    known.target.setBy = "Rook";
    const auto own = estimatesFrom(known);
    CHECK(own.combined[Dimension::funk].sd < others.combined[Dimension::funk].sd);
    checkEstimate(own.evidence[Dimension::funk].back().estimate, 6, .6811755); // regression
}

TEST_CASE("what was tasted moves on with the model", "[estimate]") {
    auto known = cask();
    const auto sitting = scoredBy({"Rook"}, 6, ago(60));
    const VesselState then = known.state;
    known.state = age(then, {{60}, {16}, 10}, {});
    known.tasted = Tasted{&sitting, then};
    const auto estimates = estimatesFrom(known);
    for (Dimension d : allDimensions)
        CHECK(estimates.evidence[d].back().estimate.mean ==
              Approx(estimates.sitting[d]->mean + scores(known.state.beer)[d] - scores(then.beer)[d]));
    known.tasted->then.reset();
    CHECK(estimatesFrom(known).evidence[Dimension::acidity].back().estimate.mean ==
          Approx(estimates.sitting[Dimension::acidity]->mean));
}

TEST_CASE("a titration speaks for the acidity while it is fresh", "[estimate]") {
    auto known = cask();
    known.measured = {{ago(20), {}, GramsPerLitre{9}}};
    const auto fresh = estimatesFrom(known);
    CHECK(fresh.ta == GramsPerLitre{9});
    REQUIRE(fresh.evidence[Dimension::acidity].size() == 2);
    CHECK(fresh.evidence[Dimension::acidity][1].kind == Evidence::Kind::titration);
    CHECK(fresh.evidence[Dimension::acidity][1].on == ago(20));
    checkEstimate(fresh.evidence[Dimension::acidity][1].estimate, 7.2072378, 1.4992210); // regression
    checkEstimate(fresh.combined[Dimension::acidity], 6.0345054, .9368526);              // regression
    known.measured = {{ago(75), {}, GramsPerLitre{9}}};
    CHECK(estimatesFrom(known).ta);
    known.measured = {{ago(76), {}, GramsPerLitre{9}}};
    CHECK_FALSE(estimatesFrom(known).ta);
    CHECK(estimatesFrom(known).evidence[Dimension::acidity].size() == 1);
}

TEST_CASE("the latest titration counts", "[estimate]") {
    auto known = cask();
    known.measured = {{ago(30), {}, GramsPerLitre{9}}, {ago(10), {}, GramsPerLitre{7}}, {ago(5), {}, {}}};
    CHECK(estimatesFrom(known).ta == GramsPerLitre{7});
}

TEST_CASE("what was taken before the refill, or on its day, is another beer", "[estimate]") {
    auto known = cask();
    known.lastRefill = ago(10);
    known.measured = {{ago(10), {}, GramsPerLitre{9}}};
    CHECK_FALSE(estimatesFrom(known).ta);
    known.measured = {{ago(9), {}, GramsPerLitre{9}}};
    CHECK(estimatesFrom(known).ta);
    CHECK_FALSE(speaksFor(ago(10), ago(10), today));
    CHECK(speaksFor(ago(9), ago(10), today));
    CHECK(speaksFor(ago(75), {}, today));
    CHECK_FALSE(speaksFor(ago(76), {}, today));
}

TEST_CASE("a fault that nobody wants comes first", "[estimate]") {
    auto known = cask();
    auto sitting = scoredBy({"Rook"}, 5, ago(3));
    sitting.faults = {{"ropy", 3}};
    known.tasted = Tasted{&sitting, known.state};
    const auto estimates = estimatesFrom(known);
    REQUIRE(estimates.faults.size() == 1);
    CHECK(estimates.faults.front().fault == "ropy");
    CHECK(estimates.verdicts[Dimension::acidity].kind == VerdictKind::faultFirst);
    CHECK(estimates.verdicts[Dimension::acidity].fault == "ropy");
    known.target.wantedTraits = {{"ropy", 3}};
    CHECK(estimatesFrom(known).verdicts[Dimension::acidity].kind != VerdictKind::faultFirst);
}

TEST_CASE("a gravity that falls within the cycle says wait", "[estimate]") {
    auto known = cask();
    const auto falling = [&](double first, double second, int days) {
        known.measured = {{ago(days), SpecificGravity{first}, {}}, {ago(0), SpecificGravity{second}, {}}};
        return gravityFalling(known.measured, known.lastRefill);
    };
    CHECK(falling(1.012, 1.004, 24));
    CHECK(falling(1.0051, 1.004, 30));
    CHECK_FALSE(falling(1.0049, 1.004, 30));
    CHECK_FALSE(falling(1.012, 1.004, 6));
    CHECK_FALSE(falling(1.012, 1.004, 181)); // before the refill
    falling(1.012, 1.004, 24);
    CHECK(estimatesFrom(known).verdicts[Dimension::body].kind == VerdictKind::waitUntil);
}

TEST_CASE("the model says when a score arrives by itself", "[estimate]") {
    auto known = cask();
    known.state = refill(known.state, freshBeer(brew(paleInput(), {}), {}), {.5}, {});
    const double now = scores(known.state.beer)[Dimension::acidity];
    const double later = scores(age(known.state, {{240}, {16}, 10}, {}).beer)[Dimension::acidity];
    INFO(now << " -> " << later);
    known.target.windows[Dimension::acidity] = {later, (later - now) * .8};
    const auto arrives = modelArrival(Dimension::acidity, known, 0);
    REQUIRE(arrives);
    CHECK(daysBetween(today, *arrives) == 105); // regression
    CHECK_FALSE(modelArrival(Dimension::acidity, known, later - now));
    known.target.windows[Dimension::acidity] = {9.9, .3};
    CHECK_FALSE(modelArrival(Dimension::acidity, known, 0));
}
