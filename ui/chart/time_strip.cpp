// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/chart/time_strip.h"

#include "ui/chart/panel_view.h"

#include <QMouseEvent>
#include <QPainter>

#include <cmath>

namespace staveline::ui {

TimeStrip::TimeStrip(const ChartStory& story, QWidget* parent) : QWidget(parent), story_(story) {
    setMouseTracking(true);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setAccessibleName(tr("Dates and what happened"));
}

void TimeStrip::show(const TimeSpan& span, std::optional<Day> cursor) {
    span_ = span;
    cursor_ = cursor;
    update();
}

void TimeStrip::setGap(int gap) {
    gap_ = gap;
    update();
}

QSize TimeStrip::sizeHint() const {
    return {lines(*this, 30), static_cast<int>(std::ceil(stripHeight(lookOf(*this))))};
}

QRectF TimeStrip::box() const {
    return QRectF(rect()).adjusted(0, 0, -gap_, 0);
}

void TimeStrip::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    paintStrip(painter, box(), story_, span_, cursor_, lookOf(*this));
}

void TimeStrip::mouseMoveEvent(QMouseEvent* event) {
    const ChartLook look = lookOf(*this);
    const PlotFrame frame{box().adjusted(look.left(), 0, -look.right(), 0), span_, {}};
    if (drag_.active())
        Q_EMIT dragged(drag_.at(event->position().x(), frame.area.width()));
    else
        Q_EMIT pointed(frame.dayAtX(event->position().x()));
}

void TimeStrip::mousePressEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton)
        drag_.press(event->position().x(), span_, story_.whole);
    event->ignore(); // the stack takes the keyboard
}

void TimeStrip::mouseReleaseEvent(QMouseEvent*) {
    drag_.release();
}

} // namespace staveline::ui
