// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/glyph.h"

#include <QPainter>
#include <QPainterPath>
#include <QPixmap>
#include <QWidget>

namespace staveline::ui {
namespace {

QPainterPath triangle(const QRectF& b, bool up) {
    QPainterPath path;
    const double top = up ? b.top() : b.bottom(), base = up ? b.bottom() : b.top();
    path.moveTo(b.center().x(), top);
    path.lineTo(b.right(), base);
    path.lineTo(b.left(), base);
    path.closeSubpath();
    return path;
}
QPainterPath onTip(const QRectF& b) {
    QPainterPath path;
    path.moveTo(b.center().x(), b.top());
    path.lineTo(b.right(), b.center().y());
    path.lineTo(b.center().x(), b.bottom());
    path.lineTo(b.left(), b.center().y());
    path.closeSubpath();
    return path;
}
void bar(QPainter& painter, const QRectF& b, const QColor& colour, double top, double bottom) {
    const double w = b.width() * .12;
    painter.fillRect(QRectF(b.center().x() - w / 2, b.top() + b.height() * top, w, b.height() * (bottom - top)),
                     colour);
}
void filledWithBar(QPainter& painter, const QPainterPath& path, const QRectF& b, const QColor& colour, double top) {
    painter.fillPath(path, colour);
    const QColor ink = contrast(colour, Qt::white) > contrast(colour, Qt::black) ? Qt::white : Qt::black;
    bar(painter, b, ink, top, top + .28);
    bar(painter, b, ink, top + .36, top + .46);
}
void disc(QPainter& painter, const QRectF& b, const QColor& colour, bool bars) {
    QPainterPath path;
    path.addEllipse(b);
    if (bars)
        filledWithBar(painter, path, b, colour, .24);
    else
        painter.fillPath(path, colour);
}
void half(QPainter& painter, const QRectF& b, const QColor& colour) {
    painter.drawEllipse(b);
    painter.setBrush(colour);
    painter.drawPie(b, -90 * 16, 180 * 16);
}
/// A stroke with a head, and a line it leaves or reaches.
void arrow(QPainter& painter, const QRectF& b, const QColor& colour, bool up, double length) {
    const double x = b.center().x(), head = b.width() * .5;
    const double from = up ? b.bottom() : b.bottom() - b.height() * length;
    const double to = up ? b.bottom() - b.height() * length : b.bottom();
    painter.drawLine(QPointF(x, from), QPointF(x, to));
    const QRectF tip(x - head / 2, up ? to : to - head * .7, head, head * .7);
    painter.fillPath(triangle(tip, up), colour);
}
void paintEntry(QPainter& painter, const QRectF& b, Glyph glyph, const QColor& colour) {
    switch (glyph) {
    case Glyph::opening:
        painter.drawRect(b.adjusted(b.width() * .1, b.height() * .2, -b.width() * .1, 0));
        painter.drawLine(b.topLeft(), b.topRight());
        break;
    case Glyph::drawOff:
        arrow(painter, b, colour, false, 1);
        painter.drawLine(b.topLeft(), b.topRight());
        break;
    case Glyph::refill:
        arrow(painter, b, colour, true, 1);
        painter.drawLine(b.bottomLeft(), b.bottomRight());
        break;
    case Glyph::topUp:
        arrow(painter, b, colour, true, .6);
        painter.drawLine(b.bottomLeft(), b.bottomRight());
        break;
    case Glyph::sample:
        disc(painter, b.adjusted(b.width() * .28, b.height() * .28, -b.width() * .28, -b.height() * .28), colour,
             false);
        break;
    case Glyph::dip:
        painter.drawLine(QPointF(b.center().x(), b.top()), QPointF(b.center().x(), b.bottom()));
        painter.drawLine(QPointF(b.left(), b.center().y()), QPointF(b.right(), b.center().y()));
        break;
    case Glyph::event:
        painter.drawLine(QPointF(b.left() + b.width() * .2, b.top()), QPointF(b.left() + b.width() * .2, b.bottom()));
        painter.drawPolyline(QPolygonF{QPointF(b.left() + b.width() * .2, b.top()),
                                       QPointF(b.right(), b.top() + b.height() * .28),
                                       QPointF(b.left() + b.width() * .2, b.top() + b.height() * .56)});
        break;
    default:
        painter.drawEllipse(b.adjusted(b.width() * .15, b.height() * .15, -b.width() * .15, -b.height() * .15));
        bar(painter, b, colour, .3, .55);
    }
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
void fork(QPainter& painter, const QRectF& b) {
    const QPointF parting(b.center().x(), b.center().y() + b.height() * .05);
    painter.drawLine(QPointF(parting.x(), b.bottom()), parting);
    painter.drawPolyline(QPolygonF{b.topLeft(), parting, b.topRight()});
}

void paintVerdict(QPainter& painter, const QRectF& b, Glyph glyph, const QColor& colour) {
    switch (glyph) {
    case Glyph::move:
    case Glyph::moveDown:
        chevrons(painter, b, glyph == Glyph::move, 2);
        break;
    case Glyph::open:
    case Glyph::openDown:
        chevrons(painter, b, glyph == Glyph::open, 1);
        break;
    case Glyph::wait:
        hourglass(painter, b);
        break;
    case Glyph::hold:
        painter.drawEllipse(b);
        painter.setBrush(colour);
        painter.drawEllipse(b.center(), b.width() * .09, b.width() * .09);
        break;
    case Glyph::leaveAlone:
        for (const double y : {.32, .68})
            painter.drawLine(QPointF(b.left(), b.top() + b.height() * y), QPointF(b.right(), b.top() + b.height() * y));
        break;
    default:
        glass(painter, b);
        if (glyph == Glyph::tasteFirst)
            painter.drawLine(b.bottomLeft(), b.topRight());
    }
}

} // namespace

Tone toneOf(Glyph glyph) {
    switch (glyph) {
    case Glyph::soon:
    case Glyph::overdue:
    case Glyph::warning:
    case Glyph::move:
    case Glyph::moveDown:
        return Tone::due;
    case Glyph::fault:
        return Tone::fault;
    case Glyph::tasteFirst:
    case Glyph::tasteAgain:
        return Tone::tasted;
    default:
        return Tone::calm;
    }
}

Glyph glyphOf(const tasting::Verdict& verdict) {
    using tasting::VerdictKind;
    switch (verdict.kind) {
    case VerdictKind::faultFirst:
        return Glyph::fault;
    case VerdictKind::waitUntil:
        return Glyph::wait;
    case VerdictKind::move:
        return verdict.up ? Glyph::move : Glyph::moveDown;
    case VerdictKind::open:
        return verdict.up ? Glyph::open : Glyph::openDown;
    case VerdictKind::neverTasted:
        return Glyph::tasteFirst;
    case VerdictKind::tasteAgain:
        return Glyph::tasteAgain;
    case VerdictKind::leaveAlone:
        return Glyph::leaveAlone;
    case VerdictKind::hold:
        break;
    }
    return Glyph::hold;
}

void paintGlyph(QPainter& painter, const QRectF& box, Glyph glyph, const QColor& colour) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const double pen = box.width() * .11;
    const QRectF b = box.adjusted(pen, pen, -pen, -pen);
    painter.setPen(QPen(colour, pen, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.setBrush(Qt::NoBrush);
    switch (glyph) {
    case Glyph::calm:
        painter.drawEllipse(b);
        break;
    case Glyph::soon:
        half(painter, b, colour);
        break;
    case Glyph::overdue:
        disc(painter, b, colour, true);
        break;
    case Glyph::fault:
        filledWithBar(painter, onTip(box), box, colour, .26);
        break;
    case Glyph::note:
        painter.drawRect(b);
        bar(painter, b, colour, .2, .8);
        break;
    case Glyph::warning:
        filledWithBar(painter, triangle(b, true), b, colour, .42);
        break;
    case Glyph::planB:
        fork(painter, b);
        break;
    case Glyph::done:
        painter.drawPolyline(QPolygonF{QPointF(b.left(), b.center().y()),
                                       QPointF(b.left() + b.width() * .36, b.bottom() - b.height() * .12),
                                       QPointF(b.right(), b.top() + b.height() * .12)});
        break;
    default:
        if (glyph >= Glyph::opening)
            paintEntry(painter, b, glyph, colour);
        else
            paintVerdict(painter, b, glyph, colour);
    }
    painter.restore();
}

QPixmap glyphPixmap(Glyph glyph, int side, const QColor& colour, double pixelRatio) {
    QPixmap pixmap(QSize(side, side) * pixelRatio);
    pixmap.setDevicePixelRatio(pixelRatio);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    paintGlyph(painter, QRectF(0, 0, side, side), glyph, colour);
    return pixmap;
}

QPixmap glyphBeside(const QWidget& words, Glyph glyph, double size) {
    return glyphPixmap(glyph, lines(words, size), tone(words.palette(), toneOf(glyph)), words.devicePixelRatioF());
}

} // namespace staveline::ui
