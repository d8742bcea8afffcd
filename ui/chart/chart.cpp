// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/chart/chart.h"

#include <algorithm>

namespace staveline::ui {

bool ChartPanel::empty() const {
    // A target window alone is nothing to look at.
    return std::none_of(series.begin(), series.end(),
                        [](const ChartSeries& one) { return one.kind != SeriesKind::band && !one.points.empty(); });
}

std::vector<Day> ChartData::stops() const {
    std::vector<Day> days;
    days.reserve(events.size());
    for (const ChartEvent& event : events)
        days.push_back(event.on);
    std::sort(days.begin(), days.end());
    days.erase(std::unique(days.begin(), days.end()), days.end());
    return days;
}

} // namespace staveline::ui
