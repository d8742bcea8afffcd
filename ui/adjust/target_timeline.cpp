// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/target_timeline.h"

#include "ui/present/text.h"
#include "ui/present/verdict_words.h"
#include "ui/widgets/paper_style.h"
#include "ui/widgets/tip_at.h"

#include <QKeyEvent>
#include <QPainter>

#include <algorithm>

namespace staveline::ui {
namespace {

// Places along the timeline; what is past gets its days' share of the first third.
constexpr double firstTasted = .03, lastTastedAt = .28, todayAt = .37, drawAt = .55, nextAt = .755, settledAt = .945;

Tone toneOf(TimelineMark mark) {
    switch (mark) {
    case TimelineMark::tasted:
        return Tone::tasted;
    case TimelineMark::tried:
        return Tone::proposed;
    default:
        return Tone::predicted;
    }
}
QColor inkOf(TimelineMark mark, const QPalette& palette) {
    return mark == TimelineMark::today ? palette.color(QPalette::WindowText) : tone(palette, toneOf(mark));
}

} // namespace

void paintMark(QPainter& painter, QPointF at, TimelineMark mark, const QPalette& palette, double line) {
    const QColor ink = inkOf(mark, palette);
    const double r = line * .21;
    painter.setPen(QPen(ink, line * .09));
    painter.setBrush(mark == TimelineMark::tasted || mark == TimelineMark::tried ? ink : palette.color(QPalette::Base));
    switch (mark) {
    case TimelineMark::tasted:
        painter.drawEllipse(at, r * .8, r * .8);
        break;
    case TimelineMark::today:
        painter.drawRect(QRectF(at - QPointF(r, r), QSizeF(2 * r, 2 * r)));
        break;
    case TimelineMark::alone:
        painter.drawEllipse(at, r, r);
        break;
    case TimelineMark::tried:
        painter.drawPolygon(
            QPolygonF({at + QPointF(0, -r * 1.25), at + QPointF(r * 1.2, r), at + QPointF(-r * 1.2, r)}));
    }
}

TargetTimeline::TargetTimeline(Dimension dimension, QWidget* parent) : QWidget(parent) {
    look_.dimension = dimension;
    setFocusPolicy(Qt::StrongFocus);
    setObjectName(QStringLiteral("timeline ") + nameOf(dimension));
    setAccessibleName(tr("%1 over time").arg(nameOf(dimension)));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void TargetTimeline::setLook(const TargetTimelineData& look) {
    look_ = look;
    span_ = spanOf(look);
    setAccessibleDescription(sentenceOf(look));
    update();
}

QSize TargetTimeline::sizeHint() const {
    return {lines(*this, 17), lines(*this, 7.6)};
}
QSize TargetTimeline::minimumSizeHint() const {
    return {lines(*this, 11), lines(*this, 7.6)};
}

QRectF TargetTimeline::plot() const {
    const double line = lines(*this, 1);
    return QRectF(rect()).adjusted(line * 1.5, line * .35, -line * .4, -line * 1.35);
}
double TargetTimeline::yOf(double score) const {
    const QRectF area = plot();
    return area.bottom() - (score - span_.low) / (span_.high - span_.low) * area.height();
}
double TargetTimeline::slot(double share) const {
    return plot().left() + share * plot().width();
}
double TargetTimeline::xOf(Day on) const {
    const Day first = look_.tasted.front().on;
    const double days = std::max(1, daysBetween(first, look_.today.on));
    return slot(firstTasted + (lastTastedAt - firstTasted) * daysBetween(first, on) / days);
}

void TargetTimeline::paintWindow(QPainter& painter) const {
    const QRectF area = plot();
    const double top = yOf(look_.window.wanted + look_.window.band),
                 bottom = yOf(look_.window.wanted - look_.window.band);
    const QRectF band(QPointF(area.left(), std::max(top, area.top())),
                      QPointF(area.right(), std::min(bottom, area.bottom())));
    painter.fillRect(band, selection(palette()));
    painter.setPen(QPen(tone(palette(), Tone::calm), lines(*this, 1) * .07));
    painter.drawLine(band.topLeft(), band.topRight());
    painter.drawLine(band.bottomLeft(), band.bottomRight());
    painter.setPen(QPen(hairline(palette()), 1, Qt::DashLine));
    painter.drawLine(QPointF(slot((todayAt + lastTastedAt) / 2), area.top()),
                     QPointF(slot((todayAt + lastTastedAt) / 2), area.bottom()));
}

void TargetTimeline::paintAxis(QPainter& painter) const {
    const QRectF area = plot();
    const double line = lines(*this, 1);
    painter.setFont(ui::font(font(), Type::small));
    painter.setPen(quietText(palette()));
    for (const double score : {look_.window.wanted + look_.window.band, look_.window.wanted - look_.window.band})
        painter.drawText(QRectF(0, yOf(score) - line / 2, area.left() - line * .25, line),
                         Qt::AlignRight | Qt::AlignVCenter, QString::number(score, 'g', 3));
    const auto word = [&](double at, const QString& words) {
        const double wide = painter.fontMetrics().horizontalAdvance(words);
        const double left = std::clamp(at - wide / 2, 0.0, width() - wide);
        painter.drawText(QPointF(left, height() - line * .3), words);
    };
    if (!look_.tasted.empty())
        word(slot((firstTasted + lastTastedAt) / 2), tr("tasted"));
    word(slot(todayAt), tr("today"));
    if (!look_.alone && !look_.tried)
        return;
    // Beside an open help the timeline is narrow.
    const auto wide = [&](const QString& words) { return painter.fontMetrics().horizontalAdvance(words); };
    const bool narrow = slot(nextAt) - slot(drawAt) < wide(tr("next draw")) + line / 2 ||
                        slot(settledAt) - slot(nextAt) < (wide(tr("next draw")) + wide(tr("if repeated")) + line) / 2;
    word(slot(drawAt), narrow ? tr("draw") : tr("this draw"));
    word(slot(nextAt), narrow ? tr("next") : tr("next draw"));
    word(slot(settledAt), narrow ? tr("later") : tr("if repeated"));
}

void TargetTimeline::paintPoint(QPainter& painter, double x, const advice::Band& band, TimelineMark mark) const {
    const double line = lines(*this, 1);
    if (band.high > band.low) {
        painter.setPen(QPen(inkOf(mark, palette()), line * .07));
        const double top = yOf(std::min(band.high, span_.high)), bottom = yOf(std::max(band.low, span_.low));
        painter.drawLine(QPointF(x, top), QPointF(x, bottom));
        for (const double y : {top, bottom})
            painter.drawLine(QPointF(x - line * .12, y), QPointF(x + line * .12, y));
    }
    paintMark(painter, QPointF(x, yOf(band.value)), mark, palette(), line);
}

void TargetTimeline::paintTasted(QPainter& painter) const {
    for (const TimelinePoint& point : look_.tasted)
        paintPoint(painter, xOf(point.on), point.band, TimelineMark::tasted);
    paintPoint(painter, slot(todayAt), look_.today.band, TimelineMark::today);
}

void TargetTimeline::paintBands(QPainter& painter, const ForecastBands& bands, TimelineMark mark, double shift) const {
    const double step = shift * lines(*this, 1);
    QPolygonF path(
        {QPointF(slot(drawAt) + step, yOf(bands.thisDraw.value)), QPointF(slot(nextAt) + step, yOf(bands.next.value))});
    if (bands.settled)
        path << QPointF(slot(settledAt) + step, yOf(bands.settled->value));
    painter.setBrush(Qt::NoBrush);
    painter.setPen(
        QPen(inkOf(mark, palette()), lines(*this, 1) * .06, mark == TimelineMark::alone ? Qt::DotLine : Qt::SolidLine));
    painter.drawPolyline(path);
    paintPoint(painter, path[0].x(), bands.thisDraw, mark);
    paintPoint(painter, path[1].x(), bands.next, mark);
    if (bands.settled)
        paintPoint(painter, path[2].x(), *bands.settled, mark);
}

void TargetTimeline::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillRect(plot(), palette().color(QPalette::Base));
    paintWindow(painter);
    paintAxis(painter);
    painter.setFont(font());
    if (look_.alone)
        paintBands(painter, *look_.alone, TimelineMark::alone, look_.tried ? -.22 : 0);
    if (look_.tried)
        paintBands(painter, *look_.tried, TimelineMark::tried, .22);
    paintTasted(painter);
    if (hasFocus())
        drawFocusRing(painter, QRectF(rect()), palette(), lines(*this, 1));
}

void TargetTimeline::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_T || event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
        Q_EMIT tableAsked();
    else
        QWidget::keyPressEvent(event);
}

