// SPDX-License-Identifier: GPL-3.0-or-later
// The filter, the expected loss and the worth of a tasting against worked examples and tables in print.
#include "advice/loss.h"
#include "advice/value.h"
#include "estimate/acid_evidence.h"
#include "estimate/offset.h"
#include "quantity/acid_base.h"
#include "support/catch.h"

#include <cmath>
#include <numbers>

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::estimate;

namespace {

/// Flow of the Nile at Aswan, 1871-1970 [1e8 m3]: Cobb 1978, Biometrika 65:243, table 1.
constexpr double nile[] = {1120, 1160, 963, 1210, 1160, 1160, 813,  1230, 1370, 1140, 995,  935,  1110, 994,  1020,
                           960,  1180, 799, 958,  1140, 1100, 1210, 1150, 1250, 1260, 1220, 1030, 1100, 774,  840,
                           874,  694,  940, 833,  701,  916,  692,  1020, 1050, 969,  831,  726,  456,  824,  702,
                           1120, 1100, 832, 764,  821,  768,  845,  864,  862,  698,  845,  744,  796,  1040, 759,
                           781,  865,  845, 944,  984,  897,  822,  1010, 771,  676,  649,  846,  812,  742,  801,
                           1040, 860,  874, 848,  890,  744,  749,  838,  1050, 918,  986,  797,  923,  975,  815,
                           1020, 906,  901, 1170, 912,  746,  919,  718,  714,  740};

Offset known(double mean, double variance) {
    Offset offset;
    offset.mean[Offset::now] = mean;
    offset.cov[Offset::now][Offset::now] = variance;
    return offset;
}

/// Cost after a tasting that would settle everything: the quadrature rule at work on the bare loss.
double quadratureOf(double shift, double free) {
    Goal goal;
    goal.windows[Dimension::acidity] = {0, free / slack};
    goal.counts[Dimension::funk] = goal.counts[Dimension::body] = false;
    const Weighed plan{{{{}, {{shift * shift, 0, 0}}}}, {{{shift * shift, 0, 0}}}, 0};
    const OneMore tasting{{{shift * shift, 0, 0}}, {}};
    return worthOfTasting(goal, std::span(&plan, 1), tasting).after * std::pow(free / slack, 2);
}

} // namespace

TEST_CASE("Durbin & Koopman 2012: the level of the Nile", "[published]") {
    // Time Series Analysis by State Space Methods, sections 2.2.5, 2.10 and 2.11: variances 15099 and 1469.1, start at
    // 0 with variance 1e7; log-likelihood of the second year on -632.544 (to more digits in the tests of two open
    // libraries), variance of the filtered level in the long run 4032.16.
    const OffsetRule wander{.walkNow = std::sqrt(1469.1), .cycle = 365};
    Offset level = known(0, 1e7);
    double likelihood = 0;
    for (std::size_t year = 0; year < std::size(nile); ++year) {
        const Observation flow = tasted(level, nile[year], 0, 15099);
        const double spread = spreadOf(level, flow);
        if (year > 0)
            likelihood -= .5 * (std::log(2 * std::numbers::pi * spread) + flow.innovation * flow.innovation / spread);
        learn(level, flow);
        if (year == 0)
            CHECK(level.mean[Offset::now] == Approx(1118.3).margin(.05));
        if (year + 1 < std::size(nile))
            passTime(level, {365}, wander);
    }
    CHECK(likelihood == Approx(-632.54421).margin(1e-4));
    CHECK(level.mean[Offset::now] == Approx(798.37).margin(.01));
    CHECK(level.cov[Offset::now][Offset::now] == Approx(4032.16).margin(.01));
}

TEST_CASE("Box & Tiao 1973: two physicists and one measurement", "[published]") {
    // Bayesian Inference in Statistical Analysis, section 1.2.3: beliefs of 900 +- 20 and 800 +- 80, one measurement of
    // 850 +- 40: 890 +- 17.9 and 840 +- 35.7.
    Offset sure = known(900, 20 * 20), open = known(800, 80 * 80);
    for (Offset* belief : {&sure, &open})
        learn(*belief, tasted(*belief, 850, 0, 40 * 40));
    CHECK(sure.mean[Offset::now] == Approx(890).margin(1e-6));
    CHECK(sure.sd() == Approx(17.9).margin(.05));
    CHECK(open.mean[Offset::now] == Approx(840).margin(1e-6));
    CHECK(open.sd() == Approx(35.7).margin(.1));
}

TEST_CASE("The loss falls with the free range as the unit normal loss table says", "[published]") {
    // Table of L(z) = E max(0, Z - z) (Schlaifer 1959, Probability and Statistics for Business Decisions; four digits
    // as in textbooks on stocks). The squared loss falls by four of them for each unit of free range.
    struct Row {
        double z, loss;
    };
    for (const Row row :
         {Row{0, .3989}, Row{.5, .1978}, Row{1, .0833}, Row{1.5, .0293}, Row{2, .0085}, Row{2.5, .0020}}) {
        CAPTURE(row.z);
        constexpr double step = 1e-4;
        const double slope = (expectedHinge(0, 1, row.z + step) - expectedHinge(0, 1, row.z - step)) / (2 * step);
        CHECK(-slope / 4 == Approx(row.loss).margin(6e-5));
    }
}

TEST_CASE("Abramowitz & Stegun 25.10: five points of Gauss and Hermite", "[published]") {
    // Abscissas 0.958572464613819 and 2.020182870456086, weights 0.3936193231522 and 0.01995324205905; for a standard
    // normal they are times the root of 2 and over that of pi.
    const double outer = 2.020182870456086 * std::numbers::sqrt2, inner = .958572464613819 * std::numbers::sqrt2;
    const double outerWeight = .01995324205905 * std::numbers::inv_sqrtpi;
    const double innerWeight = .3936193231522 * std::numbers::inv_sqrtpi;
    // Only the outer two exceed so much free range: 2 w (s x - free)^2.
    const double far = std::sqrt(quadratureOf(1, 2)), near = std::sqrt(quadratureOf(1, 2.5));
    CHECK(far - near == Approx(.5 * std::sqrt(2 * outerWeight)).epsilon(1e-9));
    CHECK(2 + .5 * far / (far - near) == Approx(outer).epsilon(1e-9));
    const auto insideOuter = [&](double free) {
        return std::sqrt(quadratureOf(1, free) - 2 * outerWeight * (outer - free) * (outer - free));
    };
    const double wide = insideOuter(.5), narrow = insideOuter(1);
    CHECK(wide - narrow == Approx(.5 * std::sqrt(2 * innerWeight)).epsilon(1e-9));
    CHECK(.5 + .5 * wide / (wide - narrow) == Approx(inner).epsilon(1e-9));
}

TEST_CASE("Witrick 2017: pH and titratable acidity of one gueuze stand for each other", "[published]") {
    // Beverages 3:51, through a second text: pH 3.23, 7.83 g/L, 1.642 g/L of acetic acid. What the spread of buffers in
    // Choi 2022 and 0.05 pH make of it.
    Composition beer = withPh({.lactic = .2, .acetic = .1, .buffer = 1}, {4.3});
    beer.acetic = 1.642;
    CHECK(acidityAt({3.23}, beer).gPerL == Approx(7.83).margin(.9));
    CHECK(phAt({7.83}, beer).ph == Approx(3.23).margin(.12));
}
