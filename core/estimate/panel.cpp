// SPDX-License-Identifier: GPL-3.0-or-later
#include "estimate/panel.h"

#include "estimate/square.h"

#include <algorithm>

namespace staveline::estimate {
namespace {

/// One taster, every line of the short sheet.
tasting::SittingResult fullGlass() {
    constexpr double middle = 5;
    tasting::Sitting sitting;
    for (const auto& attribute : tasting::builtInSheet().attributes)
        if (attribute.dimension && attribute.shortSheet)
            sitting.scores.push_back({"one", attribute.code, middle, middle});
    return evaluate(sitting, tasting::builtInSheet());
}

} // namespace

Tasters tastersOf(const tasting::Sitting& sitting) {
    Tasters tasters;
    for (const auto& score : sitting.scores)
        if (score.cold || score.cellar)
            tasters.insert(score.taster);
    return tasters;
}

Tasting tastingOf(const tasting::Sitting& sitting, const Scores& model, bool learns) {
    return {tastersOf(sitting), evaluate(sitting, tasting::builtInSheet()).dimensions, model, learns};
}

double variance(const tasting::DimensionReading& reading, const Tasters& tasters, const Tasters& known) {
    const auto strangers = std::count_if(tasters.begin(), tasters.end(),
                                         [&](const std::string& taster) { return !known.contains(taster); });
    const double share = static_cast<double>(strangers) / static_cast<double>(tasters.size());
    const double same = square(reading.sameTasterSe), betweenTasters = square(reading.absoluteSe) - same;
    return same + square(share) * betweenTasters;
}

double oneMoreTaster(Dimension dimension, bool known) {
    static const tasting::SittingResult glass = fullGlass();
    const auto& reading = glass.dimensions[dimension];
    return square(known ? reading->sameTasterSe : reading->absoluteSe);
}

} // namespace staveline::estimate
