// SPDX-License-Identifier: GPL-3.0-or-later
// Round numbers along the value axis and round dates along the time axis.
#pragma once

#include "ui/chart/chart.h"

namespace staveline::ui {

struct ValueScale {
    double low = 0, high = 1, step = 1;
    [[nodiscard]] std::vector<double> ticks() const;
};
/// Covers low..high with at most `most` steps of 1, 2 or 5; a single value gets room on both sides.
[[nodiscard]] ValueScale roundScale(double low, double high, int most);
/// What the panel asks for, else what its points need.
[[nodiscard]] ValueScale scaleOf(const ChartPanel& panel, int most);

struct TimeTick {
    Day on{};
    QString label; ///< "2024", "Apr 2024", "12 Apr"
};
/// As many as fit when each label takes `labelShare` of the span, 0..1.
[[nodiscard]] std::vector<TimeTick> timeTicks(const TimeSpan& span, double labelShare);

/// 0 at the start of the span, 1 at its end; outside it below 0 or above 1.
[[nodiscard]] double partOf(const TimeSpan& span, Day on);
[[nodiscard]] Day dayAt(const TimeSpan& span, double part);
/// Moved and cut so that it lies within `whole`; never shorter than a fortnight when there is one.
[[nodiscard]] TimeSpan within(const TimeSpan& span, const TimeSpan& whole);

/// At most four points a column of `columns` over the span, first, last, lowest and highest, and one beyond each end:
/// a line looks the same. Short lists come back as they are.
[[nodiscard]] std::vector<ChartPoint> thinned(const std::vector<ChartPoint>& points, const TimeSpan& span, int columns);

} // namespace staveline::ui
