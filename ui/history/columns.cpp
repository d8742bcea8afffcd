// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/history/columns.h"

#include "ui/history/story.h"
#include "ui/present/text.h"
#include "ui/present/unit_scale.h"

#include <QCoreApplication>

#include <fmt/core.h>

namespace staveline::ui {
namespace {

QString tr(const char* source) {
    return QCoreApplication::translate("History", source);
}

using Score = std::optional<Estimate>;
using Scored = PerDimension<Score>;

std::string plain(double value) {
    return fmt::format("{:.6g}", value);
}

/// A score and its error, two columns in files.
void addStoredScore(std::vector<HistoryColumn>& columns, Dimension d, Scored HistoryRow::*of,
                    const std::string& suffix) {
    const std::string key = std::string(name(d)) + suffix;
    const auto add = [&](const std::string& as, double (*number)(const Estimate&)) {
        columns.push_back({as, QString(), nullptr, [=](const HistoryRow& row) {
                               const Score& score = (row.*of)[d];
                               return score ? plain(number(*score)) : std::string();
                           }});
    };
    add(key, [](const Estimate& score) { return score.mean; });
    add(key + "_plus_minus_80", [](const Estimate& score) { return z80 * score.sd; });
}

/// On the screen what was tasted and what was promised share a column: the entry says which it is.
void addShownScore(std::vector<HistoryColumn>& columns, Dimension d) {
    columns.push_back({std::string(name(d)), nameOf(d),
                       [=](const HistoryRow& row) {
                           const Score& score = row.tasted[d] ? row.tasted[d] : row.forecast[d];
                           return score ? estimateWords(*score) : QString();
                       },
                       nullptr});
}

template <class Get>
void addQuantity(std::vector<HistoryColumn>& columns, const std::string& key, const QString& title, UnitKind kind,
                 const DisplayUnits& units, int decimals, const Get& get) {
    const UnitScale scale(kind, units);
    const QString unit = scale.suffix();
    columns.push_back({key, unit.isEmpty() ? title : tr("%1\n(%2)").arg(title, unit),
                       [=](const HistoryRow& row) {
                           const auto value = get(row);
                           return value ? QString::number(scale.toShown(raw(*value)), 'f', decimals) : QString();
                       },
                       [=](const HistoryRow& row) {
                           const auto value = get(row);
                           return value ? plain(raw(*value)) : std::string();
                       }});
}

void addMeasured(std::vector<HistoryColumn>& columns, const DisplayUnits& units) {
    const int gravity = units.gravity == DisplayUnits::Gravity::specific ? 4 : 1;
    addQuantity(columns, "gravity_sg", tr("Gravity"), UnitKind::gravity, units, gravity,
                [](const HistoryRow& row) { return row.measured.gravity; });
    addQuantity(columns, "ph", tr("pH"), UnitKind::ph, units, 2, [](const HistoryRow& row) { return row.measured.ph; });
    addQuantity(columns, "ta_g_l", tr("TA"), UnitKind::acidity, units, 1,
                [](const HistoryRow& row) { return row.measured.ta; });
    addQuantity(columns, "temperature_c", tr("Temperature"), UnitKind::temperature, units, 1,
                [](const HistoryRow& row) { return row.measured.temperature; });
    addQuantity(columns, "ibu", tr("Bitterness"), UnitKind::bitterness, units, 1,
                [](const HistoryRow& row) { return row.measured.bitterness; });
}

HistoryColumn wordColumn(std::string key, QString title, std::function<QString(const HistoryRow&)> shown,
                         std::function<std::string(const HistoryRow&)> stored) {
    return {std::move(key), std::move(title), std::move(shown), std::move(stored), false};
}

std::string quoted(const std::string& cell) {
    if (cell.find_first_of(",\"\r\n") == std::string::npos)
        return cell;
    std::string out = "\"";
    for (const char c : cell)
        out += c == '"' ? std::string("\"\"") : std::string(1, c);
    return out + '"';
}

} // namespace

QString entryWord(const HistoryRow& row) {
    const std::string own = "ui.history.what." + row.what;
    return ui::own(builtInTexts().has(own) ? own : "ui.entry." + row.what);
}

std::vector<HistoryColumn> historyColumns(const DisplayUnits& units) {
    std::vector<HistoryColumn> columns;
    columns.push_back(wordColumn(
        "on", tr("Date"), [](const HistoryRow& row) { return dayWords(row.on); },
        [](const HistoryRow& row) { return isoDay(row.on); }));
    columns.push_back(wordColumn("what", tr("Entry"), entryWord, [](const HistoryRow& row) { return row.what; }));
    for (Dimension d : allDimensions) {
        addShownScore(columns, d);
        addStoredScore(columns, d, &HistoryRow::tasted, "");
        addStoredScore(columns, d, &HistoryRow::forecast, "_forecast");
    }
    const int litres = units.volume == DisplayUnits::Volume::hectolitre ? 3 : 1;
    addQuantity(columns, "volume_l", tr("Level after"), UnitKind::volume, units, litres,
                [](const HistoryRow& row) { return row.volume; });
    addQuantity(columns, "moved_l", tr("Moved"), UnitKind::volume, units, litres,
                [](const HistoryRow& row) { return row.moved; });
    addQuantity(columns, "mean_age_d", tr("Mean age"), UnitKind::days, units, 0,
                [](const HistoryRow& row) { return row.meanAge; });
    addMeasured(columns, units);
    addQuantity(columns, "refill_ibu", tr("Refill"), UnitKind::bitterness, units, 1,
                [](const HistoryRow& row) { return row.refillBitterness; });
    addQuantity(columns, "mash_c", tr("Mash"), UnitKind::temperature, units, 1,
                [](const HistoryRow& row) { return row.mashTemperature; });
    const auto note = [](const HistoryRow& row) { return row.note; };
    columns.push_back(wordColumn(
        "note", tr("Note"), [](const HistoryRow& row) { return qs(row.note); }, note));
    return columns;
}

std::string historyCsv(const std::vector<HistoryRow>& rows) {
    auto columns = historyColumns({});
    std::erase_if(columns, [](const HistoryColumn& column) { return !column.stored; });
    std::string text;
    for (const HistoryColumn& column : columns)
        text += (text.empty() ? "" : ",") + column.key;
    text += "\r\n";
    for (const HistoryRow& row : rows) {
        std::string line;
        for (const HistoryColumn& column : columns)
            line += (&column == &columns.front() ? "" : ",") + quoted(column.stored(row));
        text += line + "\r\n";
    }
    return text;
}

} // namespace staveline::ui
