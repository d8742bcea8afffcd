// SPDX-License-Identifier: GPL-3.0-or-later
#include "vessel/routine.h"

#include <algorithm>
#include <cmath>

namespace staveline::vessel {
namespace {

Litres evaporatedPerDay(const Routine& routine) {
    return {routine.filled.l * routine.evaporationPerYear.of1 / daysPerYear};
}

double square(double x) {
    return x * x;
}

} // namespace

Litres evaporated(const Routine& routine) {
    return {std::min(routine.filled.l, evaporatedPerDay(routine).l * routine.interval.d)};
}

Share refillShare(const Routine& routine) {
    return {std::min(1.0, (routine.draw.l + evaporated(routine).l) / routine.filled.l)};
}

Litres drawnPerYear(const Routine& routine) {
    return {routine.draw.l * daysPerYear / routine.interval.d};
}

SettledAge settledAge(const Routine& routine) {
    const double share = refillShare(routine).of1;
    const double variance = square(routine.interval.d) * (1 - share) / square(share) + square(routine.refillAgeSd.d);
    const double before = routine.refillAge.d + routine.interval.d / share;
    return {{before}, {before - routine.interval.d}, {std::sqrt(variance)}};
}

int drawsToSettle(const Routine& routine, Share rest) {
    const double kept = 1 - refillShare(routine).of1;
    return kept <= 0 ? 1 : static_cast<int>(std::ceil(std::log(rest.of1) / std::log(kept)));
}

std::vector<AgePoint> growth(const Routine& routine, int draws, Days startAge, Days startSd) {
    const double share = refillShare(routine).of1;
    std::vector<AgePoint> points;
    double mean = startAge.d, variance = square(startSd.d), first = 1;
    for (int n = 1; n <= draws; ++n) {
        mean += routine.interval.d;
        const double apart = mean - routine.refillAge.d;
        AgePoint point{n, {n * routine.interval.d}, {mean}, {}, {std::sqrt(variance)}, {}};
        variance = (1 - share) * variance + share * square(routine.refillAgeSd.d) + share * (1 - share) * square(apart);
        mean -= share * apart;
        first *= 1 - share;
        point.after = {mean};
        point.first = {first};
        points.push_back(point);
    }
    return points;
}

/// interval / share = gain, with share = (draw + interval x lost a day) / filled.
std::optional<Days> intervalFor(const Routine& routine, Days wanted) {
    const double gain = wanted.d - routine.refillAge.d;
    const double growing = routine.filled.l - gain * evaporatedPerDay(routine).l;
    if (gain <= 0 || growing <= 0)
        return std::nullopt;
    const Days interval{gain * routine.draw.l / growing};
    const double needed = routine.draw.l + interval.d * evaporatedPerDay(routine).l;
    return needed <= routine.filled.l ? std::optional(interval) : std::nullopt;
}

std::optional<Litres> drawFor(const Routine& routine, Days wanted) {
    const double gain = wanted.d - routine.refillAge.d;
    if (gain < routine.interval.d)
        return std::nullopt;
    const Litres draw{routine.filled.l * routine.interval.d / gain - evaporated(routine).l};
    return draw.l > 0 ? std::optional(draw) : std::nullopt;
}

/// The youngest part went in by the last draw; each earlier one moved on by chance `share`: the age is the interval
/// times a negative binomial count, cut off at the draws there were.
Days ageInRow(const Routine& routine, int vessels, int draw) {
    const double share = refillShare(routine).of1;
    std::vector<double> moved(static_cast<std::size_t>(vessels)); // chance of having moved i times so far
    moved[0] = 1;
    double intervals = 0;
    for (int j = 0; j < draw; ++j) {
        for (const double chance : moved)
            intervals += chance;
        for (std::size_t i = moved.size(); i-- > 0;)
            moved[i] = moved[i] * (1 - share) + (i > 0 ? moved[i - 1] * share : 0);
    }
    return {routine.refillAge.d + routine.interval.d * intervals};
}

SettledAge settledAgeInRow(const Routine& routine, int vessels) {
    const double share = refillShare(routine).of1;
    const double before = routine.refillAge.d + vessels * routine.interval.d / share;
    const double variance = vessels * square(routine.interval.d) * (1 - share) / square(share);
    return {{before}, {before - routine.interval.d}, {std::sqrt(variance + square(routine.refillAgeSd.d))}};
}

std::optional<Share> shareToReach(Days now, Days wanted, Days refillAge) {
    if (wanted.d >= now.d || refillAge.d >= wanted.d)
        return std::nullopt;
    return Share{(now.d - wanted.d) / (now.d - refillAge.d)};
}

} // namespace staveline::vessel
