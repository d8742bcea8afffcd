// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/cellar/year_lane.h"

#include "ui/present/text.h"
#include "ui/widgets/theme.h"

#include <QCoreApplication>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace staveline::ui {

using desk::VesselSummary;
using vessel::DueKind;

namespace {

constexpr double markSize = 1.15; // in lines of text

QString tr(const char* words) {
    return QCoreApplication::translate("YearLane", words);
}

void addNext(std::vector<YearMark>& marks, const VesselSummary& vessel) {
    marks.push_back({DueKind::taste, vessel.dates.nextSample, false, false, false});
    marks.push_back({DueKind::draw, vessel.dates.nextDraw, false, false, false});
}

/// What is late by more than the lane shows stands at its left end.
double placeOf(const YearScale& scale, Day day) {
    return scale.x(std::max(day, scale.from()));
}

QRectF boxAt(const YearScale& scale, const QRectF& lane, Day day, double line) {
    const double side = line * markSize;
    return {placeOf(scale, day) - side / 2, lane.center().y() - side / 2, side, side};
}

void paintMark(QPainter& painter, const QRectF& box, const YearMark& mark, const QPalette& palette, bool inHand) {
    const QColor ink = mark.late ? tone(palette, Tone::due) : palette.color(QPalette::Text);
    const double pen = box.height() / 12;
    painter.setPen(QPen(inHand ? tone(palette, Tone::proposed) : mark.movable ? ink : hairline(palette), pen));
    painter.setBrush(palette.color(QPalette::Base));
    painter.drawRoundedRect(box, pen * 2, pen * 2);
    painter.setPen(mark.movable ? ink : quietText(palette));
    painter.drawText(box, Qt::AlignCenter, workWord(mark.kind).left(1).toUpper());
    if (mark.set) // its day was set: it stands on a bar
        painter.fillRect(QRectF(box.left(), box.bottom() + pen, box.width(), pen * 1.6), ink);
}

} // namespace

QString workWord(DueKind kind) {
    switch (kind) {
    case DueKind::taste:
        return tr("taste");
    case DueKind::brew:
        return tr("brew");
    case DueKind::draw:
        return tr("draw");
    case DueKind::refill:
        return tr("fill");
    case DueKind::nothing:
        break;
    }
    return {};
}

std::vector<YearMark> marksOf(const VesselSummary& vessel, Day today) {
    std::vector<YearMark> marks;
    const auto lateIs = [&](DueKind kind) { return vessel.due.kind == kind && vessel.due.inDays < 0; };
    for (const desk::PlannedWork& work : desk::movableWork(vessel))
        marks.push_back({work.kind, work.on, true, work.set, lateIs(work.kind)});
    if (vessel.toFill || vessel.works.draw.done)
        marks.push_back({DueKind::refill, vessel.dates.draw, false, false, lateIs(DueKind::refill)});
    if (!marks.empty())
        addNext(marks, vessel);
    const Day end = today + std::chrono::days{YearScale::ahead};
    std::erase_if(marks, [&](const YearMark& mark) { return mark.on > end; });
    std::ranges::stable_sort(marks, {}, &YearMark::on);
    return marks;
}

double YearScale::x(Day day) const {
    return lane_.left() + lane_.width() * daysBetween(from_, day) / (past + ahead);
}

Day YearScale::day(double x) const {
    const double part = lane_.width() > 0 ? std::clamp((x - lane_.left()) / lane_.width(), 0.0, 1.0) : 0;
    return from_ + std::chrono::days{std::lround(part * (past + ahead))};
}

std::vector<Day> YearScale::months() const {
    std::vector<Day> firsts;
    const std::chrono::year_month_day start{from_};
    for (auto month = start.year() / start.month();; month += std::chrono::months{1}) {
        const Day first{month / 1};
        if (first > to())
            return firsts;
        if (first >= from_)
            firsts.push_back(first);
    }
}

void paintLane(QPainter& painter, const QRectF& lane, const std::vector<YearMark>& marks, Day today,
               const QPalette& palette, double line, const std::optional<YearMark>& moved) {
    const YearScale scale(today, lane);
    painter.setPen(QPen(hairline(palette), line / 16));
    for (const Day first : scale.months())
        painter.drawLine(QPointF(scale.x(first), lane.top()), QPointF(scale.x(first), lane.bottom()));
    painter.setPen(QPen(tone(palette, Tone::proposed), line / 8));
    painter.drawLine(QPointF(scale.x(today), lane.top()), QPointF(scale.x(today), lane.bottom()));
    painter.setRenderHint(QPainter::Antialiasing);
    for (const YearMark& mark : marks)
        if (!moved || moved->kind != mark.kind || !mark.movable)
            paintMark(painter, boxAt(scale, lane, mark.on, line), mark, palette, false);
    if (moved)
        paintMark(painter, boxAt(scale, lane, moved->on, line), *moved, palette, true);
}

void paintMonths(QPainter& painter, const QRectF& lane, Day today, const QPalette& palette) {
    const YearScale scale(today, lane);
    painter.setPen(palette.color(QPalette::WindowText));
    const std::vector<Day> firsts = scale.months();
    for (std::size_t i = 0; i < firsts.size(); ++i) {
        const std::chrono::year_month_day first{firsts[i]};
        const double left = scale.x(firsts[i]), right = i + 1 < firsts.size() ? scale.x(firsts[i + 1]) : lane.right();
        const QString name = dayWords(firsts[i]).section(QLatin1Char(' '), 1, 1);
        const QString year = first.month() == std::chrono::January || i == 0
                                 ? QString::number(static_cast<int>(first.year()))
                                 : QString();
        const QRectF box(left, lane.top(), right - left, lane.height());
        if (painter.fontMetrics().horizontalAdvance(name) > box.width())
            continue; // the last one has begun just before the end
        painter.drawText(box, Qt::AlignHCenter | Qt::AlignVCenter,
                         year.isEmpty() || painter.fontMetrics().horizontalAdvance(name + year) > box.width()
                             ? name
                             : name + QLatin1Char(' ') + year);
    }
}

const YearMark* markAt(const std::vector<YearMark>& marks, Day today, const QRectF& lane, double x, double line) {
    const YearScale scale(today, lane);
    for (auto mark = marks.rbegin(); mark != marks.rend(); ++mark)
        if (std::abs(placeOf(scale, mark->on) - x) <= line * markSize / 2)
            return &*mark;
    return nullptr;
}

} // namespace staveline::ui
