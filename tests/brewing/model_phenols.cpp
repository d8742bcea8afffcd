// SPDX-License-Identifier: GPL-3.0-or-later
#include "brewing/phenol_release.h"

#include "model_support.h"

#include <cmath>

using namespace staveline;
using namespace staveline::brewing;
using reference::between;

namespace {

constexpr PhenolPortion pilsner{4.0, 50, 3.0, 46, 1.0};
constexpr double litrePerGrist = .12558 / .80; ///< kg of Pilsner malt in a litre of 12 P wort

MashSegment rest(double celsius, double minutes) {
    return {celsius, celsius, minutes, false};
}
PhenolRelease released(std::initializer_list<MashSegment> segments, double ph = 5.7, const PhenolPortion& in = pilsner,
                       double factor = 1) {
    PhenolRelease phenols(in, {ph}, factor);
    for (const auto& segment : segments)
        phenols.advance(segment);
    return phenols;
}
/// Ferulic acid in 12 P wort of Pilsner malt [mg/L].
double ferulic(std::initializer_list<MashSegment> segments, double ph = 5.7) {
    return released(segments, ph).ferulic() * litrePerGrist;
}

} // namespace

TEST_CASE("A rest follows the solution of its equations", "[brewing][phenols]") {
    // At 45 C and pH 5.7 the rates are the constants; the enzyme's own decay is worked out here from its energy.
    const double minutes = 20;
    const double death = .140 * std::exp(-187e3 / 8.314462618 * (1 / 318.15 - 1 / 333.15));
    const double extent = .0091 * (1 - std::exp(-death * minutes)) / death;
    const double expected = 4 * (1 - std::exp(-.15 * minutes)) + 50 * (1 - std::exp(-extent));
    CHECK(released({rest(45, minutes)}).ferulic() == Approx(expected).epsilon(1e-9));
}

TEST_CASE("No more comes out than went in", "[brewing][phenols]") {
    CHECK_PROPERTY("0 <= dissolved <= free + bound, and it never falls", [] {
        const PhenolPortion in{between(0, 6), between(0, 80), between(0, 4), between(0, 50), between(0, 1.2)};
        PhenolRelease phenols(in, {between(4.8, 6.4)}, between(.2, 5));
        double before = 0;
        for (const auto& step : reference::anyMash()) {
            phenols.advance(rest(step.temperature.c, step.minutes.min));
            RC_ASSERT(phenols.ferulic() >= before);
            before = phenols.ferulic();
        }
        RC_ASSERT(phenols.ferulic() <= in.ferulicFree + in.ferulicBound + 1e-12);
        RC_ASSERT(phenols.coumaric() <= in.coumaricFree + in.coumaricBound + 1e-12);
    });
}

TEST_CASE("Rests in pieces and heatings in pieces give the same", "[brewing][phenols]") {
    PhenolRelease pieces(pilsner, {5.7}, 1);
    for (int i = 0; i < 20; ++i)
        pieces.advance(rest(45, 1));
    for (int i = 0; i < 84; ++i)
        pieces.advance({45 + .25 * i, 45 + .25 * (i + 1), .25, false});
    const auto whole = released({rest(45, 20), {45, 66, 21, false}});
    CHECK(pieces.ferulic() == Approx(whole.ferulic()).epsilon(5e-4));
    CHECK(pieces.coumaric() == Approx(whole.coumaric()).epsilon(5e-4));
}

TEST_CASE("Longer at 45 C, a higher pH and more esterase each release more", "[brewing][phenols]") {
    CHECK_PROPERTY("monotone", [] {
        const double minutes = between(1, 100), ph = between(4.8, 6.2), esterase = between(.1, 1);
        const PhenolPortion weak{4, 50, 3, 46, esterase}, strong{4, 50, 3, 46, esterase + .1};
        const double base = released({rest(45, minutes)}, ph, weak).ferulic();
        RC_ASSERT(released({rest(45, minutes + 5)}, ph, weak).ferulic() > base);
        RC_ASSERT(released({rest(45, minutes)}, ph + .2, weak).ferulic() > base);
        RC_ASSERT(released({rest(45, minutes)}, ph, strong).ferulic() > base);
    });
}

TEST_CASE("Without esterase only the free acid dissolves", "[brewing][phenols]") {
    const auto phenols = released({rest(45, 600)}, 5.7, {2, 30, 1, 20, 0});
    CHECK(phenols.ferulic() == Approx(2));
    CHECK(phenols.coumaric() == Approx(1));
}

TEST_CASE("What goes in late misses the rests before", "[brewing][phenols]") {
    const PhenolPortion rye{2, 60, .9, 14, .2};
    PhenolRelease late(pilsner, {5.7}, 1), early = late;
    early.add(rye);
    for (auto* phenols : {&early, &late})
        phenols->advance(rest(45, 30));
    late.add(rye);
    for (auto* phenols : {&early, &late})
        phenols->advance(rest(68, 60));
    const double without = released({rest(45, 30), rest(68, 60)}).ferulic();
    CHECK(late.ferulic() > without + 1.9);
    CHECK(early.ferulic() > late.ferulic() + 5);
}

TEST_CASE("Regression: ferulic acid of the reference model, Pilsner malt", "[brewing][phenols][regression]") {
    const MashSegment heat{45, 65, 20, false};
    CHECK(ferulic({rest(65, 60)}) == Approx(1.06).margin(.01));
    CHECK(ferulic({rest(45, 10), heat, rest(65, 60)}) == Approx(2.54).margin(.01));
    CHECK(ferulic({rest(45, 20), heat, rest(65, 60)}) == Approx(2.96).margin(.01));
    CHECK(ferulic({rest(45, 60), heat, rest(65, 60)}) == Approx(4.19).margin(.01));
    CHECK(ferulic({rest(45, 90), heat, rest(65, 60)}) == Approx(4.80).margin(.01));
    const std::vector<std::pair<double, double>> warmth = {{35, 1.82}, {40, 2.10}, {45, 2.36}, {50, 2.47},
                                                           {55, 2.18}, {60, 1.54}, {65, 1.06}};
    for (const auto& [celsius, expected] : warmth)
        CHECK(ferulic({rest(celsius, 30)}) == Approx(expected).margin(.01));
    const std::vector<std::pair<double, double>> acidity = {
        {5.2, 2.33}, {5.4, 2.75}, {5.6, 3.15}, {5.8, 3.48}, {6.0, 3.74}};
    for (const auto& [ph, expected] : acidity)
        CHECK(ferulic({rest(45, 30), heat, rest(65, 60)}, ph) == Approx(expected).margin(.01));
}

TEST_CASE("Regression: coumaric acid follows with its own pools", "[brewing][phenols][regression]") {
    const auto phenols = released({rest(45, 20), {45, 65, 20, false}, rest(65, 60)});
    CHECK(phenols.coumaric() * litrePerGrist == Approx(2.61).margin(.01));
}
