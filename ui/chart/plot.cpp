// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/chart/plot.h"

#include "ui/chart/reading.h"
#include "ui/present/text.h"

#include <QAreaSeries>
#include <QCategoryAxis>
#include <QChart>
#include <QGraphicsLayout>
#include <QGraphicsScene>
#include <QLegend>
#include <QLineSeries>
#include <QPainter>
#include <QPainterPath>
#include <QValueAxis>

#include <algorithm>
#include <cmath>

namespace staveline::ui {
namespace {

constexpr int mostSteps = 4;    // along the value axis
constexpr double padding = .55; // above and below the plot, in lines: half a label
constexpr double markSide = .6;

int decimalsOf(double step) {
    return std::max(0, static_cast<int>(-std::floor(std::log10(step) + 1e-9)));
}

QColor faint(QColor colour, double strength) {
    colour.setAlphaF(static_cast<float>(strength));
    return colour;
}

QColor inkOf(const ChartSeries& series, const ChartStyle& style) {
    return tone(style.palette, series.tone);
}

/// One panel as a Qt chart in a scene of its own.
class Scene {
public:
    Scene(const PlotFrame& frame, const QRectF& box, const ChartStyle& style)
        : frame_(frame), style_(style), chart_(new QChart), time_(new QCategoryAxis), value_(new QValueAxis) {
        scene_.addItem(chart_);
        chart_->legend()->hide();
        chart_->setBackgroundVisible(false);
        chart_->setPlotAreaBackgroundVisible(false);
        chart_->setMargins({});
        chart_->layout()->setContentsMargins(0, 0, 0, 0);
        setUpAxes();
        chart_->setPlotArea(frame.area.translated(-box.topLeft()));
        chart_->resize(box.size());
        // Axes take the plot area only when the layout runs.
        chart_->layout()->invalidate();
        chart_->layout()->activate();
        scene_.setSceneRect(QRectF(QPointF(0, 0), box.size()));
    }
    void add(const ChartSeries& series) {
        const auto points = thinned(series.points, frame_.span, static_cast<int>(frame_.area.width()));
        if (points.empty())
            return;
        if (series.kind == SeriesKind::band)
            addBand(series, points);
        else if (series.kind == SeriesKind::line || series.kind == SeriesKind::step || series.joined)
            addLine(series, points);
    }
    void paint(QPainter& painter, const QRectF& box) { scene_.render(&painter, box, scene_.sceneRect()); }

private:
    void setUpAxes() {
        const QPen grid(hairline(style_.palette), style_.line / 18);
        time_->setRange(0, std::max(frame_.span.days(), 1));
        time_->setLabelsVisible(false);
        time_->setLabelsPosition(QCategoryAxis::AxisLabelsPositionOnValue);
        for (const TimeTick& tick : timeTicks(frame_.span, 5 * style_.line / frame_.area.width()))
            time_->append(tick.label, at(tick.on));
        value_->setRange(frame_.scale.low, frame_.scale.high);
        value_->setTickCount(static_cast<int>(frame_.scale.ticks().size()));
        value_->setLabelsVisible(false); // Qt Charts cuts labels that do not fit its own idea of the margin
        for (QAbstractAxis* axis : {static_cast<QAbstractAxis*>(time_), static_cast<QAbstractAxis*>(value_)}) {
            axis->setGridLinePen(grid);
            axis->setLinePen(grid);
        }
        chart_->addAxis(time_, Qt::AlignBottom);
        chart_->addAxis(value_, Qt::AlignLeft);
    }
    [[nodiscard]] double at(Day on) const { return daysBetween(frame_.span.from, on); }

    /// Holds each value until the next point.
    [[nodiscard]] QList<QPointF> steps(const std::vector<ChartPoint>& points, double ChartPoint::*part) const {
        QList<QPointF> list;
        for (const ChartPoint& point : points) {
            if (!list.isEmpty())
                list << QPointF(at(point.on), list.back().y());
            list << QPointF(at(point.on), point.*part);
        }
        return list;
    }
    void attach(QAbstractSeries* series) {
        chart_->addSeries(series);
        series->attachAxis(time_);
        series->attachAxis(value_);
    }
    void addLine(const ChartSeries& series, const std::vector<ChartPoint>& points) {
        auto* drawn = new QLineSeries;
        if (series.kind == SeriesKind::step) {
            drawn->replace(steps(points, &ChartPoint::value));
        } else {
            QList<QPointF> list;
            for (const ChartPoint& point : points)
                list << QPointF(at(point.on), point.value);
            drawn->replace(list);
        }
        drawn->setPen(QPen(inkOf(series, style_), style_.line / (series.joined ? 20 : 9), Qt::SolidLine, Qt::FlatCap,
                           Qt::BevelJoin));
        attach(drawn);
    }
    void addBand(const ChartSeries& series, const std::vector<ChartPoint>& points) {
        auto* area = new QAreaSeries;
        auto* low = new QLineSeries(area);
        auto* high = new QLineSeries(area);
        low->replace(steps(points, &ChartPoint::low));
        high->replace(steps(points, &ChartPoint::high));
        area->setLowerSeries(low);
        area->setUpperSeries(high);
        area->setBrush(faint(inkOf(series, style_), .13));
        area->setPen(QPen(faint(inkOf(series, style_), .6), style_.line / 18));
        attach(area);
    }

