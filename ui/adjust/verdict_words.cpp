// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/verdict_words.h"

#include "ui/present/text.h"
#include "ui/widgets/glyph.h"

#include <QCoreApplication>
#include <QPainter>
#include <QPainterPath>

#include <cmath>

namespace staveline::ui {

using tasting::VerdictKind;

namespace {

QString tr(const char* source) {
    return QCoreApplication::translate("Verdict", source);
}

void chevrons(QPainter& painter, const QRectF& b, bool up, int count) {
    const double wide = b.width() * .7, tall = b.height() * .3, gap = b.height() * .4;
    double y = b.center().y() - (tall + (count - 1) * gap) / 2;
    for (int i = 0; i < count; ++i, y += gap) {
        const double tip = up ? y : y + tall, foot = up ? y + tall : y;
        painter.drawPolyline(QPolygonF({QPointF(b.center().x() - wide / 2, foot), QPointF(b.center().x(), tip),
                                        QPointF(b.center().x() + wide / 2, foot)}));
    }
}
void hourglass(QPainter& painter, const QRectF& b) {
    const QRectF box = b.adjusted(b.width() * .12, 0, -b.width() * .12, 0);
    painter.drawPolygon(QPolygonF({box.topLeft(), box.topRight(), box.bottomLeft(), box.bottomRight()}));
}
/// A tulip on its foot.
void glass(QPainter& painter, const QRectF& b) {
    QPainterPath bowl(QPointF(b.left() + b.width() * .22, b.top()));
    bowl.cubicTo(b.topLeft() + QPointF(0, b.height() * .75), b.topRight() + QPointF(0, b.height() * .75),
                 QPointF(b.right() - b.width() * .22, b.top()));
    painter.drawPath(bowl);
    painter.drawLine(QPointF(b.center().x(), b.top() + b.height() * .56), QPointF(b.center().x(), b.bottom()));
    painter.drawLine(QPointF(b.left() + b.width() * .25, b.bottom()), QPointF(b.right() - b.width() * .25, b.bottom()));
}

} // namespace

QString wordOf(VerdictKind kind) {
    switch (kind) {
    case VerdictKind::faultFirst:
        return tr("fault first");
    case VerdictKind::waitUntil:
        return tr("wait");
    case VerdictKind::hold:
        return tr("hold");
    case VerdictKind::move:
        return tr("move");
    case VerdictKind::neverTasted:
        return tr("taste first");
    case VerdictKind::open:
        return tr("undecided");
    case VerdictKind::leaveAlone:
        return tr("leave alone");
    case VerdictKind::tasteAgain:
        break;
    }
    return tr("taste again");
}

Tone toneOf(VerdictKind kind) {
    switch (kind) {
    case VerdictKind::faultFirst:
        return Tone::fault;
    case VerdictKind::move:
        return Tone::due;
    case VerdictKind::neverTasted:
    case VerdictKind::tasteAgain:
        return Tone::tasted;
    default:
        return Tone::calm;
    }
}

void paintVerdict(QPainter& painter, const QRectF& box, const tasting::Verdict& verdict, const QColor& colour) {
    if (verdict.kind == VerdictKind::faultFirst) {
        paintGlyph(painter, box, Glyph::fault, colour);
        return;
    }
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const double pen = box.width() * .12;
    const QRectF b = box.adjusted(pen, pen, -pen, -pen);
    painter.setPen(QPen(colour, pen, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.setBrush(Qt::NoBrush);
    switch (verdict.kind) {
    case VerdictKind::waitUntil:
        hourglass(painter, b);
        break;
    case VerdictKind::move:
        chevrons(painter, b, verdict.up, 2);
        break;
    case VerdictKind::open:
        chevrons(painter, b, verdict.up, 1);
        break;
    case VerdictKind::neverTasted: // an empty glass, struck out
        glass(painter, b);
        painter.drawLine(b.bottomLeft(), b.topRight());
        break;
    case VerdictKind::tasteAgain:
        glass(painter, b);
        break;
    case VerdictKind::leaveAlone:
        painter.drawEllipse(b);
        break;
    default:
        painter.drawEllipse(b);
        painter.setBrush(colour);
        painter.drawEllipse(b.center(), pen * .7, pen * .7);
    }
    painter.restore();
}

QPixmap verdictPixmap(const tasting::Verdict& verdict, int side, const QPalette& palette, double pixelRatio) {
    QPixmap pixmap(QSize(side, side) * pixelRatio);
    pixmap.setDevicePixelRatio(pixelRatio);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    paintVerdict(painter, QRectF(0, 0, side, side), verdict, tone(palette, toneOf(verdict.kind)));
    return pixmap;
}

} // namespace staveline::ui
