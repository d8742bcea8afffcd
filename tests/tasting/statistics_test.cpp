// SPDX-License-Identifier: GPL-3.0-or-later
#include "tasting/statistics.h"

#include "support/property.h"

#include <algorithm>
#include <cmath>

using namespace staveline;
using namespace staveline::tasting;

namespace {

double weightedMean(const std::vector<double>& values, const std::vector<double>& weights) {
    double sum = 0, total = 0;
    for (std::size_t i = 0; i < values.size(); ++i) {
        sum += weights[i] * values[i];
        total += weights[i];
    }
    return sum / total;
}

} // namespace

TEST_CASE("The normal distribution function at its printed points") {
    // Abramowitz & Stegun 1964, Handbook of Mathematical Functions, table 26.1 (from memory).
    CHECK(normalCdf(0) == Approx(.5).margin(1e-15));
    CHECK(normalCdf(1) == Approx(.841344746068543).margin(1e-14));
    CHECK(normalCdf(-1.96) == Approx(.024997895148220).margin(1e-14));
    CHECK(normalCdf(1.2815515655446004) == Approx(.9).margin(1e-15));
}

TEST_CASE("Sum of squares survives a large constant part") {
    // NIST StRD univariate set NumAcc4: 10000000.2, then 0.1 and 0.3 in turn; certified sd 0.1 exactly.
    std::vector<double> values{10000000.2};
    for (int i = 0; i < 500; ++i) {
        values.push_back(10000000.1);
        values.push_back(10000000.3);
    }
    CHECK(meanOf(values) == Approx(10000000.2).epsilon(1e-14));
    CHECK(std::sqrt(sumOfSquares(values) / 1000) == Approx(.1).epsilon(1e-7));
    CHECK(meanOf({}) == 0);
    CHECK(sumOfSquares({}) == 0);
}

TEST_CASE("Huber weights of the reference examples") {
    // Own worked examples, reproduced by hand: a scale of 0.9 allows 1.35 points.
    const std::vector<double> ones(4, 1.0), scales(4, .9);
    const std::vector<double> near{5.65, 4.55, 6.30}, far{5.6, 5.4, 5.9, 9.0};
    const auto all = huberWeights(near, std::span(ones).first(3), std::span(scales).first(3));
    CHECK(all == std::vector<double>(3, 1.0));
    const auto weights = huberWeights(far, ones, scales);
    CHECK(weights[3] == Approx(.4629).margin(1e-4));
    CHECK(std::count(weights.begin(), weights.end(), 1.0) == 3);
    CHECK(weightedMean(far, weights) == Approx(6.0833).margin(1e-4));
}

TEST_CASE("A precise value counts for more") {
    const std::vector<double> values{4, 6}, precisions{3, 1}, scales{5, 5};
    const auto weights = huberWeights(values, precisions, scales);
    CHECK(weights == std::vector<double>{1, 1}); // precision is the caller's to apply; nothing is far away here
}

TEST_CASE("Huber weights lie in (0, 1] and pull the mean between the median and the mean") {
    CHECK_PROPERTY("weights in range; the robust mean stays inside the data", [] {
        auto values = *rc::gen::container<std::vector<double>>(
            rc::gen::map(rc::gen::inRange(0, 21), [](int half) { return half / 2.0; }));
        RC_PRE(!values.empty());
        const std::vector<double> ones(values.size(), 1.0);
        const auto weights = huberWeights(values, ones, ones);
        for (double w : weights)
            RC_ASSERT(w > 0 && w <= 1);
        const double mean = weightedMean(values, weights);
        RC_ASSERT(mean >= *std::min_element(values.begin(), values.end()) - 1e-9);
        RC_ASSERT(mean <= *std::max_element(values.begin(), values.end()) + 1e-9);
    });
}
