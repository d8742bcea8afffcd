// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/chart/panel_paint.h"

#include "ui/chart/reading.h"
#include "ui/present/text.h"

#include <QCoreApplication>
#include <QFontMetricsF>
#include <QPainter>

#include <algorithm>
#include <array>

namespace staveline::ui {
namespace {

constexpr double signWidth = .9, gap = .35, entryGap = 1.1; // in lines
constexpr double markRow = .85;
constexpr std::array stripRows = {ChartEvent::Row::out, ChartEvent::Row::in, ChartEvent::Row::look};

QString tr(const char* source) {
    return QCoreApplication::translate("Chart", source);
}

QString rowWord(ChartEvent::Row row) {
    switch (row) {
    case ChartEvent::Row::out:
        return tr("out");
    case ChartEvent::Row::in:
        return tr("in");
    case ChartEvent::Row::look:
        break;
    }
    return tr("looks");
}

double widthOf(const QStringList& words, const ChartLook& look) {
    const QFontMetricsF metrics(look.font);
    double sum = 0;
    for (const QString& one : words)
        sum += metrics.horizontalAdvance(one) + (signWidth + gap + entryGap) * look.line;
    return sum;
}

/// Series that say something; a target without a window is not in the legend.
std::vector<const ChartSeries*> shownSeries(const ChartPanel& panel) {
    std::vector<const ChartSeries*> shown;
    for (const ChartSeries& series : panel.series)
        if (!series.points.empty() && !series.name.isEmpty())
            shown.push_back(&series);
    return shown;
}

QString withoutDay(const ChartPanel& panel, const ChartSeries& series, Day cursor) {
    const auto reading = readingAt(series, cursor);
    return reading ? series.name + QLatin1Char(' ') + valueWords(panel, series, reading->point) : series.name;
}

QString titleOf(const ChartPanel& panel) {
    return panel.unit.isEmpty() ? panel.title : tr("%1, %2").arg(panel.title, panel.unit);
}

void paintArrow(QPainter& painter, const QRectF& box, bool open, const QColor& ink) {
    const double a = box.width() * .3;
    const QPointF c = box.center();
    painter.setPen(Qt::NoPen);
    painter.setBrush(ink);
    if (open)
        painter.drawPolygon(QPolygonF({{c.x() - a, c.y() - a * .6}, {c.x() + a, c.y() - a * .6}, {c.x(), c.y() + a}}));
    else
        painter.drawPolygon(QPolygonF({{c.x() - a * .6, c.y() - a}, {c.x() + a, c.y()}, {c.x() - a * .6, c.y() + a}}));
}

void paintLegend(QPainter& painter, const QRectF& box, const ChartPanel& panel, const QStringList& words,
                 const ChartLook& look) {
    const QFontMetricsF metrics(look.font);
    double x = box.left();
    const auto shown = shownSeries(panel);
    for (std::size_t i = 0; i < shown.size(); ++i) {
        const QString& one = words[static_cast<qsizetype>(i)];
        const double wide = metrics.horizontalAdvance(one);
        if (x + signWidth * look.line > box.right())
            return;
        paintSign(painter, QRectF(x, box.top(), signWidth * look.line, box.height()), *shown[i], look);
        x += (signWidth + gap) * look.line;
        painter.setPen(look.palette.color(QPalette::WindowText));
        painter.drawText(QRectF(x, box.top(), std::min(wide + 1, box.right() - x), box.height()),
                         Qt::AlignLeft | Qt::AlignVCenter, metrics.elidedText(one, Qt::ElideRight, box.right() - x));
        x += wide + entryGap * look.line;
    }
}

void paintTick(QPainter& painter, QPointF at, double side, const ChartLook& look) {
    painter.setPen(QPen(quietText(look.palette), look.line / 14));
    painter.drawLine(at - QPointF(0, side * .3), at + QPointF(0, side * .3));
}

/// The marks of one row; where they would cover each other the later ones become ticks.
void paintMarks(QPainter& painter, const QRectF& row, ChartEvent::Row which, const PlotFrame& frame,
                const ChartStory& story, const ChartLook& look) {
    const double side = markRow * look.line * .9, y = row.center().y();
    double free = -1e9;
    for (const ChartEvent& event : story.events) {
        const double x = frame.x(event.on);
        if (event.row != which || x < row.left() || x > row.right())
            continue;
        if (!event.glyph || x - side * .4 < free) {
            paintTick(painter, {x, y}, side, look);
            continue;
        }
        paintGlyph(painter, QRectF(x - side / 2, y - side / 2, side, side), *event.glyph,
                   look.palette.color(QPalette::WindowText));
        free = x + side * .4;
    }
}

void paintDates(QPainter& painter, const QRectF& row, const PlotFrame& frame, const ChartLook& look) {
    painter.setFont(font(look.font, Type::small));
    const QFontMetricsF metrics(painter.font());
    painter.setPen(quietText(look.palette));
    double free = row.left() - look.left();
    for (const TimeTick& tick : timeTicks(frame.span, 5 * look.line / frame.area.width())) {
        const double x = frame.x(tick.on), wide = metrics.horizontalAdvance(tick.label);
        if (x - wide / 2 < free || x + wide / 2 > row.right() + look.right())
            continue;
        painter.drawText(QRectF(x - wide / 2 - 1, row.top(), wide + 2, row.height()), Qt::AlignCenter, tick.label);
        free = x + wide / 2 + look.line * .4;
    }
}

void paintToday(QPainter& painter, const QRectF& rows, const PlotFrame& frame, Day today, const ChartLook& look) {
    const double x = frame.x(today);
    if (today < frame.span.from || today > frame.span.to)
        return;
    painter.setPen(QPen(tone(look.palette, Tone::proposed), look.line / 8));
    painter.drawLine(QPointF(x, rows.top()), QPointF(x, rows.bottom()));
}

} // namespace

double headHeight(const ChartLook& look) {
    return 1.4 * look.line;
}
double stripHeight(const ChartLook& look) {
    return (static_cast<double>(stripRows.size()) * markRow + 1.4) * look.line;
}

QStringList legendWords(const ChartPanel& panel, std::optional<Day> cursor, double room, const ChartLook& look) {
    const auto shown = shownSeries(panel);
    QStringList full, shorter, names;
    for (const ChartSeries* series : shown) {
        names << series->name;
        const QString words = cursor ? seriesWords(panel, *series, *cursor) : QString();
        full << (words.isEmpty() ? series->name : words);
        shorter << (cursor ? withoutDay(panel, *series, *cursor) : series->name);
    }
    for (const QStringList& words : {full, shorter})
        if (widthOf(words, look) <= room)
            return words;
    return names;
}

void paintHead(QPainter& painter, const QRectF& box, const ChartPanel& panel, const Head& head, const ChartLook& look) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF arrow(box.left(), box.top(), look.line, box.height());
    if (head.arrow)
        paintArrow(painter, arrow, head.open, quietText(look.palette));
    const QFont strong = font(look.font, Type::strong);
    const QString title = titleOf(panel);
    const double wide = QFontMetricsF(strong).horizontalAdvance(title) + 1;
    const QRectF words = box.adjusted(head.arrow ? look.line * 1.1 : look.left(), 0, -look.right(), 0);
    painter.setFont(strong);
    painter.setPen(look.palette.color(QPalette::WindowText));
    painter.drawText(words, Qt::AlignLeft | Qt::AlignVCenter, title);
    painter.setFont(look.font);
    const QRectF rest = words.adjusted(wide + 1.2 * look.line, 0, 0, 0);
    if (panel.empty()) {
        painter.setPen(quietText(look.palette));
        painter.drawText(rest, Qt::AlignLeft | Qt::AlignVCenter,
                         QFontMetricsF(look.font).elidedText(panel.nothing, Qt::ElideRight, rest.width()));
    } else {
        paintLegend(painter, rest, panel, legendWords(panel, head.cursor, rest.width(), look), look);
    }
    painter.restore();
}

