// SPDX-License-Identifier: GPL-3.0-or-later
#include "benchmarks/closed_loop/tasters.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace staveline::loop {
namespace {

/// Of the dimension's score that cold glasses give.
double coldPart(Dimension d) {
    double part = 0;
    for (const auto& line : tasting::builtInSheet().attributes)
        if (line.dimension == d)
            part += line.weight * line.coldWeight.of1;
    return part;
}

/// Of an error that is a glass's own, what stays in a taster's mean [variance share].
double remains(bool coldToo, Dimension d) {
    const double cold = coldToo ? coldPart(d) : 0;
    return cold * cold + (1 - cold) * (1 - cold);
}

bool tastesColdToo(const Table& table) {
    const tasting::TastingNoise noise;
    const double glass = std::hypot(noise.residual, noise.tasterByTemperature);
    const auto miss = [&](bool coldToo) {
        return std::abs(glass * std::sqrt(remains(coldToo, Dimension::acidity) / table.tasters) - table.error);
    };
    return miss(true) < miss(false);
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
    const bool coldToo = tastesColdToo(table);
    tasting::Sitting sitting;
    const auto& lines = tasting::builtInSheet().attributes;
    for (int taster = 0; taster < table.tasters; ++taster)
        for (std::size_t i = 0; i < lines.size(); ++i) {
            const tasting::Attribute& line = lines[i];
            if (!line.dimension || !line.shortSheet)
                continue;
            const Dimension d = *line.dimension;
            const auto written = [&](int warm) {
                const double missed = table.error * std::sqrt(table.tasters / remains(coldToo, d)) *
                                      noise.normal(Stream::glass, {cycle, taster, warm, static_cast<int>(d)});
                const double tasted = truth[d] + leaning(table, d, taster, noise) + missed;
                const double shift = line.warmShift * (line.coldWeight.of1 - (warm ? 0 : 1));
                return inHalfSteps((line.reversed ? 10 - tasted : tasted) + shift,
                                   noise.uniform(Stream::step, {cycle, taster, warm, static_cast<int>(i)}));
            };
            tasting::Score score{tasterName(taster), line.code, {}, written(1)};
            if (coldToo)
                score.cold = written(0);
            sitting.scores.push_back(score);
        }
    return sitting;
}

} // namespace staveline::loop
