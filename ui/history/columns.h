// SPDX-License-Identifier: GPL-3.0-or-later
// The columns of the history, once for the table and for its file.
#pragma once

#include "desk/views.h"
#include "quantity/text.h"

#include <QString>

#include <functional>

namespace staveline::ui {

struct HistoryColumn {
    std::string key; ///< heading in files, with its stored unit: "volume_l"
    QString title;   ///< heading on the screen, in up to two lines, with the unit in use
    std::function<QString(const HistoryRow&)> shown;      ///< empty words: nothing there; null: in files only
    std::function<std::string(const HistoryRow&)> stored; ///< plain, in the stored unit; null: on the screen only
    bool numeric = true;
};
[[nodiscard]] std::vector<HistoryColumn> historyColumns(const DisplayUnits& units);

/// "Draw-off", "Sitting", "Promise"
[[nodiscard]] QString entryWord(const HistoryRow& row);

/// RFC 4180 with a heading; stored units, whatever the screen shows.
[[nodiscard]] std::string historyCsv(const std::vector<HistoryRow>& rows);

} // namespace staveline::ui
