// SPDX-License-Identifier: GPL-3.0-or-later
#include "tasting/statistics.h"

#include <algorithm>
#include <cmath>

namespace staveline::tasting {

double normalCdf(double z) {
    return 0.5 * std::erfc(-z / std::sqrt(2.0));
}

double meanOf(std::span<const double> values) {
    double sum = 0;
    for (double v : values)
        sum += v;
    return values.empty() ? 0 : sum / static_cast<double>(values.size());
}

double sumOfSquares(std::span<const double> values) {
    if (values.empty())
        return 0;
    const double mean = meanOf(values);
    double squares = 0, rest = 0;
    for (double v : values) {
        squares += (v - mean) * (v - mean);
        rest += v - mean;
    }
    return squares - rest * rest / static_cast<double>(values.size());
}

std::vector<double> huberWeights(std::span<const double> values, std::span<const double> precisions,
                                 std::span<const double> scales) {
    constexpr int maxRounds = 200;
    std::vector<double> weights(values.size(), 1.0);
    double before = 0;
    for (int round = 0; round < maxRounds; ++round) {
        double sum = 0, total = 0;
        for (std::size_t i = 0; i < values.size(); ++i) {
            sum += weights[i] * precisions[i] * values[i];
            total += weights[i] * precisions[i];
        }
        const double mean = sum / total;
        for (std::size_t i = 0; i < values.size(); ++i) {
            const double distance = std::abs(values[i] - mean);
            weights[i] = distance <= huberTuning * scales[i] ? 1.0 : huberTuning * scales[i] / distance;
        }
        if (round > 0 && std::abs(mean - before) < 1e-12)
            break;
        before = mean;
    }
    return weights;
}

} // namespace staveline::tasting
