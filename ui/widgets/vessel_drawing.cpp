// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/vessel_drawing.h"

#include "ui/present/text.h"
#include "ui/widgets/theme.h"
#include "ui/widgets/vessel_shape.h"

#include <QCoreApplication>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace staveline::ui {
namespace {

constexpr double oldestShade = 6 * daysPerYear; // where the darkest tone is reached
constexpr double thinnest = .012;               // of the fill

double fillOf(const VesselLook& look, Litres volume) {
    return look.capacity.l > 0 ? std::clamp(volume / look.capacity, 0.0, 1.0) : 0;
}
double shade(const vessel::LedgerState& now, const vessel::Generation& generation) {
    const double age = daysBetween(generation.on, now.on) + generation.birthAge.d;
    return std::sqrt(std::clamp(age / oldestShade, 0.0, 1.0));
}
QRectF fitted(const QRectF& box, double widthToHeight) {
    const double height = std::min(box.height(), box.width() / widthToHeight);
    const QSizeF size(height * widthToHeight, height);
    return {QPointF(box.center().x() - size.width() / 2, box.center().y() - size.height() / 2), size};
}
QTransform into(const QRectF& box) {
    return QTransform::fromTranslate(box.left(), box.top()).scale(box.width(), box.height());
}
QString labelOf(const Stratum& layer) {
    return QCoreApplication::translate("VesselDrawing", layer.rest ? "%1 % from %2 and before" : "%1 % from %2")
        .arg(std::lround(layer.share.of1 * 100))
        .arg(dayWords(layer.on));
}
QString shareOf(const Stratum& layer) {
    return QCoreApplication::translate("VesselDrawing", "%1 %").arg(std::lround(layer.share.of1 * 100));
}
Stratum widestLabel() {
    Stratum layer;
    layer.rest = true;
    layer.share = Share{.88};
    layer.on = std::chrono::year{2088} / 12 / 28;
    return layer;
}
double labelStep(const QFontMetrics& metrics) {
    return metrics.height() * 1.15;
}

void paintStrata(QPainter& painter, const QRectF& box, const VesselLook& look, const QPalette& palette, double pen) {
    const std::vector<Stratum> layers = strata(look);
    for (const Stratum& layer : layers) {
        const QRectF band(box.left(), box.top() + layer.from * box.height(), box.width(),
                          (layer.to - layer.from) * box.height());
        painter.fillRect(band.adjusted(0, 0, 0, pen / 2), stratum(palette, layer.age));
    }
    painter.setPen(QPen(headspace(palette), pen * .7));
    for (std::size_t i = 1; i < layers.size(); ++i) {
        const double y = box.top() + layers[i].from * box.height();
        painter.drawLine(QPointF(box.left(), y), QPointF(box.right(), y));
    }
}

void paintLevelBefore(QPainter& painter, const QRectF& box, const VesselLook& look, const QPalette& palette,
                      double pen) {
    if (!look.levelBefore)
        return;
    const double y =
        box.top() + VesselShapeDrawing::of(look.shape).surface(fillOf(look, *look.levelBefore)) * box.height();
    painter.setPen(QPen(tone(palette, Tone::proposed), pen * 2, Qt::DashLine));
    painter.drawLine(QPointF(box.left(), y), QPointF(box.right(), y));
}

} // namespace

std::vector<Stratum> strata(const VesselLook& look) {
    const VesselShapeDrawing& shape = VesselShapeDrawing::of(look.shape);
    const double fill = fillOf(look, look.now.volume);
    std::vector<Stratum> layers;
    double below = 1; // share of the liquid not yet drawn
    bool merged = false;
    for (const vessel::Generation& generation : look.now.generations) {
        const bool merge = !layers.empty() && generation.share.of1 < thinnest;
        below -= generation.share.of1;
        if (merge) {
            layers.back().share += generation.share;
            merged = true;
        } else {
            layers.push_back({0, 0, shade(look.now, generation), generation.share, generation.on, false});
            merged = false;
        }
        layers.back().to = shape.surface(fill * std::max(below, 0.0));
    }
    if (merged)
        layers.back().rest = true; // a little in between is not worth a word
    double top = shape.surface(fill);
    for (Stratum& layer : layers) {
        layer.from = top;
        top = layer.to;
    }
    return layers;
}

