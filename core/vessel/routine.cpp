// SPDX-License-Identifier: GPL-3.0-or-later
#include "vessel/routine.h"

#include <algorithm>
#include <cmath>

namespace staveline::vessel {
namespace {

Litres evaporatedPerDay(const Routine& routine) {
    return {routine.filled.l * routine.evaporationPerYear.of1 / daysPerYear};
}

/// What each draw replaces in a vessel of a row, counted from the oldest: it makes good what has evaporated from those
/// older than it, too.
double shareInRow(const Routine& routine, std::size_t fromOldest) {
    const double lost = evaporated(routine).l * static_cast<double>(fromOldest + 1);
    return std::min(1.0, (routine.draw.l + lost) / routine.filled.l);
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

namespace {

/// A vessel from draw to draw.
struct Growing {
    double mean, variance, first = 1, since = 0;
    std::vector<AgePoint> points;

    void refill(const Routine& routine, Share by) {
        const double share = by.of1, apart = mean - routine.refillAge.d;
        variance = (1 - share) * variance + share * square(routine.refillAgeSd.d) + share * (1 - share) * square(apart);
        mean -= share * apart;
        first *= 1 - share;
    }
    void draw(const Routine& routine, Share refilled) {
        since += routine.interval.d;
        mean += routine.interval.d;
        AgePoint point{static_cast<int>(points.size()) + 1, {since}, {mean}, {}, {std::sqrt(variance)}, {}};
        refill(routine, refilled);
        point.after = {mean};
        point.first = {first};
        points.push_back(point);
    }
};

/// `gapAt`: days to the next draw, by the mean age after the refill.
template <class GapAt>
std::vector<AgePoint> grown(Routine routine, int draws, const Beginning& from, const GapAt& gapAt) {
    Growing growing{from.age.d, square(from.sd.d), 1, 0, {}};
    if (from.drawn)
        growing.refill(routine, from.refilled.value_or(refillShare(routine)));
    for (int n = 0; n < draws; ++n) {
        const bool asItStands = n == 0 && !from.drawn;
        routine.interval = asItStands && from.until ? *from.until : gapAt(Days{growing.mean});
        growing.draw(routine, asItStands && from.refilled ? *from.refilled : refillShare(routine));
    }
    return growing.points;
}

} // namespace

std::vector<AgePoint> growth(const Routine& routine, int draws, const Beginning& from) {
    return grown(routine, draws, from, [&](Days) { return routine.interval; });
}

std::vector<AgePoint> growthAtAge(const Routine& routine, Days wanted, int draws, const Beginning& from,
                                  Days leastGap) {
    const auto gapAt = [&](Days age) { return Days{std::max(leastGap.d, wanted.d - age.d)}; };
    Beginning begin = from;
    if (!begin.until)
        begin.until = Days{std::max(0.0, wanted.d - from.age.d)};
    return grown(routine, draws, begin, gapAt);
}

std::optional<int> settledFrom(const std::vector<AgePoint>& points, Days at, Days near) {
    const auto apart = std::find_if(points.rbegin(), points.rend(),
                                    [&](const AgePoint& point) { return std::abs(point.before.d - at.d) > near.d; });
    if (apart == points.rbegin())
        return std::nullopt;
    return static_cast<int>(points.rend() - apart) + 1;
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
    std::vector<double> moved(static_cast<std::size_t>(vessels)); // chance of having moved i times so far
    moved[0] = 1;
    double intervals = 0;
    for (int j = 0; j < draw; ++j) {
        for (const double chance : moved)
            intervals += chance;
        for (std::size_t i = moved.size(); i-- > 0;)
            moved[i] =
                moved[i] * (1 - shareInRow(routine, i)) + (i > 0 ? moved[i - 1] * shareInRow(routine, i - 1) : 0);
    }
    return {routine.refillAge.d + routine.interval.d * intervals};
}

/// Each vessel adds what one alone would, for its own share.
SettledAge settledAgeInRow(const Routine& routine, int vessels) {
    double before = routine.refillAge.d, variance = square(routine.refillAgeSd.d);
    for (int i = 0; i < vessels; ++i) {
        const double share = shareInRow(routine, static_cast<std::size_t>(i));
        before += routine.interval.d / share;
        variance += square(routine.interval.d) * (1 - share) / square(share);
    }
    return {{before}, {before - routine.interval.d}, {std::sqrt(variance)}};
}

/// The longer the interval, the older.
std::optional<Days> intervalForRow(const Routine& routine, int vessels, Days wanted) {
    Routine tried = routine;
    double low = 0, high = longestAge;
    for (int i = 0; i < 80; ++i) {
        tried.interval = {(low + high) / 2};
        (settledAgeInRow(tried, vessels).beforeDraw < wanted ? low : high) = tried.interval.d;
    }
    const bool fits = refillOfRow(tried, vessels) <= routine.filled;
    const bool met = std::abs(settledAgeInRow(tried, vessels).beforeDraw.d - wanted.d) < 1e-3;
    return fits && met && wanted > routine.refillAge ? std::optional(tried.interval) : std::nullopt;
}

int drawsToSettleInRow(const Routine& routine, int vessels, Share rest, int most) {
    const double settled = settledAgeInRow(routine, vessels).beforeDraw.d;
    const double near = rest.of1 * (settled - routine.refillAge.d);
    int draw = 1;
    while (draw < most && settled - ageInRow(routine, vessels, draw).d > near)
        ++draw;
    return draw;
}

Litres refillOfRow(const Routine& routine, int vessels) {
    return routine.draw + evaporated(routine) * vessels;
}

std::optional<Share> shareToReach(Days now, Days wanted, Days refillAge) {
    if (wanted.d >= now.d || refillAge.d >= wanted.d)
        return std::nullopt;
    return Share{(now.d - wanted.d) / (now.d - refillAge.d)};
}

} // namespace staveline::vessel
