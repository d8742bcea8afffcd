// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/inside.h"

#include <algorithm>

namespace staveline {
namespace {

void addSittings(const VesselRecord& record, std::vector<HistoryRow>& rows) {
    for (const auto& stored : record.of<SittingFact>()) {
        const auto result = evaluate(stored.fact.sitting, builtInSheet());
        HistoryRow row;
        row.on = stored.fact.sitting.on;
        row.what = "sitting";
        const auto mean = [&](Dimension d) {
            const auto& reading = result.dimensions[d];
            return reading ? std::optional<double>(reading->mean) : std::nullopt;
        };
        row.acidity = mean(Dimension::acidity);
        row.funk = mean(Dimension::funk);
        row.body = mean(Dimension::body);
        rows.push_back(row);
    }
}

void addForecasts(const VesselRecord& record, std::vector<HistoryRow>& rows) {
    for (const auto& stored : record.of<ChoiceFact>()) {
        if (!stored.fact.forecast)
            continue;
        const Forecast& forecast = *stored.fact.forecast;
        HistoryRow row;
        row.on = forecast.nextDraw;
        row.what = "forecast";
        row.acidityForecast = forecast.mean[Dimension::acidity];
        row.funkForecast = forecast.mean[Dimension::funk];
        row.bodyForecast = forecast.mean[Dimension::body];
        rows.push_back(row);
    }
}

template <class F> const F* find(const VesselRecord& record, book::RowId id) {
    for (const auto& stored : record.of<F>())
        if (stored.id == id)
            return &stored.fact;
    return nullptr;
}

void addLedger(const VesselRecord& record, const SharedFacts& shared, Day today, std::vector<HistoryRow>& rows) {
    auto entries = ledgerEntries(record, shared);
    std::sort(entries.begin(), entries.end(), ledgerOrder);
    const Replay replayed = replay(entries, shapeOf(record.facts), today);
    for (std::size_t i = 0; i < entries.size(); ++i) {
        const LedgerEntry& e = entries[i];
        HistoryRow row;
        row.on = e.on;
        row.what = e.outOfThisVessel ? "moved_out" : std::string(tableOfEntry(e.kind));
        row.volume = replayed.after[i].volume;
        row.meanAge = replayed.after[i].meanAge;
        const book::RowId id = rowOf(e.id);
        if (const auto* reading = e.kind == EntryKind::reading ? find<ReadingFact>(record, id) : nullptr)
            row.measured = reading->measured;
        if (const auto* sample = e.kind == EntryKind::sample ? find<SampleFact>(record, id) : nullptr)
            row.measured = sample->measured;
        if (const auto* drawn = e.kind == EntryKind::drawOff ? find<DrawOffFact>(record, id) : nullptr)
            row.measured = drawn->measured;
        if (e.brew)
            if (const BrewFact* brew = shared.brew(shared.names.brewNames.at(*e.brew))) {
                row.refillBitterness = brew->recipe.bitterness;
                if (!brew->recipe.mash.empty())
                    row.mashTemperature = brew->recipe.mash.back().temperature;
            }
        rows.push_back(row);
    }
}

} // namespace

Result<std::vector<HistoryRow>> Desk::history(const VesselName& name) const {
    auto record = inside_->cellar->vessel(name);
    if (!record)
        return fail(record.error());
    std::vector<HistoryRow> rows;
    addLedger(**record, inside_->cellar->shared(), today(), rows);
    addSittings(**record, rows);
    addForecasts(**record, rows);
    std::stable_sort(rows.begin(), rows.end(), [](const auto& a, const auto& b) { return a.on < b.on; });
    return rows;
}

} // namespace staveline
