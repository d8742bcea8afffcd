// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/chart/scale.h"

#include "ui/present/text.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace staveline::ui {
namespace {

constexpr int shortest = 14; // days shown at least

struct DateStep {
    enum class Unit { day, month, year } unit;
    int count;
    int days; ///< about
};
constexpr std::array dateSteps = {DateStep{DateStep::Unit::day, 1, 1},      DateStep{DateStep::Unit::day, 2, 2},
                                  DateStep{DateStep::Unit::day, 7, 7},      DateStep{DateStep::Unit::day, 14, 14},
                                  DateStep{DateStep::Unit::month, 1, 30},   DateStep{DateStep::Unit::month, 3, 91},
                                  DateStep{DateStep::Unit::month, 6, 182},  DateStep{DateStep::Unit::year, 1, 365},
                                  DateStep{DateStep::Unit::year, 2, 730},   DateStep{DateStep::Unit::year, 5, 1826},
                                  DateStep{DateStep::Unit::year, 10, 3652}, DateStep{DateStep::Unit::year, 50, 18262}};

int floorTo(int value, int step) {
    return value - ((value % step) + step) % step;
}

/// The first round date at or before a day.
Day roundDown(Day day, const DateStep& step) {
    const std::chrono::year_month_day civil{day};
    switch (step.unit) {
    case DateStep::Unit::day:
        return Day{std::chrono::days{floorTo(static_cast<int>(day.time_since_epoch().count()), step.count)}};
    case DateStep::Unit::month: {
        const auto month = static_cast<unsigned>(floorTo(static_cast<int>(unsigned{civil.month()}) - 1, step.count));
        return civil.year() / static_cast<int>(month + 1) / 1;
    }
    case DateStep::Unit::year:
        break;
    }
    return std::chrono::year{floorTo(int{civil.year()}, step.count)} / 1 / 1;
}

Day next(Day day, const DateStep& step) {
    const std::chrono::year_month_day civil{day};
    switch (step.unit) {
    case DateStep::Unit::day:
        return day + std::chrono::days{step.count};
    case DateStep::Unit::month:
        return civil + std::chrono::months{step.count};
    case DateStep::Unit::year:
        break;
    }
    return civil + std::chrono::years{step.count};
}

QString labelOf(Day day, const DateStep& step) {
    const QString words = dayWords(day); // "2 Mar 2026"
    switch (step.unit) {
    case DateStep::Unit::day:
        return words.section(QLatin1Char(' '), 0, 1);
    case DateStep::Unit::month:
        return words.section(QLatin1Char(' '), 1, 2);
    case DateStep::Unit::year:
        break;
    }
    return words.section(QLatin1Char(' '), 2, 2);
}

void stretch(double& low, double& high, const ChartSeries& series) {
    for (const ChartPoint& point : series.points) {
        low = std::min({low, point.value, point.low});
        high = std::max({high, point.value, point.high});
    }
}

} // namespace

std::vector<double> ValueScale::ticks() const {
    std::vector<double> at;
    const int count = static_cast<int>(std::lround((high - low) / step));
    at.reserve(static_cast<std::size_t>(count) + 1);
    for (int i = 0; i <= count; ++i)
        at.push_back(low + i * step);
    return at;
}

ValueScale roundScale(double low, double high, int most) {
    if (!(high > low)) {
        const double room = std::max(std::abs(low) * .1, 1e-3);
        low -= room;
        high += room;
    }
    const double rough = (high - low) / std::max(most, 1);
    double step = std::pow(10, std::floor(std::log10(rough)));
    for (int grow = 0; std::ceil(high / step - 1e-9) - std::floor(low / step + 1e-9) > most; ++grow)
        step *= grow % 3 == 1 ? 2.5 : 2; // 1, 2, 5, 10, ...
    return {std::floor(low / step + 1e-9) * step, std::ceil(high / step - 1e-9) * step, step};
}

ValueScale scaleOf(const ChartPanel& panel, int most) {
    double low = std::numeric_limits<double>::infinity(), high = -low;
    for (const ChartSeries& series : panel.series)
        stretch(low, high, series);
    if (panel.low)
        low = *panel.low;
    if (panel.high)
        high = *panel.high;
    if (!std::isfinite(low) || !std::isfinite(high))
        return {};
    const double lacking = std::max(0.0, panel.least - (high - low)) / 2;
    return roundScale(panel.low ? low : low - lacking, panel.high ? high : high + lacking, most);
}

std::vector<TimeTick> timeTicks(const TimeSpan& span, double labelShare) {
    const double room = std::max(labelShare, 1e-3) * std::max(span.days(), 1);
    const auto* step = std::find_if(dateSteps.begin(), dateSteps.end() - 1,
                                    [&](const DateStep& candidate) { return candidate.days >= room; });
    std::vector<TimeTick> ticks;
    for (Day day = roundDown(span.from, *step); day <= span.to; day = next(day, *step))
        if (day >= span.from)
            ticks.push_back({day, labelOf(day, *step)});
    return ticks;
}

double partOf(const TimeSpan& span, Day on) {
    return static_cast<double>(daysBetween(span.from, on)) / std::max(span.days(), 1);
}

Day dayAt(const TimeSpan& span, double part) {
    return span.from + std::chrono::days{std::lround(part * span.days())};
}

TimeSpan within(const TimeSpan& span, const TimeSpan& whole) {
    const int length = std::clamp(span.days(), std::min(shortest, whole.days()), std::max(whole.days(), 0));
    const Day latest = whole.to - std::chrono::days{length};
    const Day from = std::clamp(span.from, whole.from, std::max(whole.from, latest));
    return {from, from + std::chrono::days{length}};
}

std::vector<ChartPoint> thinned(const std::vector<ChartPoint>& points, const TimeSpan& span, int columns) {
    const auto earlier = [](const ChartPoint& point, Day day) { return point.on < day; };
    auto first = std::lower_bound(points.begin(), points.end(), span.from, earlier);
    auto last = std::lower_bound(first, points.end(), span.to + std::chrono::days{1}, earlier);
    first -= first != points.begin();
    last += last != points.end();
    if (last - first <= 2 * std::max(columns, 1))
        return {first, last};
    std::vector<ChartPoint> kept;
    const auto column = [&](const ChartPoint& point) { return std::floor(partOf(span, point.on) * columns); };
    while (first != last) {
        auto end = std::find_if(first, last, [&](const ChartPoint& point) { return column(point) != column(*first); });
        const auto [low, high] =
            std::minmax_element(first, end, [](const ChartPoint& a, const ChartPoint& b) { return a.value < b.value; });
        std::array at{first, low, high, end - 1};
        std::sort(at.begin(), at.end());
        for (auto i = at.begin(), stop = std::unique(at.begin(), at.end()); i != stop; ++i)
            kept.push_back(**i);
        first = end;
    }
    return kept;
}

} // namespace staveline::ui