QString TargetTimeline::wordsAt(QPointF at) const {
    QString words;
    double nearest = lines(*this, .8);
    const auto mark = [&](double x, const advice::Band& band, const QString& what) {
        const double away = QLineF(at, QPointF(x, yOf(band.value))).length();
        if (away >= nearest)
            return;
        nearest = away;
        words = tr("%1: %2").arg(what, bandWords(band));
    };
    for (const TimelinePoint& point : look_.tasted)
        mark(xOf(point.on), point.band, tr("Tasted %1").arg(dayWords(point.on)));
    mark(slot(todayAt), look_.today.band, tr("Today"));
    const auto draws = [&](const std::optional<ForecastBands>& bands, const QString& name, double shift) {
        if (!bands)
            return;
        const double step = shift * lines(*this, 1);
        mark(slot(drawAt) + step, bands->thisDraw, tr("%1, draw of %2").arg(name, dayWords(look_.thisDraw)));
        mark(slot(nextAt) + step, bands->next, tr("%1, draw of %2").arg(name, dayWords(look_.nextDraw)));
        if (bands->settled)
            mark(slot(settledAt) + step, *bands->settled, tr("%1, if repeated").arg(name));
    };
    draws(look_.alone, tr("No change"), look_.tried ? -.22 : 0);
    draws(look_.tried, look_.triedName, .22);
    return words;
}

