// SPDX-License-Identifier: GPL-3.0-or-later
#include "quantity/shown_units.h"
#include "ui/brew/mash_chart.h"
#include "ui/present/text.h"
#include "ui/present/unit_scale.h"
#include "ui/widgets/paper_style.h"
#include "ui/widgets/theme.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>

#include <cmath>

namespace staveline::ui {
namespace {

constexpr int bigger = 5; // steps at once with Shift

} // namespace

RestHandle::RestHandle(std::size_t rest, MashChart& chart) : QWidget(&chart), rest_(rest), chart_(chart) {
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setToolTip(tr("Up and Down: temperature. Left and Right: minutes. Shift: more at once."));
}

void RestHandle::show(const brewing::MashStep& step, const DisplayUnits& units) {
    step_ = step;
    units_ = units;
    setAccessibleName(tr("Rest %1, %2, %3")
                          .arg(rest_ + 1)
                          .arg(qs(staveline::show(step.temperature, units)), qs(staveline::show(step.minutes, units))));
    update();
}

Celsius RestHandle::warmer(double steps) const {
    const UnitScale scale(UnitKind::temperature, units_);
    const double step = units_.temperature == DisplayUnits::Temperature::celsius ? .5 : 1;
    const double shown = std::round(scale.toShown(step_.temperature.c) / step) * step;
    return Celsius{scale.toStored(shown + steps * step)};
}

void RestHandle::keyPressEvent(QKeyEvent* event) {
    const double steps = event->modifiers() & Qt::ShiftModifier ? bigger : 1;
    brewing::MashStep to = step_;
    switch (event->key()) {
    case Qt::Key_Up:
        to.temperature = warmer(steps);
        break;
    case Qt::Key_Down:
        to.temperature = warmer(-steps);
        break;
    case Qt::Key_Right:
        to.minutes.min += steps;
        break;
    case Qt::Key_Left:
        to.minutes.min -= steps;
        break;
    default:
        QWidget::keyPressEvent(event);
        return;
    }
    chart_.move(rest_, to);
    chart_.release();
}

bool RestHandle::atEnd(const QPointF& at) const {
    return at.x() > width() - std::min(width() / 3., lines(*this, 1) * .9);
}

void RestHandle::mousePressEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton)
        return;
    setFocus(Qt::MouseFocusReason);
    drag_ = Drag{event->globalPosition(), step_, atEnd(event->position())};
}

void RestHandle::mouseMoveEvent(QMouseEvent* event) {
    if (!drag_) {
        setCursor(atEnd(event->position()) ? Qt::SizeHorCursor : Qt::SizeVerCursor);
        return;
    }
    const QPointF way = event->globalPosition() - drag_->from;
    brewing::MashStep to = step_;
    if (drag_->minutes) {
        to.minutes.min = std::round(drag_->step.minutes.min + way.x() * chart_.minutesPerPixel());
    } else {
        const Celsius wanted{drag_->step.temperature.c - way.y() * chart_.degreesPerPixel()};
        const double step = units_.temperature == DisplayUnits::Temperature::celsius
                                ? .5
                                : 1 / shownTemperature(units_.temperature).degreesPerCelsius;
        to.temperature = warmer(std::round((wanted - step_.temperature).c / step));
    }
    chart_.move(rest_, to);
}

void RestHandle::mouseReleaseEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton || !drag_)
        return;
    drag_.reset();
    chart_.release();
}

void RestHandle::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double line = lines(*this, 1), thick = line * .36;
    const QColor ink = isEnabled() ? tone(palette(), Tone::proposed) : wall(palette());
    painter.setPen(Qt::NoPen);
    painter.setBrush(ink);
    painter.drawRoundedRect(QRectF(0, (height() - thick) / 2, width(), thick), thick / 2, thick / 2);
    painter.setBrush(palette().color(QPalette::Base));
    painter.setPen(QPen(ink, line / 12));
    painter.drawEllipse(QPointF(width() - thick, height() / 2.), thick * .62, thick * .62);
    if (hasFocus())
        drawFocusRing(painter, QRectF(rect()), palette(), line);
}

} // namespace staveline::ui
