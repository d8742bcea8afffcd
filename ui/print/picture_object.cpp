// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/picture_object.h"

#include <QPainter>
#include <QSvgRenderer>

#include <algorithm>

namespace staveline::ui {
namespace {

constexpr int drawnSvg = QTextFormat::UserProperty + 1, drawnSize = QTextFormat::UserProperty + 2;
constexpr double tallestPicture = 1.2; // against the width: less than a page of any size is high

} // namespace

QTextCharFormat pictureFormat(const QByteArray& svg, double width) {
    const QSizeF own = QSvgRenderer(svg).viewBoxF().size();
    const double scale = own.isEmpty() ? 0 : std::min(width / own.width(), tallestPicture * width / own.height());
    QTextCharFormat format;
    format.setObjectType(pictureKind);
    format.setProperty(drawnSvg, svg);
    format.setProperty(drawnSize, own * scale);
    return format;
}

QSizeF PictureObject::intrinsicSize(QTextDocument*, int, const QTextFormat& format) {
    return format.property(drawnSize).toSizeF();
}

void PictureObject::drawObject(QPainter* painter, const QRectF& rect, QTextDocument*, int, const QTextFormat& format) {
    QSvgRenderer(format.property(drawnSvg).toByteArray()).render(painter, rect);
}

} // namespace staveline::ui
