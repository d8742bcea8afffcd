// SPDX-License-Identifier: GPL-3.0-or-later
// The time under the mouse taken along: the day that was pressed stays under it.
#pragma once

#include "ui/chart/chart.h"

#include <QWidget>

#include <cmath>

class QMouseEvent;

namespace staveline::ui {

class TimeDrag {
public:
    explicit TimeDrag(QWidget& on) : on_(on) {}
    /// Nothing is taken along while all there is is shown.
    void press(double x, const TimeSpan& span, const TimeSpan& whole) {
        if (span == whole)
            return;
        from_ = {x, span};
        on_.setCursor(Qt::ClosedHandCursor);
    }
    [[nodiscard]] bool active() const { return from_.has_value(); }
    /// The time to show when the mouse is at `x`; `width` of the plot.
    [[nodiscard]] TimeSpan at(double x, double width) const {
        const auto by = std::chrono::days{std::lround((from_->first - x) / width * from_->second.days())};
        return {from_->second.from + by, from_->second.to + by};
    }
    void release() {
        from_.reset();
        on_.unsetCursor();
    }

private:
    QWidget& on_;
    std::optional<std::pair<double, TimeSpan>> from_;
};

} // namespace staveline::ui
