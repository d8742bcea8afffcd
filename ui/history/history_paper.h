// SPDX-License-Identifier: GPL-3.0-or-later
// The history of a vessel as a paper: the charts as they stand, what came of the promises, and all of it by day.
#pragma once

#include "sheet/document.h"
#include "ui/history/history_model.h"

namespace staveline::ui {

struct HistoryPaperInput {
    facts::VesselName vessel;
    Day today{};
    QByteArray charts; ///< SVG
    QString chartsInWords;
    QString record; ///< how the promises came out
};
[[nodiscard]] sheet::Document historyPaper(const HistoryPaperInput& input, const HistoryModel& days,
                                           const PromiseModel& promises);

} // namespace staveline::ui
