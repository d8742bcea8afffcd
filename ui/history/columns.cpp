// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/history/columns.h"

#include "ui/history/history_charts.h"
#include "ui/present/text.h"
#include "ui/present/unit_scale.h"

#include <QCoreApplication>

namespace staveline::ui {

using desk::HistoryRow;

namespace {

QString tr(const char* source) {
    return QCoreApplication::translate("History", source);
}

/// On the screen what was tasted and what was promised share a column: the entry says which it is.
void addScore(std::vector<HistoryColumn>& columns, Dimension d) {
    columns.push_back({std::string(name(d)), nameOf(d), [=](const HistoryRow& row) {
                           const std::optional<tasting::Estimate>& score =
                               row.tasted[d] ? row.tasted[d] : row.forecast[d];
                           return score ? estimateWords(*score) : QString();
                       }});
}

template <class Get>
void addQuantity(std::vector<HistoryColumn>& columns, const std::string& key, const QString& title, UnitKind kind,
                 const DisplayUnits& units, int decimals, const Get& get) {
    const UnitScale scale(kind, units);
    const QString unit = scale.suffix();
    columns.push_back({key, unit.isEmpty() ? title : tr("%1\n(%2)").arg(title, unit), [=](const HistoryRow& row) {
                           const auto value = get(row);
                           return value ? numberWords(scale.toShown(raw(*value)), decimals) : QString();
                       }});
}

void addMeasured(std::vector<HistoryColumn>& columns, const DisplayUnits& units) {
    const int gravity = units.gravity == DisplayUnits::Gravity::specific ? 4 : 1;
    addQuantity(columns, "gravity_sg", tr("Gravity"), UnitKind::gravity, units, gravity,
                [](const HistoryRow& row) { return row.measured.gravity; });
    addQuantity(columns, "ph", tr("pH"), UnitKind::ph, units, 2, [](const HistoryRow& row) { return row.measured.ph; });
    addQuantity(columns, "ta_g_l", tr("TA"), UnitKind::concentration, units, 1,
                [](const HistoryRow& row) { return row.measured.ta; });
    addQuantity(columns, "temperature_c", tr("Temperature"), UnitKind::temperature, units, 1,
                [](const HistoryRow& row) { return row.measured.temperature; });
    addQuantity(columns, "ibu", tr("Bitterness"), UnitKind::bitterness, units, 1,
                [](const HistoryRow& row) { return row.measured.bitterness; });
}

/// What was noted, and of a sitting why it is not learned from.
QString noteWords(const HistoryRow& row) {
    QStringList parts;
    for (const std::string& words : {row.note, row.learnReason})
        if (!words.empty())
            parts << qs(words);
    return parts.join(QStringLiteral("; "));
}

HistoryColumn wordColumn(std::string key, QString title, std::function<QString(const HistoryRow&)> shown) {
    return {std::move(key), std::move(title), std::move(shown), false};
}

} // namespace

QString entryWord(const HistoryRow& row) {
    if (row.happened)
        return ui::own("ui.word." + std::string(facts::wordOf(*row.happened)));
    if (!row.learn)
        return ui::own("ui.history.what.sitting_not_learned");
    const std::string own = "ui.history.what." + std::string(wordOf(row));
    return ui::own(builtInTexts().has(own) ? own : "ui.entry." + std::string(wordOf(row)));
}

std::vector<HistoryColumn> historyColumns(const DisplayUnits& units) {
    std::vector<HistoryColumn> columns;
    columns.push_back(wordColumn("on", tr("Date"), [](const HistoryRow& row) { return dayWords(row.on); }));
    columns.push_back(wordColumn("what", tr("Entry"), entryWord));
    for (Dimension d : allDimensions)
        addScore(columns, d);
    const int litres = units.volume == DisplayUnits::Volume::hectolitre ? 3 : 1;
    addQuantity(columns, "volume_l", tr("Level after"), UnitKind::volume, units, litres,
                [](const HistoryRow& row) { return row.volume; });
    addQuantity(columns, "moved_l", tr("Moved"), UnitKind::volume, units, litres,
                [](const HistoryRow& row) { return row.moved; });
    columns.push_back({"mean_age_d", tr("Mean age"),
                       [](const HistoryRow& row) { return row.meanAge ? spanWords(*row.meanAge) : QString(); }});
    addMeasured(columns, units);
    addQuantity(columns, "refill_ibu", tr("Refill"), UnitKind::bitterness, units, 1,
                [](const HistoryRow& row) { return row.refillBitterness; });
    addQuantity(columns, "mash_c", tr("Mash"), UnitKind::temperature, units, 1,
                [](const HistoryRow& row) { return row.mashTemperature; });
    columns.push_back(wordColumn("note", tr("Note"), noteWords));
    return columns;
}

} // namespace staveline::ui