    const PlotFrame& frame_;
    const ChartStyle& style_;
    QGraphicsScene scene_;
    QChart* chart_;
    QCategoryAxis* time_;
    QValueAxis* value_;
};

/// Right-aligned beside the axis; every second one where they would touch.
void paintLabels(QPainter& painter, const PlotFrame& frame, const ChartStyle& style) {
    painter.setFont(font(style.font, Type::small));
    painter.setPen(quietText(style.palette));
    const auto ticks = frame.scale.ticks();
    const double apart = frame.area.height() / std::max<double>(1, static_cast<double>(ticks.size() - 1));
    const std::size_t every = apart < style.line * .85 ? 2 : 1;
    for (std::size_t i = 0; i < ticks.size(); i += every) {
        const QRectF box(frame.area.left() - style.left(), frame.y(ticks[i]) - style.line / 2,
                         style.left() - style.line * .4, style.line);
        painter.drawText(box, Qt::AlignRight | Qt::AlignVCenter, numberWords(ticks[i], decimalsOf(frame.scale.step)));
    }
}

void paintChanges(QPainter& painter, const PlotFrame& frame, const ChartData& chartData, const ChartStyle& style) {
    painter.setPen(QPen(hairline(style.palette), style.line / 12, Qt::DotLine));
    double last = -1e9;
    for (const ChartEvent& event : chartData.events) {
        const double x = frame.x(event.on);
        if (!event.change || x < frame.area.left() || x > frame.area.right() || x - last < style.line * .15)
            continue;
        painter.drawLine(QPointF(x, frame.area.top()), QPointF(x, frame.area.bottom()));
        last = x;
    }
}

void paintBar(QPainter& painter, const PlotFrame& frame, const ChartSeries& series, const ChartPoint& point,
              const ChartStyle& style) {
    if (point.high <= point.low)
        return;
    const double x = frame.x(point.on), low = frame.y(point.low), high = frame.y(point.high);
    const QColor ink = inkOf(series, style);
    if (series.kind == SeriesKind::promises) {
        const double half = style.line * .42;
        painter.setPen(QPen(ink, style.line / 18));
        painter.setBrush(faint(ink, .25));
        painter.drawRect(QRectF(QPointF(x - half, high), QPointF(x + half, low)));
        return;
    }
    const double cap = style.line * .16;
    painter.setPen(QPen(ink, style.line / 13));
    painter.drawLine(QPointF(x, low), QPointF(x, high));
    painter.drawLine(QPointF(x - cap, low), QPointF(x + cap, low));
    painter.drawLine(QPointF(x - cap, high), QPointF(x + cap, high));
}

void paintPoints(QPainter& painter, const PlotFrame& frame, const ChartSeries& series, const ChartStyle& style) {
    const auto points = thinned(series.points, frame.span, static_cast<int>(frame.area.width()));
    // Many points get small shapes, or they hide each other.
    const double crowd = frame.area.width() / std::max<double>(1, static_cast<double>(points.size()));
    const double side = style.line * std::clamp(crowd / style.line, .3, 1.0) * markSide;
    for (const ChartPoint& point : points)
        paintBar(painter, frame, series, point, style);
    for (const ChartPoint& point : points)
        paintShape(painter, QPointF(frame.x(point.on), frame.y(point.value)), side, series.shape, inkOf(series, style),
                   series.kind == SeriesKind::promises, style.palette.color(QPalette::Base));
}

QPainterPath pathOf(Shape shape, const QRectF& box) {
    QPainterPath path;
    switch (shape) {
    case Shape::none:
        break;
    case Shape::disc:
        path.addEllipse(box);
        break;
    case Shape::square:
        path.addRect(box.adjusted(box.width() * .08, box.height() * .08, -box.width() * .08, -box.height() * .08));
        break;
    case Shape::diamond: {
        const double grow = box.width() * .12;
        const QRectF b = box.adjusted(-grow, -grow, grow, grow);
        path.addPolygon(QPolygonF({{b.center().x(), b.top()},
                                   {b.right(), b.center().y()},
                                   {b.center().x(), b.bottom()},
                                   {b.left(), b.center().y()}}));
        break;
    }
    case Shape::up:
        path.addPolygon(QPolygonF({box.bottomLeft(), {box.center().x(), box.top()}, box.bottomRight()}));
        break;
    case Shape::down:
        path.addPolygon(QPolygonF({box.topLeft(), {box.center().x(), box.bottom()}, box.topRight()}));
        break;
    }
    path.closeSubpath();
    return path;
}

} // namespace

Day PlotFrame::dayAtX(double at) const {
    return dayAt(span, std::clamp((at - area.left()) / area.width(), 0.0, 1.0));
}

PlotFrame frameOf(const ChartPanel& panel, const QRectF& box, const TimeSpan& span, const ChartStyle& style) {
    const double pad = padding * style.line;
    return {box.adjusted(style.left(), pad, -style.right(), -pad), span, scaleOf(panel, mostSteps)};
}

void paintPlot(QPainter& painter, const QRectF& box, const ChartData& chartData, const ChartPanel& panel,
               const TimeSpan& span, const ChartStyle& style) {
    const PlotFrame frame = frameOf(panel, box, span, style);
    if (frame.area.width() < style.line || frame.area.height() < style.line)
        return;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillRect(frame.area, style.palette.color(QPalette::Base));
    paintChanges(painter, frame, chartData, style);
    Scene scene(frame, box, style);
    for (const ChartSeries& series : panel.series)
        scene.add(series);
    scene.paint(painter, box);
    paintLabels(painter, frame, style);
    const double over = style.line * markSide / 2;
    painter.setClipRect(frame.area.adjusted(-over, -over, over, over), Qt::IntersectClip);
    for (const ChartSeries& series : panel.series)
        if (series.shape != Shape::none)
            paintPoints(painter, frame, series, style);
    painter.restore();
}

void paintCursor(QPainter& painter, const PlotFrame& frame, const ChartPanel& panel, Day day, const ChartStyle& style) {
    const double x = frame.x(day);
    if (x < frame.area.left() - 1 || x > frame.area.right() + 1)
        return;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const QColor ink = style.palette.color(QPalette::WindowText);
    painter.setPen(QPen(ink, style.line / 14));
    painter.drawLine(QPointF(x, frame.area.top()), QPointF(x, frame.area.bottom()));
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(ink, style.line / 10));
    const double ring = style.line * .42;
    for (const ChartSeries& series : panel.series) {
        const auto point = series.kind == SeriesKind::band ? std::nullopt : readingAt(series, day);
        if (point && frame.span.from <= point->point.on && point->point.on <= frame.span.to)
            painter.drawEllipse(QPointF(frame.x(point->point.on), frame.y(point->point.value)), ring, ring);
    }
    painter.restore();
}

