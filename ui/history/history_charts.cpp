// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/history/history_charts.h"

#include "ui/present/ledger_model.h"
#include "ui/present/text.h"
#include "ui/present/unit_scale.h"
#include "ui/widgets/entry_look.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace staveline::ui {

using desk::HistoryRow;
using desk::HistoryView;
using vessel::EntryKind;

namespace {

constexpr double margin = .02; // of the whole, at both ends

QString tr(const char* source) {
    return QCoreApplication::translate("History", source);
}

ChartPoint estimatePoint(Day on, const tasting::Estimate& estimate) {
    const double half = tasting::z80 * estimate.sd;
    return {on, estimate.mean, estimate.mean - half, estimate.mean + half, {}};
}

TimeSpan wholeOf(const HistoryView& history, Day today) {
    if (history.rows.empty())
        return {today - std::chrono::days{30}, today};
    const Day first = history.rows.front().on, last = std::max(history.rows.back().on, today);
    const auto room = std::chrono::days{std::max(4L, std::lround(margin * daysBetween(first, last)))};
    return {first - room, last + room};
}

/// Builds the panels; numbers are converted on the way in.
class Panels {
public:
    Panels(const HistoryView& history, const DisplayUnits& units, const TimeSpan& whole, Day today)
        : history_(history), units_(units), whole_(whole), today_(today) {}

    [[nodiscard]] std::vector<ChartPanel> all() const {
        std::vector<ChartPanel> panels;
        for (Dimension d : allDimensions)
            panels.push_back(score(d));
        for (Dimension d : allDimensions)
            panels.push_back(learned(d));
        panels.push_back(
            measured("ta", UnitKind::concentration, 1, 1, [](const HistoryRow& row) { return row.measured.ta; }));
        panels.push_back(measured("ph", UnitKind::ph, 2, .1, [](const HistoryRow& row) { return row.measured.ph; }));
        panels.push_back(measured("gravity", UnitKind::gravity, isSpecific() ? 3 : 1, isSpecific() ? .004 : 1,
                                  [](const HistoryRow& row) { return row.measured.gravity; }));
        panels.push_back(
            setting("bitterness", UnitKind::bitterness, [](const HistoryRow& row) { return row.refillBitterness; }));
        panels.push_back(
            setting("mash", UnitKind::temperature, [](const HistoryRow& row) { return row.mashTemperature; }));
        panels.push_back(volume());
        panels.push_back(age());
        return panels;
    }

private:
    [[nodiscard]] bool isSpecific() const { return units_.gravity == DisplayUnits::Gravity::specific; }

    [[nodiscard]] static ChartPanel panel(const char* id, QString unit, int decimals) {
        ChartPanel made;
        made.id = QString::fromLatin1(id);
        made.title = own(std::string("ui.history.panel.") + id);
        made.nothing = own(std::string("ui.history.nothing.") + id);
        made.unit = std::move(unit);
        made.decimals = decimals;
        return made;
    }
    [[nodiscard]] ChartPanel panel(const char* id, UnitKind kind, int decimals) const {
        return panel(id, UnitScale(kind, units_).suffix(), decimals);
    }
    [[nodiscard]] static ChartSeries series(QString name, SeriesKind kind, Shape shape, Tone tone) {
        ChartSeries made;
        made.name = std::move(name);
        made.kind = kind;
        made.shape = shape;
        made.tone = tone;
        return made;
    }