bool TargetTimeline::event(QEvent* event) {
    return tipAt(*event, *this, [this](const QPoint& at) { return wordsAt(at); }) || QWidget::event(event);
}

TimelineLegend::TimelineLegend(QWidget* parent) : QWidget(parent) {
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
}

void TimelineLegend::setTriedName(const QString& name) {
    if (tried_ == name)
        return;
    tried_ = name;
    updateGeometry();
    update();
}

std::vector<std::pair<TimelineMark, QString>> TimelineLegend::entries() const {
    std::vector<std::pair<TimelineMark, QString>> all{{TimelineMark::tasted, tr("tasted")},
                                                      {TimelineMark::today, tr("today")},
                                                      {TimelineMark::alone, tr("no change")}};
    if (!tried_.isEmpty())
        all.emplace_back(TimelineMark::tried, tried_);
    return all;
}

QSize TimelineLegend::sizeHint() const {
    const QFontMetrics metrics(ui::font(font(), Type::small));
    int wide = 0;
    for (const auto& [mark, words] : entries())
        wide += metrics.horizontalAdvance(words) + lines(*this, 1.8);
    return {wide, lines(*this, 1.2)};
}

void TimelineLegend::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double line = lines(*this, 1);
    painter.setFont(ui::font(font(), Type::small));
    double x = line * .4;
    for (const auto& [mark, words] : entries()) {
        paintMark(painter, QPointF(x, height() / 2.0), mark, palette(), line);
        x += line * .5;
        painter.setPen(palette().color(QPalette::WindowText));
        painter.drawText(QRectF(x, 0, width(), height()), Qt::AlignLeft | Qt::AlignVCenter, words);
        x += painter.fontMetrics().horizontalAdvance(words) + line * 1.2;
    }
}

} // namespace staveline::ui
