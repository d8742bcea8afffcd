// SPDX-License-Identifier: GPL-3.0-or-later
// A vessel's history as charts, in the units in use.
#pragma once

#include "desk/desk.h"
#include "desk/history.h"
#include "desk/ledger.h"
#include "ui/chart/chart.h"
#include "ui/present/score_words.h"

namespace staveline::ui {

/// `ledger`: the vessel's own lines, each an event beside the sittings, promises and targets of `history`.
[[nodiscard]] ChartData historyCharts(const facts::VesselName& vessel, const desk::HistoryView& history,
                                      const std::vector<desk::LedgerLine>& ledger, const DisplayUnits& units,
                                      Day today);

/// A part of the data's time: all, the last years up to its end, or from the last refill on.
[[nodiscard]] TimeSpan lastYears(const ChartData& chartData, int years);
[[nodiscard]] TimeSpan thisCycle(const ChartData& chartData, const desk::HistoryView& history);

/// "Acidity: promised 5.1 ±0.8 for 20 May 2025, tasted 5.3 ±0.5, inside"
[[nodiscard]] QString promiseWords(const desk::PromiseOutcome& promise, Dimension dimension);

} // namespace staveline::ui
