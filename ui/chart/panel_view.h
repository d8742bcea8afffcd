// SPDX-License-Identifier: GPL-3.0-or-later
// One panel on the screen: a head that folds it, and its plot, drawn once and kept.
#pragma once

#include "ui/chart/panel_paint.h"
#include "ui/chart/time_drag.h"

#include <QPixmap>
#include <QWidget>

namespace staveline::ui {

class PanelView : public QWidget {
    Q_OBJECT
public:
    /// The data outlives the view.
    PanelView(const ChartData& chartData, std::size_t panel, QWidget* parent);
    void setSpan(const TimeSpan& span);
    void setOpen(bool open);
    void setCursorDay(std::optional<Day> day);
    [[nodiscard]] bool isOpen() const { return open_; }
    [[nodiscard]] const ChartPanel& panel() const { return chartData_.panels[panel_]; }
    [[nodiscard]] PlotFrame frame() const; ///< where its plot is
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override { return sizeHint(); }

Q_SIGNALS:
    void pointed(std::chrono::sys_days day); ///< the mouse is over that day
    void foldAsked();
    void dragged(const staveline::ui::TimeSpan& span); ///< the mouse took the time along

protected:
    bool event(QEvent* event) override; ///< the tool tip says what the chart says at the mouse
    void paintEvent(QPaintEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void changeEvent(QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    [[nodiscard]] ChartStyle chartStyle() const;
    [[nodiscard]] QRectF plotBox() const;
    [[nodiscard]] bool inPlot(const QPointF& at) const;
    [[nodiscard]] bool plotted() const { return open_ && !panel().empty(); }
    void refit();
    void redraw(); ///< the plot anew when it is next seen

    const ChartData& chartData_;
    std::size_t panel_;
    TimeSpan span_;
    bool open_ = true;
    std::optional<Day> cursor_;
    TimeDrag drag_{*this};
    QPixmap plot_;
};

/// Look of a widget: its palette and font.
[[nodiscard]] ChartStyle styleOf(const QWidget& widget);

} // namespace staveline::ui
