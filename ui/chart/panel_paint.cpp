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
constexpr std::array eventRows = {ChartEvent::Row::out, ChartEvent::Row::in, ChartEvent::Row::look};

QString tr(const char* source) {
    return QCoreApplication::translate("Chart", source);
}

QString rowWord(ChartEvent::Row row) {
    switch (row) {
    case ChartEvent::Row::out:
        return tr("drawn");
    case ChartEvent::Row::in:
        return tr("filled");
    case ChartEvent::Row::look:
        break;
    }
    return tr("checked");
}

double widthOf(const QStringList& words, const ChartStyle& style) {
    const QFontMetricsF metrics(style.font);
    double sum = 0;
    for (const QString& one : words)
        sum += metrics.horizontalAdvance(one) + (signWidth + gap + entryGap) * style.line;
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
                 const ChartStyle& style) {
    const QFontMetricsF metrics(style.font);
    double x = box.left();
    const auto shown = shownSeries(panel);
    for (std::size_t i = 0; i < shown.size(); ++i) {
        const QString& one = words[static_cast<qsizetype>(i)];
        const double wide = metrics.horizontalAdvance(one);
        if (x + signWidth * style.line > box.right())
            return;
        paintSign(painter, QRectF(x, box.top(), signWidth * style.line, box.height()), *shown[i], style);
        x += (signWidth + gap) * style.line;
        painter.setPen(style.palette.color(QPalette::WindowText));
        painter.drawText(QRectF(x, box.top(), std::min(wide + 1, box.right() - x), box.height()),
                         Qt::AlignLeft | Qt::AlignVCenter, metrics.elidedText(one, Qt::ElideRight, box.right() - x));
        x += wide + entryGap * style.line;
    }
}

void paintTick(QPainter& painter, QPointF at, double side, const ChartStyle& style) {
    painter.setPen(QPen(quietText(style.palette), style.line / 14));
    painter.drawLine(at - QPointF(0, side * .3), at + QPointF(0, side * .3));
}

struct MarkKind {
    std::optional<Glyph> glyph; ///< none: a tick
    QString words;
};
/// Each shape once, in the order in which they first happened; what are ticks share one.
std::vector<MarkKind> markKinds(const ChartData& chartData) {
    std::vector<MarkKind> kinds;
    QStringList ticks;
    for (const ChartEvent& event : chartData.events) {
        const bool known =
            std::any_of(kinds.begin(), kinds.end(), [&](const MarkKind& other) { return other.glyph == event.glyph; });
        if (!event.glyph && !event.kind.isEmpty() && !ticks.contains(event.kind))
            ticks << event.kind;
        else if (event.glyph && !known && !event.kind.isEmpty())
            kinds.push_back({event.glyph, event.kind});
    }
    if (!ticks.isEmpty())
        kinds.push_back({std::nullopt, ticks.join(tr(", "))});
    return kinds;
}

/// What the marks mean, as far as there is room.
void paintMarkLegend(QPainter& painter, const QRectF& row, const ChartData& chartData, const ChartStyle& style) {
    painter.setFont(font(style.font, Type::small));
    const QFontMetricsF metrics(painter.font());
    const double side = markRow * style.line * .9;
    double x = row.left();
    for (const MarkKind& kind : markKinds(chartData)) {
        const double wide = metrics.horizontalAdvance(kind.words) + 1;
        if (x + side + gap * style.line + wide > row.right())
            return;
        if (kind.glyph)
            paintGlyph(painter, QRectF(x, row.center().y() - side / 2, side, side), *kind.glyph,
                       style.palette.color(QPalette::WindowText));
        else
            paintTick(painter, {x + side / 2, row.center().y()}, side, style);
        x += side + gap * style.line;
        painter.setPen(quietText(style.palette));
        painter.drawText(QRectF(x, row.top(), wide, row.height()), Qt::AlignLeft | Qt::AlignVCenter, kind.words);
        x += wide + entryGap * style.line;
    }
}

/// The marks of one row; where they would cover each other the later ones become ticks.
void paintMarks(QPainter& painter, const QRectF& row, ChartEvent::Row which, const PlotFrame& frame,
                const ChartData& chartData, const ChartStyle& style) {
    const double side = markRow * style.line * .9, y = row.center().y();
    double free = -1e9;
    for (const ChartEvent& event : chartData.events) {
        const double x = frame.x(event.on);
        if (event.row != which || x < row.left() || x > row.right())
            continue;
        if (!event.glyph || x - side * .4 < free) {
            paintTick(painter, {x, y}, side, style);
            continue;
        }
        paintGlyph(painter, QRectF(x - side / 2, y - side / 2, side, side), *event.glyph,
                   style.palette.color(QPalette::WindowText));
        free = x + side * .4;
    }
}

void paintDates(QPainter& painter, const QRectF& row, const PlotFrame& frame, const ChartStyle& style) {
    painter.setFont(font(style.font, Type::small));
    const QFontMetricsF metrics(painter.font());
    painter.setPen(quietText(style.palette));
    double free = row.left() - style.left();
    for (const TimeTick& tick : timeTicks(frame.span, 5 * style.line / frame.area.width())) {
        const double x = frame.x(tick.on), wide = metrics.horizontalAdvance(tick.label);
        if (x - wide / 2 < free || x + wide / 2 > row.right() + style.right())
            continue;
        painter.drawText(QRectF(x - wide / 2 - 1, row.top(), wide + 2, row.height()), Qt::AlignCenter, tick.label);
        free = x + wide / 2 + style.line * .4;
    }
}

