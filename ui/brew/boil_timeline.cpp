// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/brew/boil_timeline.h"

#include "ui/present/text.h"
#include "ui/widgets/theme.h"

#include <QPainter>

#include <algorithm>

namespace staveline::ui {

using brewing::WeighedHops;

BoilTimeline::BoilTimeline(QWidget* parent) : QWidget(parent) {
    setAccessibleName(tr("Boil over time"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

QString BoilTimeline::words(const WeighedHops& hops) const {
    return tr("%1, %2").arg(qs(hops.name), qs(staveline::show(hops.mass, units_)));
}

void BoilTimeline::show(Minutes boil, const std::vector<WeighedHops>& hops, const DisplayUnits& units) {
    boil_ = boil;
    hops_ = hops;
    units_ = units;
    std::stable_sort(hops_.begin(), hops_.end(),
                     [](const WeighedHops& a, const WeighedHops& b) { return a.boiled > b.boiled; });
    QStringList said;
    for (const WeighedHops& each : hops_)
        said << tr("%1, boiled %2").arg(words(each), qs(staveline::show(each.boiled, units_)));
    setAccessibleDescription(tr("Boil of %1: %2.").arg(qs(staveline::show(boil, units_)), said.join(tr("; "))));
    updateGeometry();
    update();
}

QSize BoilTimeline::sizeHint() const {
    return {lines(*this, 30), lines(*this, 1.6 + 1.2 * static_cast<double>(std::max<std::size_t>(1, hops_.size())))};
}
QSize BoilTimeline::minimumSizeHint() const {
    return {lines(*this, 20), sizeHint().height()};
}

double BoilTimeline::x(Minutes fromStart) const {
    const double left = lines(*this, .6), right = width() - lines(*this, 12);
    return left + (right - left) * std::clamp(fromStart.min / std::max(1., boil_.min), 0., 1.);
}

void BoilTimeline::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double line = lines(*this, 1), y = height() - line * 1.3;
    painter.setPen(QPen(wall(palette()), line / 6, Qt::SolidLine, Qt::RoundCap));
    painter.drawLine(QPointF(x({0}), y), QPointF(x(boil_), y));
    double top = line * .1;
    for (const WeighedHops& hops : hops_) {
        const double at = x(boil_ - hops.boiled);
        painter.setPen(QPen(quietText(palette()), 1, Qt::DotLine));
        painter.drawLine(QPointF(at, top + line * .3), QPointF(at, y));
        painter.setPen(Qt::NoPen);
        painter.setBrush(tone(palette(), Tone::calm));
        painter.drawEllipse(QPointF(at, y), line * .24, line * .24);
        painter.setPen(palette().color(QPalette::WindowText));
        const double room = width() - at - line * .5;
        painter.drawText(QRectF(at + line * .4, top, room, line * 1.1), Qt::AlignLeft | Qt::AlignVCenter,
                         painter.fontMetrics().elidedText(words(hops), Qt::ElideRight, static_cast<int>(room)));
        top += line * 1.2;
    }
    painter.setFont(ui::font(font(), Type::small));
    painter.setPen(quietText(palette()));
    painter.drawText(QRectF(x({0}), y + line * .2, line * 8, line), Qt::AlignLeft | Qt::AlignVCenter,
                     tr("boil begins"));
    painter.drawText(QRectF(x(boil_) - line * 3, y + line * .2, line * 14, line), Qt::AlignLeft | Qt::AlignVCenter,
                     tr("flame out, %1").arg(qs(staveline::show(boil_, units_))));
}

} // namespace staveline::ui
