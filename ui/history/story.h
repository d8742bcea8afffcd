// SPDX-License-Identifier: GPL-3.0-or-later
// A vessel's history as charts, in the units in use.
#pragma once

#include "desk/desk.h"
#include "desk/history.h"
#include "desk/ledger.h"
#include "ui/chart/chart.h"
#include "ui/present/score_words.h"

namespace staveline::ui {

/// `ledger` words the entries; lines of another vessel or none are as good as any.
[[nodiscard]] ChartStory historyStory(const VesselName& vessel, const HistoryView& history,
                                      const std::vector<LedgerLine>& ledger, const DisplayUnits& units, Day today);

/// A part of the story's time: all, the last years up to its end, or from the last refill on.
[[nodiscard]] TimeSpan lastYears(const ChartStory& story, int years);
[[nodiscard]] TimeSpan thisCycle(const ChartStory& story, const HistoryView& history);

/// "Acidity: promised 5.1 ±0.8 for 20 May 2025, tasted 5.3 ±0.5, inside"
[[nodiscard]] QString promiseWords(const PromiseKept& promise, Dimension dimension);

} // namespace staveline::ui
