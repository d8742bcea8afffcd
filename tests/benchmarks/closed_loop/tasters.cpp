// SPDX-License-Identifier: GPL-3.0-or-later
#include "benchmarks/closed_loop/tasters.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace staveline::loop {
namespace {

struct Glasses {
    bool cold = false;
    int each = 1; ///< at a temperature
};

/// Of the dimension's score that cold glasses give.
double coldPart(Dimension d) {
    double part = 0;
    for (const auto& line : tasting::builtInSheet().attributes)
        if (line.dimension == d)
            part += line.weight * line.coldWeight.of1;
    return part;
}

/// Of an error that is a glass's own, what stays in a taster's mean [variance share].
double remains(const Glasses& glasses, Dimension d) {
    const double cold = glasses.cold ? coldPart(d) : 0;
    return (cold * cold + (1 - cold) * (1 - cold)) / glasses.each;
}

Glasses glassesFor(const Table& table) {
    constexpr std::array<Glasses, 3> all = {Glasses{false, 1}, Glasses{true, 1}, Glasses{true, 2}};
    const tasting::TastingNoise noise;
    const auto miss = [&](const Glasses& glasses) {
        const double single =
            noise.residual * noise.residual + glasses.each * noise.tasterByTemperature * noise.tasterByTemperature;
        return std::abs(std::sqrt(single * remains(glasses, Dimension::acidity) / table.tasters) - table.error);
    };
    return *std::min_element(all.begin(), all.end(),
                             [&](const Glasses& a, const Glasses& b) { return miss(a) < miss(b); });
}

double leaning(const Table& table, Dimension d, int taster, const Noise& noise) {
    const auto own = [&](int i) { return noise.normal(Stream::taster, {static_cast<int>(d), i}); };
    double mean = 0;
    for (int i = 0; i < table.tasters; ++i)
        mean += own(i) / table.tasters;
    return tasting::TastingNoise{}.taster * (own(taster) - mean);
}

/// To half steps, up or down by chance so that the mean is kept.
double inHalfSteps(double score, double chance) {
    return std::clamp(std::round(2 * score + chance - .5) / 2, 0.0, 10.0);
}

} // namespace

std::string tasterName(int taster) {
    constexpr std::array<const char*, 4> names = {"Rook", "Wren", "Jay", "Crake"};
    return names[static_cast<std::size_t>(taster) % names.size()];
}

tasting::Sitting sittingOf(const Table& table, const Scores& truth, const Noise& noise, int cycle) {
    const Glasses glasses = glassesFor(table);
    tasting::Sitting sitting;
    const auto& lines = tasting::builtInSheet().attributes;
    for (int taster = 0; taster < table.tasters; ++taster)
        for (int glass = 0; glass < glasses.each; ++glass)
            for (std::size_t i = 0; i < lines.size(); ++i) {
                const tasting::Attribute& line = lines[i];
                if (!line.dimension || !line.shortSheet)
                    continue;
                const auto dimension = *line.dimension;
                const auto written = [&](int warm) {
                    const double each =
                        table.error * std::sqrt(table.tasters / remains(glasses, dimension)) *
                        noise.normal(Stream::glass, {cycle, taster, glass, warm, static_cast<int>(dimension)});
                    const double tasted = truth[dimension] + leaning(table, dimension, taster, noise) + each;
                    const double shift = line.warmShift * (warm ? line.coldWeight.of1 : line.coldWeight.of1 - 1);
                    return inHalfSteps((line.reversed ? 10 - tasted : tasted) + shift,
                                       noise.uniform(Stream::step, {cycle, taster, glass, warm, static_cast<int>(i)}));
                };
                tasting::Score score{tasterName(taster), line.code, {}, written(1)};
                if (glasses.cold)
                    score.cold = written(0);
                sitting.scores.push_back(score);
            }
    return sitting;
}

} // namespace staveline::loop