    [[nodiscard]] ChartPanel score(Dimension d) const {
        ChartPanel made = panel(std::string(name(d)).c_str(), QString(), 1);
        made.least = 3;
        auto told = series(tr("promised"), SeriesKind::promises, Shape::diamond, Tone::proposed);
        for (const desk::PromiseOutcome& promise : history_.promises)
            told.points.push_back(estimatePoint(promise.forDay, promise.told[d]));
        std::stable_sort(told.points.begin(), told.points.end(),
                         [](const ChartPoint& a, const ChartPoint& b) { return a.on < b.on; });
        auto tasted = series(tr("tasted"), SeriesKind::points, Shape::disc, Tone::tasted);
        tasted.joined = true;
        auto aside = series(tr("tasted, not learned from"), SeriesKind::points, Shape::square, Tone::calm);
        for (const HistoryRow& row : history_.rows)
            if (row.tasted[d])
                (row.learn ? tasted : aside).points.push_back(estimatePoint(row.on, *row.tasted[d]));
        made.series = {window(d), std::move(told), std::move(tasted)};
        if (!aside.points.empty())
            made.series.push_back(std::move(aside));
        return made;
    }
    /// How far the vessel tastes from the model, as it stood after each sitting, and today.
    [[nodiscard]] ChartPanel learned(Dimension d) const {
        ChartPanel made = panel(("learned_" + std::string(name(d))).c_str(), QString(), 1);
        made.least = 2;
        auto band = series(tr("80 % range"), SeriesKind::band, Shape::none, Tone::predicted);
        band.spoken = false;
        auto offset = series(tr("learned"), SeriesKind::step, Shape::disc, Tone::tasted);
        for (const HistoryRow& row : history_.rows)
            if (row.offset[d]) {
                band.points.push_back(estimatePoint(row.on, *row.offset[d]));
                offset.points.push_back(plainPoint(row.on, row.offset[d]->mean));
            }
        // It fades and shifts between sittings: the last point is what Adjust tells of today.
        if (const auto& today = history_.offsetToday[d]; today && !band.points.empty()) {
            const Day to = std::max(band.points.back().on, today_);
            band.points.push_back(estimatePoint(to, *today));
            offset.points.push_back(plainPoint(to, today->mean));
        }
        made.series = {std::move(band), std::move(offset)};
        return made;
    }

    /// Each window holds until the next; the last to the end of the charts.
    [[nodiscard]] ChartSeries window(Dimension d) const {
        auto made = series(tr("target"), SeriesKind::band, Shape::none, Tone::predicted);
        made.spoken = false; // it seldom changes; the legend has it
        for (const facts::TargetFact& target : history_.targets) {
            const tasting::TargetWindow& w = target.target.windows[d];
            made.points.push_back(
                {target.on, w.wanted, std::max(0.0, w.wanted - w.band), std::min(10.0, w.wanted + w.band), {}});
        }
        if (!made.points.empty()) {
            ChartPoint end = made.points.back();
            end.on = std::max(end.on, whole_.to);
            made.points.push_back(end);
        }
        return made;
    }

    template <class Get> [[nodiscard]] std::vector<ChartPoint> pointsOf(UnitKind kind, const Get& get) const {
        const UnitScale scale(kind, units_);
        std::vector<ChartPoint> points;
        for (const HistoryRow& row : history_.rows)
            if (const auto value = get(row))
                points.push_back(plainPoint(row.on, scale.toShown(raw(*value))));
        return points;
    }
    template <class Get>
    [[nodiscard]] ChartPanel measured(const char* id, UnitKind kind, int decimals, double least, const Get& get) const {
        ChartPanel made = panel(id, kind, decimals);
        auto points = series(tr("measured"), SeriesKind::points, Shape::square, Tone::calm);
        points.joined = true;
        points.points = pointsOf(kind, get);
        made.least = least;
        made.series = {std::move(points)};
        return made;
    }
    template <class Get> [[nodiscard]] ChartPanel setting(const char* id, UnitKind kind, const Get& get) const {
        ChartPanel made = panel(id, kind, 1);
        made.least = 4;
        auto points = series(tr("refill"), SeriesKind::step, Shape::up, Tone::proposed);
        points.points = pointsOf(kind, get);
        made.series = {std::move(points)};
        return made;
    }

    [[nodiscard]] ChartSeries moved(bool out) const {
        auto made = series(out ? tr("drawn") : tr("filled"), SeriesKind::points, out ? Shape::down : Shape::up,
                           out ? Tone::tasted : Tone::proposed);
        made.spoken = false; // the entry says so itself
        const UnitScale scale(UnitKind::volume, units_);
        for (const HistoryRow& row : history_.rows) {
            const bool takes = row.is(EntryKind::drawOff) || row.kind == desk::HistoryKind::movedOut;
            const bool fills = row.is(EntryKind::refill) || row.is(EntryKind::topUp);
            if (!row.moved || !row.volume || !(out ? takes : fills))
                continue;
            ChartPoint point = plainPoint(row.on, scale.toShown(row.volume->l));
            point.told = scale.toShown(row.moved->l);
            made.points.push_back(point);
        }
        return made;
    }
    [[nodiscard]] ChartPanel volume() const {
        ChartPanel made = panel("volume", UnitKind::volume, units_.volume == DisplayUnits::Volume::hectolitre ? 3 : 1);
        auto level = series(tr("holds"), SeriesKind::line, Shape::none, Tone::calm);
        const UnitScale scale(UnitKind::volume, units_);
        for (const auto& corner : history_.sawtooth)
            level.points.push_back(plainPoint(corner.on, scale.toShown(corner.volume.l)));
        made.low = 0;
        made.series = {std::move(level), moved(true), moved(false)};
        return made;
    }