void paintToday(QPainter& painter, const QRectF& rows, const PlotFrame& frame, Day today, const ChartStyle& style) {
    const double x = frame.x(today);
    if (today < frame.span.from || today > frame.span.to)
        return;
    painter.setPen(QPen(tone(style.palette, Tone::proposed), style.line / 8));
    painter.drawLine(QPointF(x, rows.top()), QPointF(x, rows.bottom()));
}

} // namespace

double headHeight(const ChartStyle& style) {
    return 1.4 * style.line;
}
double timelineHeight(const ChartStyle& style) {
    return (static_cast<double>(eventRows.size()) * markRow + 2.5) * style.line;
}

QStringList legendWords(const ChartPanel& panel, std::optional<Day> cursor, double room, const ChartStyle& style) {
    const auto shown = shownSeries(panel);
    QStringList full, shorter, names;
    for (const ChartSeries* series : shown) {
        names << series->name;
        const QString words = cursor ? seriesWords(panel, *series, *cursor) : QString();
        full << (words.isEmpty() ? series->name : words);
        shorter << (cursor ? withoutDay(panel, *series, *cursor) : series->name);
    }
    for (const QStringList& words : {full, shorter})
        if (widthOf(words, style) <= room)
            return words;
    return names;
}

void paintHead(QPainter& painter, const QRectF& box, const ChartPanel& panel, const Head& head,
               const ChartStyle& style) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF arrow(box.left(), box.top(), style.line, box.height());
    if (head.arrow)
        paintArrow(painter, arrow, head.open, quietText(style.palette));
    const QFont strong = font(style.font, Type::strong);
    const QString title = titleOf(panel);
    const double wide = QFontMetricsF(strong).horizontalAdvance(title) + 1;
    const QRectF words = box.adjusted(head.arrow ? style.line * 1.1 : style.left(), 0, -style.right(), 0);
    painter.setFont(strong);
    painter.setPen(style.palette.color(QPalette::WindowText));
    painter.drawText(words, Qt::AlignLeft | Qt::AlignVCenter, title);
    painter.setFont(style.font);
    const QRectF rest = words.adjusted(wide + 1.2 * style.line, 0, 0, 0);
    if (panel.empty()) {
        painter.setPen(quietText(style.palette));
        painter.drawText(rest, Qt::AlignLeft | Qt::AlignVCenter,
                         QFontMetricsF(style.font).elidedText(panel.nothing, Qt::ElideRight, rest.width()));
    } else {
        paintLegend(painter, rest, panel, legendWords(panel, head.cursor, rest.width(), style), style);
    }
    painter.restore();
}

void paintTimeline(QPainter& painter, const QRectF& box, const ChartData& chartData, const TimeSpan& span,
                   std::optional<Day> cursor, const ChartStyle& style) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF inside = box.adjusted(style.left(), 0, -style.right(), 0);
    const PlotFrame frame{inside, span, {}};
    QRectF row(inside.left(), box.top() + style.line * .1, inside.width(), markRow * style.line);
    const QRectF all = row.adjusted(0, 0, 0, (static_cast<double>(eventRows.size()) - 1) * row.height());
    paintToday(painter, all, frame, chartData.today, style);
    for (const ChartEvent::Row which : eventRows) {
        painter.setFont(font(style.font, Type::small));
        painter.setPen(quietText(style.palette));
        painter.drawText(QRectF(box.left(), row.top(), style.left() - style.line * .4, row.height()),
                         Qt::AlignRight | Qt::AlignVCenter, rowWord(which));
        paintMarks(painter, row, which, frame, chartData, style);
        row.translate(0, row.height());
    }
    QRectF below(inside.left(), all.bottom() + style.line * .1, inside.width(), 1.1 * style.line);
    paintDates(painter, below, frame, style);
    paintMarkLegend(painter, below.translated(0, below.height()), chartData, style);
    if (cursor && *cursor >= span.from && *cursor <= span.to) {
        painter.setPen(QPen(style.palette.color(QPalette::WindowText), style.line / 14));
        painter.drawLine(QPointF(frame.x(*cursor), box.top()), QPointF(frame.x(*cursor), all.bottom()));
    }
    painter.restore();
}

double sheetHeight(const ChartData& chartData, const ChartStyle& style) {
    double height = 2.6 * style.line + timelineHeight(style);
    for (const ChartPanel& panel : chartData.panels)
        if (!panel.empty())
            height += headHeight(style) + plotLines * style.line;
    return height;
}

void paintSheet(QPainter& painter, double width, const ChartData& chartData, const TimeSpan& span,
                const ChartStyle& style) {
    painter.save();
    painter.fillRect(QRectF(0, 0, width, sheetHeight(chartData, style)), style.palette.color(QPalette::Window));
    painter.setPen(style.palette.color(QPalette::WindowText));
    painter.setFont(font(style.font, Type::strong));
    const QRectF title(style.left(), .5 * style.line, width - style.left() - style.right(), 1.5 * style.line);
    painter.drawText(title, Qt::AlignLeft | Qt::AlignVCenter,
                     tr("%1, %2 to %3").arg(chartData.subject, dayWords(span.from), dayWords(span.to)));
    double y = 2.2 * style.line;
    for (const ChartPanel& panel : chartData.panels) {
        if (panel.empty())
            continue;
        paintHead(painter, QRectF(0, y, width, headHeight(style)), panel, {true, false, std::nullopt}, style);
        y += headHeight(style);
        paintPlot(painter, QRectF(0, y, width, plotLines * style.line), chartData, panel, span, style);
        y += plotLines * style.line;
    }
    paintTimeline(painter, QRectF(0, y, width, timelineHeight(style)), chartData, span, std::nullopt, style);
    painter.restore();
}

} // namespace staveline::ui