void paintStrip(QPainter& painter, const QRectF& box, const ChartStory& story, const TimeSpan& span,
                std::optional<Day> cursor, const ChartLook& look) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF inside = box.adjusted(look.left(), 0, -look.right(), 0);
    const PlotFrame frame{inside, span, {}};
    QRectF row(inside.left(), box.top() + look.line * .1, inside.width(), markRow * look.line);
    const QRectF all = row.adjusted(0, 0, 0, (static_cast<double>(stripRows.size()) - 1) * row.height());
    paintToday(painter, all, frame, story.today, look);
    for (const ChartEvent::Row which : stripRows) {
        painter.setFont(font(look.font, Type::small));
        painter.setPen(quietText(look.palette));
        painter.drawText(QRectF(box.left(), row.top(), look.left() - look.line * .4, row.height()),
                         Qt::AlignRight | Qt::AlignVCenter, rowWord(which));
        paintMarks(painter, row, which, frame, story, look);
        row.translate(0, row.height());
    }
    paintDates(painter, QRectF(inside.left(), all.bottom() + look.line * .1, inside.width(), 1.1 * look.line), frame,
               look);
    if (cursor && *cursor >= span.from && *cursor <= span.to) {
        painter.setPen(QPen(look.palette.color(QPalette::WindowText), look.line / 14));
        painter.drawLine(QPointF(frame.x(*cursor), box.top()), QPointF(frame.x(*cursor), all.bottom()));
    }
    painter.restore();
}

double sheetHeight(const ChartStory& story, const ChartLook& look) {
    double height = 2.6 * look.line + stripHeight(look);
    for (const ChartPanel& panel : story.panels)
        if (!panel.empty())
            height += headHeight(look) + plotLines * look.line;
    return height;
}

void paintSheet(QPainter& painter, double width, const ChartStory& story, const TimeSpan& span, const ChartLook& look) {
    painter.save();
    painter.fillRect(QRectF(0, 0, width, sheetHeight(story, look)), look.palette.color(QPalette::Window));
    painter.setPen(look.palette.color(QPalette::WindowText));
    painter.setFont(font(look.font, Type::strong));
    const QRectF title(look.left(), .5 * look.line, width - look.left() - look.right(), 1.5 * look.line);
    painter.drawText(title, Qt::AlignLeft | Qt::AlignVCenter,
                     tr("%1, %2 to %3").arg(story.subject, dayWords(span.from), dayWords(span.to)));
    double y = 2.2 * look.line;
    for (const ChartPanel& panel : story.panels) {
        if (panel.empty())
            continue;
        paintHead(painter, QRectF(0, y, width, headHeight(look)), panel, {true, false, std::nullopt}, look);
        y += headHeight(look);
        paintPlot(painter, QRectF(0, y, width, plotLines * look.line), story, panel, span, look);
        y += plotLines * look.line;
    }
    paintStrip(painter, QRectF(0, y, width, stripHeight(look)), story, span, std::nullopt, look);
    painter.restore();
}

} // namespace staveline::ui
