// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/chart/reading.h"

#include "ui/present/text.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace staveline::ui {
namespace {

constexpr int promiseReach = 61; // days

QString tr(const char* source) {
    return QCoreApplication::translate("Chart", source);
}

using Points = std::vector<ChartPoint>;

/// The first point after a day.
Points::const_iterator after(const Points& points, Day day) {
    return std::upper_bound(points.begin(), points.end(), day,
                            [](Day a, const ChartPoint& point) { return a < point.on; });
}

std::optional<ChartPoint> nearest(const Points& points, Day day) {
    const auto next = after(points, day);
    std::optional<ChartPoint> best;
    const auto consider = [&](const ChartPoint& point) {
        const int away = std::abs(daysBetween(point.on, day));
        if (away <= promiseReach && (!best || away < std::abs(daysBetween(best->on, day))))
            best = point;
    };
    if (next != points.begin())
        consider(*(next - 1));
    if (next != points.end())
        consider(*next);
    return best;
}

std::optional<ChartPoint> between(const Points& points, Day day) {
    const auto next = after(points, day);
    if (next == points.begin())
        return std::nullopt;
    const ChartPoint& before = *(next - 1);
    if (before.on == day)
        return before;
    if (next == points.end())
        return std::nullopt;
    const double part =
        static_cast<double>(daysBetween(before.on, day)) / std::max(daysBetween(before.on, next->on), 1);
    return plainPoint(day, before.value + part * (next->value - before.value));
}

std::optional<ChartPoint> pointAt(const ChartSeries& series, Day day) {
    switch (series.kind) {
    case SeriesKind::promises:
        return nearest(series.points, day);
    case SeriesKind::line:
        return between(series.points, day);
    case SeriesKind::points:
    case SeriesKind::step:
    case SeriesKind::band:
        break;
    }
    const auto next = after(series.points, day);
    return next == series.points.begin() ? std::nullopt : std::optional(*(next - 1));
}

QString number(const ChartPanel& panel, double value) {
    const QString words = numberWords(value, panel.decimals);
    return words == QLatin1Char('-') + numberWords(0, panel.decimals) ? words.mid(1) : words;
}

double said(const ChartPoint& point) {
    return point.told.value_or(point.value);
}

bool saysItsDay(const ChartSeries& series) {
    return series.kind == SeriesKind::points || series.kind == SeriesKind::promises;
}

QString rangeWords(const ChartPanel& panel, const ChartSeries& series, const QString& both) {
    const auto [low, high] =
        std::minmax_element(series.points.begin(), series.points.end(),
                            [](const ChartPoint& a, const ChartPoint& b) { return said(a) < said(b); });
    const QString first = number(panel, said(*low)), second = number(panel, said(*high));
    return first == second ? tr("always %1").arg(first) : both.arg(first, second);
}

QString seriesSummary(const ChartPanel& panel, const ChartSeries& series) {
    const ChartPoint& last = series.points.back();
    const QString shown = valueWords(panel, series, last);
    QStringList parts;
    if (series.kind == SeriesKind::band)
        parts << tr("now %1").arg(shown);
    else if (series.kind == SeriesKind::line)
        parts << rangeWords(panel, series, tr("between %1 and %2")) << tr("now %1").arg(shown);
    else if (series.points.size() == 1)
        parts << tr("once, %1 on %2").arg(shown, dayWords(last.on));
    else
        parts << tr("%1 times").arg(series.points.size()) << rangeWords(panel, series, tr("from %1 to %2"))
              << tr("last %1 on %2").arg(shown, dayWords(last.on));
    return (series.name + QLatin1Char(' ') + parts.join(tr(", "))).trimmed();
}

/// The value, with its day when that is another one.
QString wordsAt(const ChartPanel& panel, const ChartSeries& series, Day day) {
    const auto reading = readingAt(series, day);
    if (!reading)
        return {};
    const QString words = valueWords(panel, series, reading->point);
    if (!saysItsDay(series) || reading->point.on == day)
        return words;
    const QString on = dayWords(reading->point.on);
    return series.kind == SeriesKind::promises ? tr("%1 for %2").arg(words, on) : tr("%1 on %2").arg(words, on);
}

} // namespace

std::optional<SeriesReading> readingAt(const ChartSeries& series, Day day) {
    const auto point = pointAt(series, day);
    return point ? std::optional(SeriesReading{&series, *point}) : std::nullopt;
}

QString valueWords(const ChartPanel& panel, const ChartSeries& series, const ChartPoint& point) {
    QString words = number(panel, said(point));
    if (series.kind == SeriesKind::band)
        words = tr("%1 to %2").arg(number(panel, point.low), number(panel, point.high));
    else if (point.high > point.low)
        words += tr(" ±%1").arg(number(panel, (point.high - point.low) / 2));
    return panel.unit.isEmpty() ? words : words + QLatin1Char(' ') + panel.unit;
}

QString seriesWords(const ChartPanel& panel, const ChartSeries& series, Day day) {
    const QString words = wordsAt(panel, series, day);
    return words.isEmpty() || series.name.isEmpty() ? words : series.name + QLatin1Char(' ') + words;
}

QString panelWords(const ChartPanel& panel, Day day) {
    const auto spoken = std::count_if(panel.series.begin(), panel.series.end(),
                                      [](const ChartSeries& series) { return series.spoken; });
    QStringList parts;
    for (const ChartSeries& series : panel.series)
        if (const QString words = series.spoken ? wordsAt(panel, series, day) : QString(); !words.isEmpty())
            parts << (spoken > 1 ? series.name + QLatin1Char(' ') + words : words);
    if (parts.isEmpty())
        return {};
    return (spoken > 1 ? tr("%1: %2") : tr("%1 %2")).arg(panel.title, parts.join(tr(", ")));
}

QString eventWords(const ChartData& chartData, Day day) {
    QStringList parts;
    for (const ChartEvent& event : chartData.events)
        if (event.on == day && !event.words.isEmpty())
            parts << event.words;
    if (parts.isEmpty())
        return dayWords(day);
    return tr("%1: %2").arg(dayWords(day), parts.join(tr("; ")));
}

QString summaryWords(const ChartPanel& panel) {
    if (panel.empty())
        return panel.nothing;
    QStringList parts;
    for (const ChartSeries& series : panel.series)
        if (!series.points.empty())
            parts << seriesSummary(panel, series);
    return tr("%1: %2.").arg(panel.title, parts.join(tr("; ")));
}

} // namespace staveline::ui
