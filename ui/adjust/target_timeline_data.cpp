// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/target_timeline_data.h"

#include "advice/advise.h"
#include "advice/board.h"
#include "advice/on_scale.h"
#include "desk/history.h"
#include "ui/present/text.h"
#include "ui/present/verdict_words.h"

#include <QCoreApplication>
#include <QStringList>

#include <algorithm>
#include <cmath>
#include <map>

namespace staveline::ui {
namespace {

QString tr(const char* source) {
    return QCoreApplication::translate("TargetTimeline", source);
}

QString bandsWords(const ForecastBands& bands) {
    QString words = tr("%1 at this draw, %2 at the next").arg(bandWords(bands.thisDraw), bandWords(bands.next));
    if (bands.settled)
        words += tr(", %1 if repeated").arg(bandWords(*bands.settled));
    return words;
}

void widen(ScoreSpan& span, const advice::Band& band) {
    span.low = std::min({span.low, band.low, band.value});
    span.high = std::max({span.high, band.high, band.value});
}
void widen(ScoreSpan& span, const std::optional<ForecastBands>& bands) {
    if (!bands)
        return;
    widen(span, bands->thisDraw);
    widen(span, bands->next);
    if (bands->settled)
        widen(span, *bands->settled);
}

using Cell = QString (*)(const TargetTimelineData&);

TimelineRow rowOf(const QString& what, const PerDimension<TargetTimelineData>& timelines, Cell cell) {
    TimelineRow row{what, {}};
    for (const Dimension d : allDimensions)
        row.cells[d] = cell(timelines[d]);
    return row;
}

void addTasted(std::vector<TimelineRow>& rows, const PerDimension<TargetTimelineData>& timelines) {
    std::map<Day, TimelineRow> byDay;
    for (const Dimension d : allDimensions)
        for (const TimelinePoint& point : timelines[d].tasted) {
            TimelineRow& row = byDay[point.on];
            row.what = tr("Tasted %1").arg(dayWords(point.on));
            row.cells[d] = bandWords(point.band);
        }
    for (auto& [day, row] : byDay)
        rows.push_back(std::move(row));
}

void addBands(std::vector<TimelineRow>& rows, const QString& name, const PerDimension<TargetTimelineData>& timelines,
              std::optional<ForecastBands> TargetTimelineData::*bands) {
    if (!(timelines[Dimension::acidity].*bands))
        return;
    TimelineRow now{tr("%1, this draw").arg(name), {}}, next{tr("%1, next draw").arg(name), {}},
        kept{tr("%1, if repeated").arg(name), {}};
    for (const Dimension d : allDimensions)
        if (const auto& one = timelines[d].*bands) {
            now.cells[d] = bandWords(one->thisDraw);
            next.cells[d] = bandWords(one->next);
            kept.cells[d] = one->settled ? bandWords(*one->settled) : QString();
        }
    rows.insert(rows.end(), {now, next, kept});
}

} // namespace

std::vector<TimelinePoint> lastTasted(const desk::HistoryView& history, Dimension dimension, std::size_t most) {
    std::vector<TimelinePoint> points;
    for (const desk::HistoryRow& row : history.rows)
        if (const auto& tasted = row.tasted[dimension]; tasted && row.learn)
            points.push_back({row.on, bandOf(*tasted)});
    if (points.size() > most)
        points.erase(points.begin(), points.end() - static_cast<std::ptrdiff_t>(most));
    return points;
}

PerDimension<ForecastBands> forecastBandsOf(const advice::Proposal& proposal, bool settled) {
    PerDimension<ForecastBands> bands;
    for (const Dimension d : allDimensions)
        bands[d] = {onScale(proposal.thisDraw[d]), onScale(proposal.next[d]),
                    settled ? std::optional(onScale(proposal.settled[d])) : std::nullopt};
    return bands;
}

PerDimension<ForecastBands> forecastBandsOf(const advice::Trial& trial) {
    PerDimension<ForecastBands> bands;
    for (const Dimension d : allDimensions)
        bands[d] = {onScale(trial.thisDraw[d]), onScale(trial.next[d]),
                    trial.depth == advice::TrialDepth::settled ? std::optional(onScale(trial.settled[d]))
                                                               : std::nullopt};
    return bands;
}

QString sentenceOf(const TargetTimelineData& look) {
    QStringList parts;
    QStringList tasted;
    for (const TimelinePoint& point : look.tasted)
        tasted << tr("%1 on %2").arg(bandWords(point.band), dayWords(point.on));
    if (!tasted.isEmpty())
        parts << tr("tasted %1").arg(tasted.join(QStringLiteral(", ")));
    parts << tr("today %1").arg(bandWords(look.today.band));
    parts << tr("target %1 ±%2").arg(scoreWords(look.window.wanted), scoreWords(look.window.band));
    if (look.alone)
        parts << tr("no change %1").arg(bandsWords(*look.alone));
    if (look.tried)
        parts << tr("%1: %2").arg(look.triedName, bandsWords(*look.tried));
    return tr("%1: %2.").arg(nameOf(look.dimension), parts.join(QStringLiteral("; ")));
}

ScoreSpan spanOf(const TargetTimelineData& look) {
    ScoreSpan span{look.window.wanted - look.window.band, look.window.wanted + look.window.band};
    for (const TimelinePoint& point : look.tasted)
        widen(span, point.band);
    widen(span, look.today.band);
    widen(span, look.alone);
    widen(span, look.tried);
    return {std::clamp(std::floor(span.low - .2), 0.0, 9.0), std::clamp(std::ceil(span.high + .2), 1.0, 10.0)};
}

std::vector<TimelineRow> tableOf(const PerDimension<TargetTimelineData>& timelines) {
    std::vector<TimelineRow> rows;
    addTasted(rows, timelines);
    rows.push_back(rowOf(tr("Best estimate today"), timelines,
                         [](const TargetTimelineData& look) { return bandWords(look.today.band); }));
    rows.push_back(rowOf(tr("Target"), timelines, [](const TargetTimelineData& look) {
        return tr("%1 ±%2").arg(scoreWords(look.window.wanted), scoreWords(look.window.band));
    }));
    addBands(rows, tr("Leave it alone"), timelines, &TargetTimelineData::alone);
    addBands(rows, timelines[Dimension::acidity].triedName, timelines, &TargetTimelineData::tried);
    return rows;
}

} // namespace staveline::ui
