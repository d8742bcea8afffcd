// SPDX-License-Identifier: GPL-3.0-or-later
// What is known of a vessel, case by case. Values marked "regression" are what the model gives, never evidence.
#include "estimate/estimates.h"

#include "estimate/story_support.h"

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
    return age(openingState(opening, paleInput(), {{}, {16}, 10}, {}), {{60}, {16}, 10}, {});
}

KnownOfVessel cask() {
    KnownOfVessel known;
    known.today = today;
    known.lastRefill = ago(180);
    known.state = settledState();
    known.cellaring.temperature = {16};
    known.cellaring.oxygenPerYear = 10;
    known.learned = known.earlier = learnFrom({.cyclesBefore = 6, .facts = {}, .targetsSetBy = {}}, {today}, {}, {});
    return known;
}

/// The cask with one sitting of this cycle, learned as its story teaches.
struct TastedCask {
    KnownOfVessel known = cask();
    Sitting sitting;

    TastedCask(const Tasters& tasters, double score, Day on) : sitting(scoredBy(tasters, {{score, score, score}}, on)) {
        learn();
    }
    void learn() {
        Story story{.cyclesBefore = 6, .facts = {}, .targetsSetBy = {}};
        if (!known.target.setBy.empty())
            story.targetsSetBy = {known.target.setBy};
        story.facts.push_back({sitting.on, tastingOf(sitting, scores(known.state.beer), true)});
        known.tasted = &sitting;
        known.learned = learnFrom(story, {today}, {}, {});
    }
};

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
        CHECK(estimates.sittings[d] == 0);
        CHECK(estimates.model[d].mean == modelled[d]);
        checkEstimate(estimates.combined[d], modelled[d], longRunPrior(offsetRules()[d]).sd());
    }
}

TEST_CASE("one taster speaks with a large error, several with a smaller one", "[estimate]") {
    const auto alone = estimatesFrom(TastedCask({"Rook"}, 6, ago(3)).known);
    const TastedCask table({"Rook", "Wren", "Teal", "Knot"}, 6, ago(3));
    const auto panel = estimatesFrom(table.known);
    CHECK(panel.tastedOn == ago(3));
    CHECK(panel.combined[Dimension::funk].sd < alone.combined[Dimension::funk].sd);
    CHECK(panel.sittings[Dimension::funk] == 1);
    CHECK(panel.evidence[Dimension::funk].size() == 2);
    CHECK(panel.evidence[Dimension::funk].back().kind == Evidence::Kind::sitting);
}

TEST_CASE("a taster's own target leaves the taster's offset out", "[estimate]") {
    TastedCask cask({"Rook"}, 6, ago(3));
    const auto others = estimatesFrom(cask.known);
    cask.known.target.setBy = "Rook";
    cask.learn();
    const auto own = estimatesFrom(cask.known);
    CHECK(own.combined[Dimension::funk].sd < others.combined[Dimension::funk].sd);
}

TEST_CASE("what was tasted moves on with the model", "[estimate]") {
    TastedCask cask({"Rook"}, 6, ago(60));
    const Scores then = scores(cask.known.state.beer);
    cask.known.state = age(cask.known.state, {{60}, {16}, 10}, {});
    const auto estimates = estimatesFrom(cask.known);
    for (Dimension d : allDimensions)
        CHECK(estimates.evidence[d].back().estimate.mean == Approx(6 + scores(cask.known.state.beer)[d] - then[d]));
}

TEST_CASE("the chain shows what earlier sittings taught, this sitting, the titration", "[estimate]") {
    StoryWriter writer;
    for (int cycle = 0; cycle < 8; ++cycle)
        writer.taste(240 * cycle, {{6, 3.5, 4}}).refill(240 * cycle + 30);
    writer.taste(240 * 8, {{6, 3.5, 4}}).titrate(240 * 8 + 2, 7);
    auto known = cask();
    known.today = dayOf(240 * 8 + 3);
    known.lastRefill = dayOf(240 * 7 + 30);
    known.learned = writer.learned(240 * 8 + 3);
    known.earlier = learnFrom(beforeThisCycle(writer.story), {known.today}, {}, {});
    const auto estimates = estimatesFrom(known);
    const auto& chain = estimates.evidence[Dimension::acidity];
    REQUIRE(chain.size() == 4);
    CHECK(chain[0].kind == Evidence::Kind::model);
    CHECK(chain[1].kind == Evidence::Kind::learned);
    CHECK(chain[1].sittings == 8);
    CHECK(chain[2].kind == Evidence::Kind::sitting);
    CHECK(chain[3].kind == Evidence::Kind::titration);
    CHECK(chain[3].ta == GramsPerLitre{7});
    CHECK(estimates.evidence[Dimension::funk][1].estimate.mean - estimates.model[Dimension::funk].mean ==
          Approx(-2.5).margin(.1));
    CHECK(estimates.combined[Dimension::funk].sd < chain[0].estimate.sd);
    CHECK(estimates.sittings[Dimension::funk] == 9);
}