void paintShape(QPainter& painter, QPointF centre, double side, Shape shape, const QColor& ink, bool open,
                const QColor& background) {
    if (shape == Shape::none)
        return;
    painter.setPen(QPen(open ? ink : background, side / (open ? 5 : 12)));
    painter.setBrush(open ? background : ink);
    painter.drawPath(pathOf(shape, QRectF(centre.x() - side / 2, centre.y() - side / 2, side, side)));
}

void paintSign(QPainter& painter, const QRectF& box, const ChartSeries& series, const ChartStyle& style) {
    const QColor ink = inkOf(series, style);
    const QColor background = style.palette.color(QPalette::Base);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    if (series.kind == SeriesKind::band) {
        painter.setPen(QPen(faint(ink, .6), style.line / 18));
        painter.setBrush(faint(ink, .13));
        painter.drawRect(box.adjusted(0, box.height() * .2, 0, -box.height() * .2));
    } else if (series.shape != Shape::none) {
        paintShape(painter, box.center(), style.line * markSide, series.shape, ink, series.kind == SeriesKind::promises,
                   background);
    } else {
        painter.setPen(QPen(ink, style.line / 9));
        painter.drawLine(QPointF(box.left(), box.center().y()), QPointF(box.right(), box.center().y()));
    }
    painter.restore();
}

} // namespace staveline::ui
