// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/bands.h"

#include <algorithm>
#include <cmath>

namespace staveline::advice {
namespace {

/// Scores of one setting under one parameter set.
struct Scene {
    Scores thisDraw, next, settled;
};

Scene sceneOf(Forecaster& forecaster, const Setting& setting, std::size_t set, bool withSettled) {
    const auto trajectory = forecaster.trajectory(setting, set, 1);
    return {trajectory->thisDraw.scores, trajectory->draws[0].scores,
            withSettled ? forecaster.settledScores(setting, set) : Scores{}};
}

Scores minus(Scores a, const Scores& b) {
    for (auto d : allDimensions)
        a[d] -= b[d];
    return a;
}

Scene minus(const Scene& a, const Scene& b) {
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

} // namespace

double quantileOf(const std::vector<double>& sorted, double q) {
    const double at = q * static_cast<double>(sorted.size() - 1);
    const auto low = static_cast<std::size_t>(at);
    const auto high = std::min(low + 1, sorted.size() - 1);
    return sorted[low] + (at - std::floor(at)) * (sorted[high] - sorted[low]);
}

Bands bandsOf(const AdviceInput& input, Forecaster& forecaster, const Setting& setting) {
    const auto today = forecaster.today(0);
    const auto central = sceneOf(forecaster, setting, 0, input.withSettled);
    const auto change = minus(central, {today, today, today});
    std::vector<Scene> changes;
    for (std::size_t set = 1; set <= forecaster.sets(); ++set) {
        const auto then = forecaster.today(set);
        changes.push_back(minus(sceneOf(forecaster, setting, set, input.withSettled), {then, then, then}));
    }
    const double left = 1 - shareOf(input, setting).of1;
    const auto band = [&](Scores Scene::*when, Dimension d, double keeps) {
        const double value = (central.*when)[d] + input.combined[d].mean - input.model[d].mean;
        return bandAround(value, (change.*when)[d], pick(changes, when, d), keeps * input.combined[d].sd);
    };
    Bands bands;
    for (auto d : allDimensions) {
        bands.thisDraw[d] = band(&Scene::thisDraw, d, 1);
        bands.next[d] = band(&Scene::next, d, left);
        if (input.withSettled)
            bands.settled[d] = band(&Scene::settled, d, 0);
    }
    return bands;
}

Effect effectOf(const AdviceInput& input, Forecaster& forecaster, const Setting& base, const Setting& setting) {
    const auto change = [&](std::size_t set) {
        return minus(sceneOf(forecaster, setting, set, input.withSettled),
                     sceneOf(forecaster, base, set, input.withSettled));
    };
    const auto central = change(0);
    std::vector<Scene> changes;
    for (std::size_t set = 1; set <= forecaster.sets(); ++set)
        changes.push_back(change(set));
    Effect effect;
    for (auto d : allDimensions) {
        effect.next[d] = bandAround(central.next[d], central.next[d], pick(changes, &Scene::next, d), 0);
        if (input.withSettled)
            effect.settled[d] =
                bandAround(central.settled[d], central.settled[d], pick(changes, &Scene::settled, d), 0);
    }
    return effect;
}

} // namespace staveline::advice