TEST_CASE("the latest acid reading of the cycle that was learned from is the one told", "[estimate]") {
    auto known = cask();
    known.learned.acidity = {{ago(30), GramsPerLitre{9}, {}, {}}, {ago(10), GramsPerLitre{7}, Ph{3.3}, {}}};
    CHECK(estimatesFrom(known).ta == GramsPerLitre{7});
    CHECK(estimatesFrom(known).ph == Ph{3.3});
    known.lastRefill = ago(10);
    CHECK_FALSE(estimatesFrom(known).ta); // on its day it was another beer
    CHECK(ofThisCycle(ago(9), ago(10)));
    CHECK_FALSE(ofThisCycle(ago(10), ago(10)));
}

TEST_CASE("doubts of this cycle are told, older ones are settled", "[estimate]") {
    auto known = cask();
    known.learned.doubts = {{.kind = Doubt::Kind::surprise, .on = ago(400)},
                            {.kind = Doubt::Kind::surprise, .on = ago(4)}};
    REQUIRE(estimatesFrom(known).doubts.size() == 1);
    CHECK(estimatesFrom(known).doubts[0].on == ago(4));
}

TEST_CASE("a fault that nobody wants comes first", "[estimate]") {
    TastedCask table({"Rook"}, 5, ago(3));
    table.sitting.faults = {{"ropy", 3}};
    auto& known = table.known;
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
        known.measured = {{ago(days), SpecificGravity{first}}, {ago(0), SpecificGravity{second}}};
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

TEST_CASE("a score arrives in steps of fifteen days, within a year, half a band inside, after half a point",
          "[estimate]") {
    auto known = cask();
    known.state = refill(known.state, freshBeer(brew(paleInput(), {}), {}), {.6}, {});
    std::vector<double> course;
    for (VesselState then = known.state; course.size() < 30; then = age(then, {{15}, {16}, 10}, {}))
        course.push_back(scores(then.beer)[Dimension::acidity]);
    const auto arrival = [&](double wanted, double band) {
        known.target.windows[Dimension::acidity] = {wanted, band};
        const auto day = modelArrival(Dimension::acidity, known, 0);
        return day ? daysBetween(today, *day) : -1;
    };
    const auto step = [&](std::size_t i) { return course[i] - course[i - 1]; };
    REQUIRE(course[4] - course[0] > .5);
    REQUIRE(course[24] > course[23]);
    CHECK(arrival(course[7], .1 * step(7)) == 105);
    CHECK(arrival(course[24], .1 * step(24)) == 360);
    CHECK(arrival(course[25], .1 * step(25)) == -1); // the next year
    // .4 of the band outside on the day: inside enough, not so the step before.
    const double band = 2 * step(7);
    CHECK(arrival(course[7] + .4 * band, band) == 105);
    CHECK(arrival(course[7] + .6 * band, band) == 120);
    // So near to begin with that it is no arrival, and just far enough.
    std::size_t far = 1;
    while (course[far] - course[0] <= .5)
        ++far;
    CHECK(arrival(course[far], .1 * step(far)) == 15 * static_cast<int>(far));
    CHECK(arrival(course[far - 1], .1 * step(far)) == -1);
    CHECK(course[far] - course[0] < 1);
    CHECK(course[far - 1] - course[0] > .25);
    CHECK(arrival(course[0] + .1, 3) == -1); // there already
    // A vessel that tastes a point above the model arrives a point higher.
    known.target.windows[Dimension::acidity] = {course[7] + 1, .1 * step(7)};
    CHECK(modelArrival(Dimension::acidity, known, 1) == today + std::chrono::days{105});
}

TEST_CASE("waiting for the model is said of a vessel that was tasted", "[estimate]") {
    auto known = cask();
    known.state = refill(known.state, freshBeer(brew(paleInput(), {}), {}), {.6}, {});
    const Scores said = scores(known.state.beer);
    const double then = scores(age(known.state, {{105}, {16}, 10}, {}).beer)[Dimension::acidity];
    known.target.windows[Dimension::acidity] = {then, .02};
    CHECK(estimatesFrom(known).verdicts[Dimension::acidity].kind != VerdictKind::waitUntil);
    Story story{.cyclesBefore = 6, .facts = {}, .targetsSetBy = {}};
    story.facts.push_back({today, tastingOf(scoredBy(four, said, today), said, true)});
    known.learned = learnFrom(story, {today}, {}, {});
    const Verdict wait = estimatesFrom(known).verdicts[Dimension::acidity];
    CHECK(wait.kind == VerdictKind::waitUntil);
    CHECK(wait.until == today + std::chrono::days{105});
}

TEST_CASE("tasted today is today, and one more taster is worth more where none is known", "[estimate]") {
    for (int days : {0, 1}) {
        const TastedCask tasted({"Rook", "Wren"}, 8, ago(days));
        const Estimates estimates = estimatesFrom(tasted.known);
        for (Dimension d : allDimensions) {
            CHECK(estimates.tastedToday[d] == (days == 0));
            CHECK(estimates.sittings[d] == 1);
            const double offset = estimates.offsets[d].mean[Offset::now];
            CHECK(std::abs(offset) > .1);
            CHECK(estimates.combined[d].mean == Approx(estimates.model[d].mean + offset));
            CHECK(estimates.combined[d].sd == estimates.offsets[d].sd());
            CHECK(estimates.oneMoreTaster[d] == oneMoreTaster(d, true));
            CHECK(estimates.offsets[d] == tasted.known.learned.offsets[d]);
        }
        CHECK(estimates.tastedOn == ago(days));
    }
    const Estimates never = estimatesFrom(cask());
    CHECK(never.oneMoreTaster[Dimension::funk] == oneMoreTaster(Dimension::funk, false));
    CHECK_FALSE(never.tastedToday[Dimension::funk]);
}

TEST_CASE("a titration stands in the chain as the score it means today", "[estimate]") {
    auto known = cask();
    const Composition& beer = known.state.beer;
    Story story{.cyclesBefore = 6, .facts = {}, .targetsSetBy = {}};
    story.facts.push_back({ago(3), AcidReading{GramsPerLitre{8}, {}, beer}});
    known.learned = learnFrom(story, {today}, {}, {});
    const auto parts = estimatesFrom(known).evidence[Dimension::acidity];
    const AcidSeen seen = seenOf({GramsPerLitre{8}, {}, beer}, {});
    REQUIRE(parts.size() == 2);
    CHECK(parts[1].kind == Evidence::Kind::titration);
    CHECK(parts[1].estimate.mean == Approx(scores(beer)[Dimension::acidity] + seen.slope * (8 - seen.model.gPerL)));
    CHECK(parts[1].on == ago(3));
    CHECK(parts[1].ta->gPerL == 8);
    known.lastRefill = ago(3); // the beer from before it
    CHECK(estimatesFrom(known).evidence[Dimension::acidity].size() == 1);
    // A sitting moves with the model since: the model was half a point lower then.
    const Sitting sitting = scoredBy(four, {{6, 6, 6}}, ago(1));
    Scores then = scores(beer);
    for (Dimension d : allDimensions)
        then[d] -= .5;
    story.facts = {{ago(1), tastingOf(sitting, then, true)}};
    known.learned = learnFrom(story, {today}, {}, {});
    const auto tasted = estimatesFrom(known).evidence[Dimension::body];
    CHECK(tasted.back().estimate.mean == Approx(6.5));
    CHECK(estimatesFrom(known).model[Dimension::body].sd == Approx(std::sqrt(.58)));
}

TEST_CASE("one more taster beside a lone one is a stranger, whose bias counts", "[estimate]") {
    const auto alone = estimatesFrom(TastedCask({"Rook"}, 6, ago(3)).known);
    const auto table = estimatesFrom(TastedCask({"Rook", "Wren"}, 6, ago(3)).known);
    for (Dimension d : allDimensions)
        CHECK(alone.oneMoreTaster[d] > table.oneMoreTaster[d] + .1);
}

TEST_CASE("the chain stands for the estimate also where nothing was tasted, and through a correction", "[estimate]") {
    auto known = cask();
    known.learned.offsets[Dimension::funk].mean[Offset::now] = -1.5; // of beer that was moved here
    known.earlier = known.learned;
    const auto moved = estimatesFrom(known);
    REQUIRE(moved.evidence[Dimension::funk].size() == 2);
    CHECK(moved.evidence[Dimension::funk][1].estimate == moved.combined[Dimension::funk]);

    StoryWriter writer;
    writer.taste(0, {{6, 6, 6}}).corrected(10, {{0, 0, .8}});
    known = cask();
    known.today = dayOf(10);
    known.lastRefill.reset();
    known.learned = writer.learned(10);
    const Lesson& lesson = known.learned.lessons[0];
    CHECK(lesson.model[Dimension::body] == Approx(modelSays[Dimension::body] + .8));
    const double shown = estimatesFrom(known).evidence[Dimension::body].back().estimate.mean;
    CHECK(shown == Approx(6 + scores(known.state.beer)[Dimension::body] - modelSays[Dimension::body] - .8).margin(.1));
}
