// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/chart/event_timeline.h"

#include "ui/chart/panel_view.h"
#include "ui/chart/reading.h"
#include "ui/widgets/tip_at.h"

#include <QMouseEvent>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace staveline::ui {

EventTimeline::EventTimeline(const ChartData& chartData, QWidget* parent) : QWidget(parent), chartData_(chartData) {
    setMouseTracking(true);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setAccessibleName(tr("Dates and what happened"));
}

void EventTimeline::show(const TimeSpan& span, std::optional<Day> cursor) {
    span_ = span;
    cursor_ = cursor;
    update();
}

void EventTimeline::setGap(int gap) {
    gap_ = gap;
    update();
}

QSize EventTimeline::sizeHint() const {
    return {lines(*this, 30), static_cast<int>(std::ceil(timelineHeight(styleOf(*this))))};
}

QRectF EventTimeline::box() const {
    return QRectF(rect()).adjusted(0, 0, -gap_, 0);
}

void EventTimeline::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    paintTimeline(painter, box(), chartData_, span_, cursor_, styleOf(*this));
}

PlotFrame EventTimeline::frame() const {
    const ChartStyle style = styleOf(*this);
    return {box().adjusted(style.left(), 0, -style.right(), 0), span_, {}};
}

const ChartEvent* EventTimeline::eventAt(double x) const {
    const PlotFrame at = frame();
    const auto away = [&](const ChartEvent& each) { return std::abs(at.x(each.on) - x); };
    const auto nearest = std::min_element(chartData_.events.begin(), chartData_.events.end(),
                                          [&](const auto& a, const auto& b) { return away(a) < away(b); });
    return nearest != chartData_.events.end() && away(*nearest) <= lines(*this, .6) ? &*nearest : nullptr;
}

bool EventTimeline::event(QEvent* event) {
    const auto words = [this](const QPoint& at) {
        const ChartEvent* mark = eventAt(at.x());
        return mark ? eventWords(chartData_, mark->on) : QString();
    };
    return tipAt(*event, *this, words) || QWidget::event(event);
}

void EventTimeline::mouseMoveEvent(QMouseEvent* event) {
    if (drag_.active())
        Q_EMIT dragged(drag_.at(event->position().x(), frame().area.width()));
    else
        Q_EMIT pointed(frame().dayAtX(event->position().x()));
}

void EventTimeline::mousePressEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton)
        drag_.press(event->position().x(), span_, chartData_.whole);
    event->ignore(); // the stack takes the keyboard
}

void EventTimeline::mouseReleaseEvent(QMouseEvent*) {
    drag_.release();
}

} // namespace staveline::ui
