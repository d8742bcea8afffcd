// SPDX-License-Identifier: GPL-3.0-or-later
// The closed-loop study in small (tests/bench loop is the whole): its truth has the signs of common practice and is no
// easy one, and the program steers it the same way every time.
#include "benchmarks/closed_loop/figures.h"
#include "desk/support.h"

using namespace staveline;
using namespace staveline::loop;

namespace {

const Scores middle{{5, 5.5, 4.3}};

Scores settledAt(const TrueVessel& vessel, const Handling& handling) {
    return drawsAhead(vessel, sampledBefore, handling, 20).back();
}

/// Median over vessels of what a lever does when it is kept up.
double effect(double Handling::*lever, double to, Dimension dimension) {
    std::vector<double> changes;
    for (int i = 0; i < 41; ++i) {
        const TrueVessel vessel(1, i, middle);
        Handling other;
        other.*lever = to;
        changes.push_back(settledAt(vessel, other)[dimension] - settledAt(vessel, Handling{})[dimension]);
    }
    std::sort(changes.begin(), changes.end());
    return changes[changes.size() / 2];
}

/// Mean distance from the target over many vessels at a draw, steered without the program.
double meanGapUnder(Steering& steering, const Table& table, int draws) {
    double sum = 0;
    constexpr int vessels = 192;
    for (int i = 0; i < vessels; ++i) {
        TrueVessel vessel(1, i, middle);
        sum += meanGap(steered({table, false, {}}, steering, vessel, draws), static_cast<std::size_t>(draws)) / vessels;
    }
    return sum;
}

} // namespace

TEST_CASE("levers of the study's truth act as common practice has it", "[closed loop]") {
    constexpr auto acidity = Dimension::acidity, funk = Dimension::funk, body = Dimension::body;
    CHECK(effect(&Handling::mash, 63, acidity) < -.1);
    CHECK(effect(&Handling::mash, 72, acidity) > .3);
    CHECK(effect(&Handling::bitterness, 20, acidity) < -.1);
    CHECK(effect(&Handling::sugar, 15, acidity) < -.1);
    CHECK(effect(&Handling::maltotriose, .1, acidity) > .3);
    CHECK(effect(&Handling::rest, 20, funk) > .3);
    CHECK(effect(&Handling::precursor, 20, funk) > .2);
    CHECK(effect(&Handling::draw, 50, funk) < -.1);
    CHECK(effect(&Handling::interval, 120, funk) < -.1);
    CHECK(effect(&Handling::glucan, 15, body) > .1);
    CHECK(effect(&Handling::gravity, 14, body) > .1);
}

TEST_CASE("levers of the study's truth are not linear and work together", "[closed loop]") {
    CHECK(effect(&Handling::rest, 40, Dimension::funk) < 1.6 * effect(&Handling::rest, 20, Dimension::funk));
    CHECK(effect(&Handling::mash, 72, Dimension::acidity) > -1.5 * effect(&Handling::mash, 60, Dimension::acidity));
    const TrueVessel vessel(1, 3, middle);
    Handling rest, malt, both;
    rest.rest = both.rest = 20;
    malt.precursor = both.precursor = 20;
    const auto funk = [&](const Handling& h) { return settledAt(vessel, h)[Dimension::funk]; };
    CHECK(std::abs(funk(both) - funk(rest) - funk(malt) + funk(Handling{})) > .02);
}

TEST_CASE("the study's truth is no easy one", "[closed loop]") {
    NoChange nothing;
    RuleOfThumb thumb;
    const Table three{3, .5};
    const double alone = meanGapUnder(nothing, three, 12), crude = meanGapUnder(thumb, three, 12);
    CHECK(alone > .65);
    CHECK(alone < .80);
    CHECK(crude > .19);
    CHECK(crude < .26);
    for (int i = 0; i < 192; ++i) {
        const TrueVessel vessel(1, i, middle);
        for (Dimension d : allDimensions)
            CHECK(std::abs(vessel.wanted()[d] - vessel.tastes()[d]) < 2.5);
    }
}

TEST_CASE("the table of the study misses the truth by its error", "[closed loop]") {
    for (const Table& table : {Table{3, .5}, Table{1, .5}, Table{1, .9}, Table{3, .9}}) {
        double squares = 0, sum = 0;
        int count = 0;
        for (int i = 0; i < 300; ++i)
            for (int cycle = 0; cycle < 2; ++cycle) {
                const auto read = evaluate(sittingOf(table, {{5, 5, 5}}, Noise(1, i), cycle), tasting::builtInSheet());
                for (Dimension d : allDimensions) {
                    const double miss = read.dimensions[d]->mean - 5;
                    squares += miss * miss;
                    sum += miss;
                    ++count;
                }
            }
        INFO(table.tasters << " " << table.error);
        CHECK(std::sqrt(squares / count) == Approx(table.error).epsilon(.12));
        CHECK(std::abs(sum / count) < .06);
    }
}

TEST_CASE("the oracle comes closer than the rule of thumb", "[closed loop]") {
    const Extent few{6, 3, 1, 2};
    const Cell cell{{3, .5}, false, {}};
    const auto gap = [&](Policy policy) {
        return overCourses(steeredAll(cell, policy, few), [](const Course& c) { return Part{meanGap(c, 3), 1}; }).value;
    };
    CHECK(gap(Policy::oracle) < gap(Policy::ruleOfThumb));
}

TEST_CASE("the program steers the study's vessels the same way every time", "[closed loop]") {
    for (const bool titrated : {false, true}) {
        const Cell cell{titrated ? Table{1, .5} : Table{3, .5}, titrated, {titrated}};
        const Extent two{2, 3, 1, 2};
        const auto courses = steeredAll(cell, Policy::program, two), again = steeredAll(cell, Policy::program, two);
        for (std::size_t i = 0; i < courses.size(); ++i) {
            const Course& course = courses[i];
            CHECK(course.gaps == again[i].gaps);
            CHECK(course.moved == again[i].moved);
            REQUIRE(course.gaps.size() == 4);
            REQUIRE(course.after.size() == 4);
            CHECK(course.moved.size() == 3);
            for (std::size_t cycle = 0; cycle < 4; ++cycle)
                for (Dimension d : allDimensions) {
                    CHECK(std::abs(course.gaps[cycle][d]) < 4);
                    CHECK(course.after[cycle][d].sd < course.before[cycle][d].sd);
                }
        }
    }
}

TEST_CASE("a figure is the ratio of the sums, inside its interval", "[closed loop]") {
    const Figure figure = figureOf({{1, 2}, {3, 2}, {2, 4}, {4, 4}});
    CHECK(figure.value == Approx(10.0 / 12));
    CHECK(figure.low < figure.value);
    CHECK(figure.high > figure.value);
    CHECK(figureOf({{0, 0}, {0, 0}}).value == 0);
}
