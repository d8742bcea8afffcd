// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/chart/panel_view.h"

#include "ui/chart/reading.h"
#include "ui/present/text.h"

#include <QMouseEvent>
#include <QPainter>

#include <cmath>

namespace staveline::ui {

ChartLook lookOf(const QWidget& widget) {
    return {widget.palette(), widget.font(), static_cast<double>(lines(widget, 1))};
}

PanelView::PanelView(const ChartStory& story, std::size_t panel, QWidget* parent)
    : QWidget(parent), story_(story), panel_(panel), span_(story.whole) {
    setMouseTracking(true);
    setAccessibleName(this->panel().title);
    setAccessibleDescription(summaryWords(this->panel()));
    refit();
}

ChartLook PanelView::look() const {
    return lookOf(*this);
}

QRectF PanelView::plotBox() const {
    return QRectF(rect()).adjusted(0, headHeight(look()), 0, 0);
}

PlotFrame PanelView::frame() const {
    return frameOf(panel(), plotBox(), span_, look());
}

QSize PanelView::sizeHint() const {
    const ChartLook l = look();
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
    const ChartLook l = look();
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
        paintPlot(inside, QRectF(QPointF(0, 0), box.size()), story_, panel(), span_, l);
    }
    painter.drawPixmap(box.topLeft(), plot_);
    if (cursor_)
        paintCursor(painter, frame(), panel(), *cursor_, l);
}

bool PanelView::inPlot(const QPointF& at) const {
    const QRectF area = frame().area;
    return plotted() && plotBox().contains(at) && at.x() >= area.left() && at.x() <= area.right();
}

void PanelView::mouseMoveEvent(QMouseEvent* event) {
    const PlotFrame at = frame();
    if (drag_.active())
        Q_EMIT dragged(drag_.at(event->position().x(), at.area.width()));
    else if (inPlot(event->position()))
        Q_EMIT pointed(at.dayAtX(event->position().x()));
}

void PanelView::mousePressEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton && event->position().y() < headHeight(look()))
        Q_EMIT foldAsked();
    else if (event->button() == Qt::LeftButton && inPlot(event->position()))
        drag_.press(event->position().x(), span_, story_.whole);
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