    /// Months while the beer is young, else years.
    [[nodiscard]] ChartPanel age() const {
        double oldest = 0;
        for (const auto& corner : history_.sawtooth)
            oldest = std::max(oldest, corner.meanAge.d);
        const bool years = oldest >= 3 * daysPerYear;
        ChartPanel made = panel("age", years ? tr("years") : tr("months"), 1);
        auto mean = series(tr("mean"), SeriesKind::line, Shape::none, Tone::due);
        for (const auto& corner : history_.sawtooth)
            mean.points.push_back(plainPoint(corner.on, corner.meanAge.d / (years ? daysPerYear : daysPerMonth)));
        made.low = 0;
        made.series = {std::move(mean)};
        return made;
    }

    const HistoryView& history_;
    const DisplayUnits& units_;
    TimeSpan whole_;
    Day today_;
};

ChartEvent::Row rowOf(EntryKind kind) {
    const vessel::Flow flow = vessel::traitsOf(kind).flow;
    if (flow == vessel::Flow::opens || flow == vessel::Flow::in)
        return ChartEvent::Row::in;
    return kind == EntryKind::drawOff ? ChartEvent::Row::out : ChartEvent::Row::look;
}

std::vector<ChartEvent> eventsOf(const HistoryView& history, const std::vector<desk::LedgerLine>& ledger,
                                 const DisplayUnits& units) {
    std::vector<ChartEvent> events;
    const auto look = [&](Day on, const char* key) {
        events.push_back({on, ChartEvent::Row::look, std::nullopt, false, own(key), own(key)});
    };
    for (const desk::LedgerLine& line : ledger) {
        const bool change = line.kind == EntryKind::drawOff || line.kind == EntryKind::refill;
        events.push_back({line.on, rowOf(line.kind), glyphOf(line.kind), change, entryWords(line, units),
                          inSentence(ui::wordOf(line.kind))});
    }
    for (const HistoryRow& row : history.rows)
        if (row.kind == desk::HistoryKind::sitting)
            look(row.on, row.learn ? "ui.history.tasted" : "ui.history.tasted_not_learned");
        else if (row.kind == desk::HistoryKind::forecast)
            look(row.on, "ui.history.promised_for");
    for (const facts::TargetFact& target : history.targets)
        look(target.on, "ui.history.target_set");
    std::stable_sort(events.begin(), events.end(),
                     [](const ChartEvent& a, const ChartEvent& b) { return a.on < b.on; });
    return events;
}

} // namespace

ChartData historyCharts(const facts::VesselName& vessel, const HistoryView& history,
                        const std::vector<desk::LedgerLine>& ledger, const DisplayUnits& units, Day today) {
    ChartData chartData;
    chartData.subject = qs(vessel);
    chartData.today = today;
    chartData.whole = wholeOf(history, today);
    chartData.panels = Panels(history, units, chartData.whole, today).all();
    chartData.events = eventsOf(history, ledger, units);
    return chartData;
}

TimeSpan lastYears(const ChartData& chartData, int years) {
    const Day from = chartData.today - std::chrono::days{std::lround(years * daysPerYear)};
    return {std::max(from, chartData.whole.from), chartData.whole.to};
}

TimeSpan thisCycle(const ChartData& chartData, const HistoryView& history) {
    Day from = chartData.whole.from;
    for (const HistoryRow& row : history.rows)
        if (row.is(EntryKind::refill) || row.is(EntryKind::opening))
            from = row.on - std::chrono::days{3};
    return {std::max(from, chartData.whole.from), chartData.whole.to};
}

QString promiseWords(const desk::PromiseOutcome& promise, Dimension dimension) {
    const QString told = tr("%1: promised %2 for %3")
                             .arg(nameOf(dimension), estimateWords(promise.told[dimension]), dayWords(promise.forDay));
    const auto& tasted = promise.tasted[dimension];
    if (!tasted)
        return tr("%1, not tasted yet").arg(told);
    const QString came = tr("%1, tasted %2").arg(told, estimateWords(*tasted));
    const auto& inside = promise.inside[dimension];
    if (!inside)
        return came;
    return *inside ? tr("%1, inside").arg(came) : tr("%1, outside").arg(came);
}

} // namespace staveline::ui
