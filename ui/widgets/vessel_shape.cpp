// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/vessel_shape.h"

#include <QImage>
#include <QPainter>

#include <algorithm>
#include <map>

namespace staveline::ui {

using facts::VesselForm;

namespace {

constexpr int rows = 512, columns = 512;

void line(QPainterPath& path, double x1, double y1, double x2, double y2) {
    path.moveTo(x1, y1);
    path.lineTo(x2, y2);
}
void bow(QPainterPath& path, double x1, double y1, double cx, double cy, double x2, double y2) {
    path.moveTo(x1, y1);
    path.quadTo(cx, cy, x2, y2);
}

QPainterPath caskOutline() {
    QPainterPath path;
    path.moveTo(.03, .17);
    path.cubicTo(.25, .02, .75, .02, .97, .17);
    path.quadTo(1.0, .5, .97, .83);
    path.cubicTo(.75, .98, .25, .98, .03, .83);
    path.quadTo(0, .5, .03, .17);
    path.closeSubpath();
    return path;
}
QPainterPath caskDetails() {
    QPainterPath path;
    for (const auto& [x, y] : {std::pair{.10, .13}, {.17, .105}, {.33, .07}}) {
        bow(path, x, y, x - .035, .5, x, 1 - y);
        bow(path, 1 - x, y, 1 - x + .035, .5, 1 - x, 1 - y);
    }
    path.addRect(QRectF(.47, .015, .06, .045));
    return path;
}

QPainterPath kegOutline() {
    QPainterPath path;
    path.addRoundedRect(QRectF(.04, .09, .92, .88), .16, .10);
    return path;
}
QPainterPath kegDetails() {
    QPainterPath path;
    for (const double y : {.34, .70}) {
        line(path, .04, y, .13, y);
        line(path, .87, y, .96, y);
    }
    path.addRect(QRectF(.42, .03, .16, .06));
    line(path, .2, .09, .2, .02);
    line(path, .8, .09, .8, .02);
    return path;
}

QPainterPath foederOutline() {
    QPainterPath path;
    path.moveTo(.10, .03);
    path.lineTo(.90, .03);
    path.quadTo(.99, .5, .98, .91);
    path.lineTo(.02, .91);
    path.quadTo(.01, .5, .10, .03);
    path.closeSubpath();
    return path;
}
QPainterPath foederDetails() {
    QPainterPath path;
    for (const auto& [y, inset] : {std::pair{.12, .083}, {.22, .068}, {.70, .025}, {.82, .02}})
        bow(path, inset, y, .5, y + .03, 1 - inset, y);
    path.addRoundedRect(QRectF(.42, .74, .16, .13), .04, .04);
    for (const double x : {.12, .5, .88})
        line(path, x, .91, x, .99);
    return path;
}

QPainterPath tankOutline() {
    QPainterPath path;
    path.moveTo(.05, .14);
    path.quadTo(.5, -.02, .95, .14);
    path.lineTo(.95, .72);
    path.lineTo(.56, .94);
    path.lineTo(.44, .94);
    path.lineTo(.05, .72);
    path.closeSubpath();
    return path;
}
QPainterPath tankDetails() {
    QPainterPath path;
    for (const double y : {.14, .72}) {
        line(path, .05, y, .15, y);
        line(path, .85, y, .95, y);
    }
    line(path, .10, .75, .10, 1);
    line(path, .90, .75, .90, 1);
    line(path, .5, .94, .5, .99);
    return path;
}

QPainterPath carboyOutline() {
    QPainterPath path;
    path.moveTo(.40, .05);
    path.lineTo(.60, .05);
    path.lineTo(.60, .15);
    path.cubicTo(.62, .26, .95, .24, .95, .42);
    path.lineTo(.95, .90);
    path.quadTo(.95, .97, .86, .97);
    path.lineTo(.14, .97);
    path.quadTo(.05, .97, .05, .90);
    path.lineTo(.05, .42);
    path.cubicTo(.05, .24, .38, .26, .40, .15);
    path.closeSubpath();
    return path;
}
QPainterPath carboyDetails() {
    QPainterPath path;
    path.addRect(QRectF(.43, .0, .14, .05));
    line(path, .15, .45, .15, .80);
    return path;
}

QPainterPath bucketOutline() {
    QPainterPath path;
    path.moveTo(.03, .10);
    path.lineTo(.97, .10);
    path.lineTo(.87, .97);
    path.lineTo(.13, .97);
    path.closeSubpath();
    return path;
}
QPainterPath bucketDetails() {
    QPainterPath path;
    path.addRect(QRectF(0, .06, 1, .05));
    bow(path, .05, .2, .5, .55, .95, .2);
    return path;
}

std::vector<double> measure(const QPainterPath& outline) {
    QImage image(columns, rows, QImage::Format_Grayscale8);
    image.fill(0);
    QPainter painter(&image);
    painter.scale(columns, rows);
    painter.fillPath(outline, Qt::white);
    painter.end();
    std::vector<double> below{0};
    for (int y = rows - 1; y >= 0; --y) {
        const uchar* row = image.constScanLine(y);
        below.push_back(below.back() + static_cast<double>(std::count(row, row + columns, uchar{255})));
    }
    for (double& share : below)
        share /= below.back() > 0 ? below.back() : 1;
    below.back() = 1;
    return below;
}

} // namespace

VesselShapeDrawing::VesselShapeDrawing(const QPainterPath& outline, const QPainterPath& details, double widthToHeight)
    : outline_(outline), details_(details), widthToHeight_(widthToHeight), filledBelow_(measure(outline_)) {}

double VesselShapeDrawing::surface(double fill) const {
    const double wanted = std::clamp(fill, 0.0, 1.0);
    const auto at = std::lower_bound(filledBelow_.begin(), filledBelow_.end(), wanted);
    if (at == filledBelow_.begin())
        return 1 - static_cast<double>(std::upper_bound(filledBelow_.begin(), filledBelow_.end(), 0.0) -
                                       filledBelow_.begin() - 1) /
                       rows;
    const double above = *at, below = *(at - 1);
    const double part = above > below ? (wanted - below) / (above - below) : 0;
    return 1 - (static_cast<double>(at - filledBelow_.begin() - 1) + part) / rows;
}

const VesselShapeDrawing& VesselShapeDrawing::of(VesselForm shape) {
    static const std::map<VesselForm, VesselShapeDrawing> drawings = {
        {VesselForm::cask, {caskOutline(), caskDetails(), 1.32}},
        {VesselForm::keg, {kegOutline(), kegDetails(), .62}},
        {VesselForm::foeder, {foederOutline(), foederDetails(), .88}},
        {VesselForm::tank, {tankOutline(), tankDetails(), .58}},
        {VesselForm::carboy, {carboyOutline(), carboyDetails(), .66}},
        {VesselForm::bucket, {bucketOutline(), bucketDetails(), .84}}};
    return drawings.at(shape);
}

} // namespace staveline::ui
