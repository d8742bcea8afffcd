// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/chart/panel_view.h"

#include "ui/chart/reading.h"
#include "ui/present/text.h"
#include "ui/widgets/tip_at.h"

#include <QMouseEvent>
#include <QPainter>

#include <cmath>

namespace staveline::ui {

ChartStyle styleOf(const QWidget& widget) {
    return {widget.palette(), widget.font(), static_cast<double>(lines(widget, 1))};
}

PanelView::PanelView(const ChartData& chartData, std::size_t panel, QWidget* parent)
    : QWidget(parent), chartData_(chartData), panel_(panel), span_(chartData.whole) {
    setMouseTracking(true);
    setAccessibleName(this->panel().title);
    setAccessibleDescription(summaryWords(this->panel()));
    refit();
}

ChartStyle PanelView::chartStyle() const {
    return styleOf(*this);
}

QRectF PanelView::plotBox() const {
    return QRectF(rect()).adjusted(0, headHeight(chartStyle()), 0, 0);
}

PlotFrame PanelView::frame() const {
    return frameOf(panel(), plotBox(), span_, chartStyle());
}

QSize PanelView::sizeHint() const {
    const ChartStyle l = chartStyle();
    const double height = headHeight(l) + (plotted() ? plotLines * l.line : 0);
    return {lines(*this, 30), static_cast<int>(std::ceil(height))};
}

void PanelView::refit() {
    setSizePolicy(QSizePolicy::Expanding, plotted() ? QSizePolicy::Expanding : QSizePolicy::Fixed);
    updateGeometry();
    redraw();
}

void PanelView::redraw() {
    plot_ = {};
    update();
}

void PanelView::setSpan(const TimeSpan& span) {
    if (span == span_)
        return;
    span_ = span;
    redraw();
}

void PanelView::setOpen(bool open) {
    open_ = open;
    refit();
}

void PanelView::setCursorDay(std::optional<Day> day) {
    cursor_ = day;
    update();
}

void PanelView::paintEvent(QPaintEvent*) {
    const ChartStyle l = chartStyle();
    QPainter painter(this);
    paintHead(painter, QRectF(0, 0, width(), headHeight(l)), panel(), {open_, true, cursor_}, l);
    if (!plotted())
        return;
    const QRectF box = plotBox();
    if (plot_.isNull()) {
        plot_ = QPixmap((box.size() * devicePixelRatioF()).toSize());
        plot_.setDevicePixelRatio(devicePixelRatioF());
        plot_.fill(Qt::transparent);
        QPainter inside(&plot_);
        paintPlot(inside, QRectF(QPointF(0, 0), box.size()), chartData_, panel(), span_, l);
    }
    painter.drawPixmap(box.topLeft(), plot_);
    if (cursor_)
        paintCursor(painter, frame(), panel(), *cursor_, l);
}

bool PanelView::inPlot(const QPointF& at) const {
    const QRectF area = frame().area;
    return plotted() && plotBox().contains(at) && at.x() >= area.left() && at.x() <= area.right();
}

bool PanelView::event(QEvent* event) {
    const auto words = [this](const QPoint& at) {
        return inPlot(at) ? panelWords(panel(), frame().dayAtX(at.x())) : QString();
    };
    return tipAt(*event, *this, words) || QWidget::event(event);
}

void PanelView::mouseMoveEvent(QMouseEvent* event) {
    const PlotFrame at = frame();
    if (drag_.active())
        Q_EMIT dragged(drag_.at(event->position().x(), at.area.width()));
    else if (inPlot(event->position()))
        Q_EMIT pointed(at.dayAtX(event->position().x()));
}

void PanelView::mousePressEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton && event->position().y() < headHeight(chartStyle()))
        Q_EMIT foldAsked();
    else if (event->button() == Qt::LeftButton && inPlot(event->position()))
        drag_.press(event->position().x(), span_, chartData_.whole);
    event->ignore(); // the stack takes the keyboard
}

void PanelView::mouseReleaseEvent(QMouseEvent*) {
    drag_.release();
}

void PanelView::changeEvent(QEvent* event) {
    if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange)
        refit();
    QWidget::changeEvent(event);
}

void PanelView::resizeEvent(QResizeEvent* event) {
    redraw();
    QWidget::resizeEvent(event);
}

} // namespace staveline::ui
