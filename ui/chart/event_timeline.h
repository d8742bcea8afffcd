// SPDX-License-Identifier: GPL-3.0-or-later
// The foot of a stack: dates and the marks of what happened.
#pragma once

#include "ui/chart/plot.h"
#include "ui/chart/time_drag.h"

#include <QWidget>

namespace staveline::ui {

class EventTimeline : public QWidget {
    Q_OBJECT
public:
    EventTimeline(const ChartData& chartData, QWidget* parent);
    void show(const TimeSpan& span, std::optional<Day> cursor);
    void setGap(int gap); ///< on the right, as wide as the panels' scroll bar
    [[nodiscard]] QSize sizeHint() const override;

Q_SIGNALS:
    void pointed(std::chrono::sys_days day);
    void dragged(const staveline::ui::TimeSpan& span);

protected:
    bool event(QEvent* event) override; ///< the tool tip of a mark says what happened
    void paintEvent(QPaintEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;

private:
    [[nodiscard]] QRectF box() const;
    [[nodiscard]] PlotFrame frame() const;
    [[nodiscard]] const ChartEvent* eventAt(double x) const; ///< null: no mark is near
    const ChartData& chartData_;
    TimeSpan span_;
    std::optional<Day> cursor_;
    TimeDrag drag_{*this};
    int gap_ = 0;
};

} // namespace staveline::ui
