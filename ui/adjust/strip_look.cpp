// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/strip_look.h"

#include "advice/advise.h"
#include "advice/board.h"
#include "desk/history.h"
#include "ui/adjust/verdict_words.h"
#include "ui/present/text.h"

#include <QCoreApplication>
#include <QStringList>

#include <algorithm>
#include <cmath>
#include <map>

namespace staveline::ui {
namespace {

QString tr(const char* source) {
    return QCoreApplication::translate("WindowStrip", source);
}

QString courseWords(const StripCourse& course) {
    QString words = tr("%1 at this draw, %2 at the next").arg(bandWords(course.thisDraw), bandWords(course.next));
    if (course.settled)
        words += tr(", %1 if kept up").arg(bandWords(*course.settled));
    return words;
}

void widen(ScoreSpan& span, const Band& band) {
    span.low = std::min({span.low, band.low, band.value});
    span.high = std::max({span.high, band.high, band.value});
}
void widen(ScoreSpan& span, const std::optional<StripCourse>& course) {
    if (!course)
        return;
    widen(span, course->thisDraw);
    widen(span, course->next);
    if (course->settled)
        widen(span, *course->settled);
}

using Cell = QString (*)(const StripLook&);

StripRow rowOf(const QString& what, const PerDimension<StripLook>& strips, Cell cell) {
    StripRow row{what, {}};
    for (const Dimension d : allDimensions)
        row.cells[d] = cell(strips[d]);
    return row;
}

void addTasted(std::vector<StripRow>& rows, const PerDimension<StripLook>& strips) {
    std::map<Day, StripRow> byDay;
    for (const Dimension d : allDimensions)
        for (const StripPoint& point : strips[d].tasted) {
            StripRow& row = byDay[point.on];
            row.what = tr("Tasted %1").arg(dayWords(point.on));
            row.cells[d] = bandWords(point.band);
        }
    for (auto& [day, row] : byDay)
        rows.push_back(std::move(row));
}

void addCourse(std::vector<StripRow>& rows, const QString& name, const PerDimension<StripLook>& strips,
               std::optional<StripCourse> StripLook::*course) {
    if (!(strips[Dimension::acidity].*course))
        return;
    StripRow now{tr("%1, this draw").arg(name), {}}, next{tr("%1, next draw").arg(name), {}},
        kept{tr("%1, if kept up").arg(name), {}};
    for (const Dimension d : allDimensions)
        if (const auto& one = strips[d].*course) {
            now.cells[d] = bandWords(one->thisDraw);
            next.cells[d] = bandWords(one->next);
            kept.cells[d] = one->settled ? bandWords(*one->settled) : QString();
        }
    rows.insert(rows.end(), {now, next, kept});
}

} // namespace

std::vector<StripPoint> lastTasted(const HistoryView& history, Dimension dimension, std::size_t most) {
    std::vector<StripPoint> points;
    for (const HistoryRow& row : history.rows)
        if (const auto& tasted = row.tasted[dimension])
            points.push_back({row.on, bandOf(*tasted)});
    if (points.size() > most)
        points.erase(points.begin(), points.end() - static_cast<std::ptrdiff_t>(most));
    return points;
}

PerDimension<StripCourse> courseOf(const Proposal& proposal, bool settled) {
    PerDimension<StripCourse> courses;
    for (const Dimension d : allDimensions)
        courses[d] = {proposal.thisDraw[d], proposal.next[d],
                      settled ? std::optional(proposal.settled[d]) : std::nullopt};
    return courses;
}

PerDimension<StripCourse> courseOf(const Trial& trial) {
    PerDimension<StripCourse> courses;
    for (const Dimension d : allDimensions)
        courses[d] = {trial.thisDraw[d], trial.next[d],
                      trial.depth == TrialDepth::settled ? std::optional(trial.settled[d]) : std::nullopt};
    return courses;
}

QString sentenceOf(const StripLook& look) {
    QStringList parts;
    QStringList tasted;
    for (const StripPoint& point : look.tasted)
        tasted << tr("%1 on %2").arg(bandWords(point.band), dayWords(point.on));
    if (!tasted.isEmpty())
        parts << tr("tasted %1").arg(tasted.join(QStringLiteral(", ")));
    parts << tr("today %1").arg(bandWords(look.today.band));
    parts << tr("wanted %1 ±%2").arg(scoreWords(look.window.wanted), scoreWords(look.window.band));
    if (look.alone)
        parts << tr("left alone %1").arg(courseWords(*look.alone));
    if (look.tried)
        parts << tr("%1: %2").arg(look.triedName, courseWords(*look.tried));
    return tr("%1: %2.").arg(nameOf(look.dimension), parts.join(QStringLiteral("; ")));
}

ScoreSpan spanOf(const StripLook& look) {
    ScoreSpan span{look.window.wanted - look.window.band, look.window.wanted + look.window.band};
    for (const StripPoint& point : look.tasted)
        widen(span, point.band);
    widen(span, look.today.band);
    widen(span, look.alone);
    widen(span, look.tried);
    return {std::clamp(std::floor(span.low - .2), 0.0, 9.0), std::clamp(std::ceil(span.high + .2), 1.0, 10.0)};
}

std::vector<StripRow> tableOf(const PerDimension<StripLook>& strips) {
    std::vector<StripRow> rows;
    addTasted(rows, strips);
    rows.push_back(
        rowOf(tr("Today, all together"), strips, [](const StripLook& look) { return bandWords(look.today.band); }));
    rows.push_back(rowOf(tr("Wanted"), strips, [](const StripLook& look) {
        return tr("%1 ±%2").arg(scoreWords(look.window.wanted), scoreWords(look.window.band));
    }));
    addCourse(rows, tr("Leave it alone"), strips, &StripLook::alone);
    addCourse(rows, strips[Dimension::acidity].triedName, strips, &StripLook::tried);
    return rows;
}

} // namespace staveline::ui
