// SPDX-License-Identifier: GPL-3.0-or-later
// What charts say in words: at one day, and as a whole.
#pragma once

#include "ui/chart/chart.h"

#include <QStringList>

namespace staveline::ui {

/// What a series has to say at a day.
struct SeriesReading {
    const ChartSeries* series = nullptr;
    ChartPoint point; ///< its day is that of the point it comes from
};
/// Points: the last one up to that day. Promises: the nearest, at most two months away. Lines: in between. Steps and
/// windows: what holds. Nothing before the first point, nothing on a line after the last.
[[nodiscard]] std::optional<SeriesReading> readingAt(const ChartSeries& series, Day day);

/// "6.4", "6.4 ±0.5", "1.004 SG", "5.0 to 7.0"
[[nodiscard]] QString valueWords(const ChartPanel& panel, const ChartSeries& series, const ChartPoint& point);
/// "tasted 6.4 ±0.5", with its day when that is another one.
[[nodiscard]] QString seriesWords(const ChartPanel& panel, const ChartSeries& series, Day day);
/// "Acidity: tasted 6.4 ±0.5, promised 5.9 ±0.8", "pH 3.31 on 2 Mar 2025"; empty: nothing is known at that day.
[[nodiscard]] QString panelWords(const ChartPanel& panel, Day day);
/// "12 May 2025: 60 L drawn for Draw 14; 66 L refilled."
[[nodiscard]] QString eventWords(const ChartData& chartData, Day day);
/// A panel as one sentence: how many, from where to where, the last.
[[nodiscard]] QString summaryWords(const ChartPanel& panel);

} // namespace staveline::ui
