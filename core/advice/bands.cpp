// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/bands.h"

#include <algorithm>
#include <cmath>

namespace staveline::advice {
namespace {

/// Scores of one setting under one parameter set, with what is known of the vessel.
struct Scene {
    Scores thisDraw, next, settled;
};

Scene sceneOf(const AdviceInput& input, Forecaster& forecaster, const Setting& setting, std::size_t set) {
    const auto trajectory = forecaster.trajectory(setting, set, 1);
    const Share share = shareOf(input, setting);
    return {plus(trajectory->thisDraw.scores, carriedTo(input, share, 0).mean),
            plus(trajectory->draws[0].scores, carriedTo(input, share, 1).mean),
            input.withSettled ? plus(forecaster.settledScores(setting, set), carriedForGood(input).mean) : Scores{}};
}

Scene difference(const Scene& a, const Scene& b) {
    return {minus(a.thisDraw, b.thisDraw), minus(a.next, b.next), minus(a.settled, b.settled)};
}

/// `value` with the 80 % interval of `draws` about `centre`, widened by a normal error of `sd`.
Band bandAround(double value, double centre, std::vector<double> draws, double sd) {
    const double error = tasting::z80 * sd;
    if (draws.empty())
        return {value, value - error, value + error};
    std::sort(draws.begin(), draws.end());
    const double below = std::max(0.0, centre - quantileOf(draws, .1));
    const double above = std::max(0.0, quantileOf(draws, .9) - centre);
    return {value, value - std::hypot(below, error), value + std::hypot(above, error)};
}

std::vector<double> pick(const std::vector<Scene>& scenes, Scores Scene::*when, Dimension d) {
    std::vector<double> values;
    values.reserve(scenes.size());
    for (const auto& scene : scenes)
        values.push_back((scene.*when)[d]);
    return values;
}

/// What `setting` changes against `base` under each parameter draw.
std::vector<Scene> changesInDraws(const AdviceInput& input, Forecaster& forecaster, const Setting& base,
                                  const Setting& setting) {
    std::vector<Scene> changes;
    if (base == setting)
        return changes;
    for (std::size_t set = 1; set <= forecaster.sets(); ++set)
        changes.push_back(difference(sceneOf(input, forecaster, setting, set), sceneOf(input, forecaster, base, set)));
    return changes;
}

} // namespace

double quantileOf(const std::vector<double>& sorted, double q) {
    const double at = q * static_cast<double>(sorted.size() - 1);
    const auto low = static_cast<std::size_t>(at);
    const auto high = std::min(low + 1, sorted.size() - 1);
    return sorted[low] + (at - std::floor(at)) * (sorted[high] - sorted[low]);
}

Bands bandsOf(const AdviceInput& input, Forecaster& forecaster, const Setting& setting) {
    const auto central = sceneOf(input, forecaster, setting, 0);
    const auto change = difference(central, sceneOf(input, forecaster, input.base, 0));
    const auto changes = changesInDraws(input, forecaster, input.base, setting);
    const auto sd = wanderedAhead(input, setting);
    const auto band = [&](Scores Scene::*when, const Scores& known, Dimension d) {
        return bandAround((central.*when)[d], (change.*when)[d], pick(changes, when, d), known[d]);
    };
    Bands bands;
    for (auto d : allDimensions) {
        bands.thisDraw[d] = band(&Scene::thisDraw, sd.thisDraw, d);
        bands.next[d] = band(&Scene::next, sd.next, d);
        if (input.withSettled)
            bands.settled[d] = band(&Scene::settled, sd.settled, d);
    }
    return bands;
}

} // namespace staveline::advice