void paintVessel(QPainter& painter, const QRectF& box, const VesselLook& look, const QPalette& palette,
                 double lineHeight) {
    const VesselShapeDrawing& shape = VesselShapeDrawing::of(look.shape);
    const QRectF at = fitted(box, shape.widthToHeight());
    const QPainterPath outline = into(at).map(shape.outline());
    const double pen = lineHeight / 16;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillPath(outline, headspace(palette));
    painter.save();
    painter.setClipPath(outline);
    paintStrata(painter, at, look, palette, pen);
    paintLevelBefore(painter, at, look, palette, pen);
    painter.restore();
    QColor seam = wall(palette);
    seam.setAlphaF(.45F);
    painter.setPen(QPen(seam, pen));
    painter.drawPath(into(at).map(shape.details()));
    painter.setPen(QPen(wall(palette), pen * 1.5));
    painter.drawPath(outline);
    painter.restore();
}

QString describe(const VesselLook& look, const DisplayUnits& units) {
    QStringList parts{QCoreApplication::translate("VesselDrawing", "%1 of %2")
                          .arg(qs(show(look.now.volume, units)), qs(show(look.capacity, units)))};
    for (const Stratum& layer : strata(look))
        parts << labelOf(layer);
    return parts.join(QStringLiteral("; "));
}

VesselDrawing::VesselDrawing(QWidget* parent) : QWidget(parent) {
    setAccessibleName(tr("Vessel"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

void VesselDrawing::setLook(const VesselLook& look, const DisplayUnits& units) {
    look_ = look;
    units_ = units;
    setAccessibleDescription(describe(look, units));
    update();
}

QSize VesselDrawing::sizeHint() const {
    return {lines(*this, 20), lines(*this, 12)};
}
QSize VesselDrawing::minimumSizeHint() const {
    return {lines(*this, 12), lines(*this, 7)};
}

/// A vessel that stands has its labels beside it, one that lies has them below.
void VesselDrawing::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double line = fontMetrics().height();
    const double ratio = VesselShapeDrawing::of(look_.shape).widthToHeight();
    QRectF room = QRectF(rect()).adjusted(line / 8, line / 8, -line / 8, -line / 8);
    const auto gutterFor = [&](const QString& label) { return fontMetrics().horizontalAdvance(label) + line * 1.2; };
    const bool days = room.width() > 1.7 * gutterFor(labelOf(widestLabel()));
    const double gutter = gutterFor(days ? labelOf(widestLabel()) : shareOf(widestLabel()));
    const double below = labelStep(fontMetrics()) * static_cast<double>(strata(look_).size()) + line;
    const bool lies = ratio > 1 && room.height() - below > room.width() * .35;
    if (lies)
        room.setHeight(std::min(room.height() - below, room.width() / ratio));
    else if (room.width() > 1.7 * gutter)
        room.setRight(room.right() - gutter);
    const QRectF vessel = fitted(room, ratio);
    paintVessel(painter, vessel, look_, palette(), line);
    if (lies)
        paintLabelsBelow(painter, vessel);
    else if (room.right() < width() - gutter / 2)
        paintLabelsBeside(painter, vessel, days);
}

void VesselDrawing::paintLabelsBeside(QPainter& painter, const QRectF& vessel, bool days) const {
    const double step = labelStep(fontMetrics());
    double free = vessel.top();
    for (const Stratum& layer : strata(look_)) {
        const double middle = vessel.top() + (layer.from + layer.to) / 2 * vessel.height();
        const double y = std::max(middle - step / 2, free);
        if (y + step > height())
            break;
        free = y + step;
        painter.setPen(QPen(hairline(palette()), fontMetrics().height() / 16.0));
        painter.drawLine(QPointF(vessel.right() + step * .15, middle),
                         QPointF(vessel.right() + step * .75, y + step / 2));
        painter.setPen(palette().color(QPalette::WindowText));
        painter.drawText(QRectF(vessel.right() + step, y, width() - vessel.right() - step, step),
                         Qt::AlignLeft | Qt::AlignVCenter, days ? labelOf(layer) : shareOf(layer));
    }
}

void VesselDrawing::paintLabelsBelow(QPainter& painter, const QRectF& vessel) const {
    const double step = labelStep(fontMetrics()), swatch = fontMetrics().height() * .75;
    double y = vessel.bottom() + step * .6;
    for (const Stratum& layer : strata(look_)) {
        const QRectF box(vessel.left(), y + (step - swatch) / 2, swatch * 1.6, swatch);
        painter.setPen(QPen(wall(palette()), swatch / 12));
        painter.setBrush(stratum(palette(), layer.age));
        painter.drawRect(box);
        painter.setPen(palette().color(QPalette::WindowText));
        painter.drawText(QRectF(box.right() + step * .5, y, width() - box.right() - step * .5, step),
                         Qt::AlignLeft | Qt::AlignVCenter, labelOf(layer));
        y += step;
    }
}

} // namespace staveline::ui
