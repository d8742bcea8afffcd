// SPDX-License-Identifier: GPL-3.0-or-later
// The columns of the history's table.
#pragma once

#include "desk/history.h"
#include "quantity/text.h"

#include <QString>

#include <functional>

namespace staveline::ui {

struct HistoryColumn {
    std::string key; ///< what it holds, whatever the language and the units: "volume_l"
    QString title;   ///< in up to two lines, with the unit in use
    std::function<QString(const desk::HistoryRow&)> shown; ///< empty words: nothing there
    bool numeric = true;
};
[[nodiscard]] std::vector<HistoryColumn> historyColumns(const DisplayUnits& units);

/// "Draw-off", "Sitting", "Promise"
[[nodiscard]] QString entryWord(const desk::HistoryRow& row);

} // namespace staveline::ui
