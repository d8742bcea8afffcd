// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/loss.h"

#include "estimate/square.h"
#include "tasting/statistics.h"

#include <algorithm>
#include <cmath>

namespace staveline::advice {
namespace {

using estimate::square;

constexpr double perRoot2Pi = 0.3989422804014327;
/// Beyond so many standard deviations inside the free range a side adds less than 1e-16 of a squared band.
constexpr double outOfSight = -9;

/// E[max(0, x)^2] of a normal x.
double squaredExcess(double mean, double sd) {
    if (sd <= 0)
        return square(std::max(0.0, mean));
    const double z = mean / sd;
    if (z < outOfSight)
        return 0;
    return (square(mean) + square(sd)) * tasting::normalCdf(z) + mean * sd * perRoot2Pi * std::exp(-z * z / 2);
}

} // namespace

double expectedHinge(double mean, double variance, double free) {
    const double sd = std::sqrt(std::max(0.0, variance));
    return squaredExcess(mean - free, sd) + squaredExcess(-mean - free, sd);
}

double effortWeight(double lambda, Share share, int horizon) {
    return lambda * square(1 - std::pow(1 - share.of1, horizon));
}

Goal goalOf(const AdviceInput& input) {
    return {input.target.windows, input.seen, effortWeight(input.lambda, shareOf(input, input.base), input.horizon)};
}

double lossAt(const Goal& goal, Dimension d, double mean, double variance) {
    if (!goal.counts[d])
        return 0;
    const auto& window = goal.windows[d];
    return expectedHinge(mean - window.wanted, variance, slack * window.band) / square(window.band);
}

Scores lossOf(const Goal& goal, std::span<const Expected> draws) {
    Scores loss;
    for (const auto& draw : draws)
        for (auto d : allDimensions)
            loss[d] += lossAt(goal, d, draw.mean[d], draw.variance[d]) / static_cast<double>(draws.size());
    return loss;
}

double total(const Scores& loss) {
    double sum = 0;
    for (auto d : allDimensions)
        sum += loss[d];
    return sum;
}

} // namespace staveline::advice
