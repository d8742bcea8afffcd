// SPDX-License-Identifier: GPL-3.0-or-later
// Draws one panel. Only its implementation knows Qt Charts.
#pragma once

#include "ui/chart/scale.h"

#include <QFont>
#include <QPalette>
#include <QRectF>

class QPainter;

namespace staveline::ui {

/// What all panels of a stack share.
struct ChartStyle {
    QPalette palette;
    QFont font;
    double line = 16;                                        ///< height of a line of text
    [[nodiscard]] double left() const { return 3.6 * line; } ///< room for the value labels
    [[nodiscard]] double right() const { return .9 * line; }
};

/// A plot and where its parts are; built once for each size, span and look.
struct PlotFrame {
    QRectF area; ///< within the axes
    TimeSpan span;
    ValueScale scale;
    [[nodiscard]] double x(Day on) const { return area.left() + partOf(span, on) * area.width(); }
    [[nodiscard]] double y(double value) const {
        return area.bottom() - (value - scale.low) / (scale.high - scale.low) * area.height();
    }
    [[nodiscard]] Day dayAtX(double at) const;
};
[[nodiscard]] PlotFrame frameOf(const ChartPanel& panel, const QRectF& box, const TimeSpan& span,
                                const ChartStyle& style);

/// Axes, lines, bands, points and their bars within `box`.
void paintPlot(QPainter& painter, const QRectF& box, const ChartData& chartData, const ChartPanel& panel,
               const TimeSpan& span, const ChartStyle& style);
/// Rings around what the panel says at a day, and the line through it; quick, drawn on each move.
void paintCursor(QPainter& painter, const PlotFrame& frame, const ChartPanel& panel, Day day, const ChartStyle& style);

/// A shape as the plot draws it, for the legend too.
void paintShape(QPainter& painter, QPointF centre, double side, Shape shape, const QColor& ink, bool open,
                const QColor& background);
/// The sign of a series before its name: shape, dash or band.
void paintSign(QPainter& painter, const QRectF& box, const ChartSeries& series, const ChartStyle& style);

} // namespace staveline::ui
