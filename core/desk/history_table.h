// SPDX-License-Identifier: GPL-3.0-or-later
// The history as one table of numbers and words, for CSV and spreadsheets alike. Private to the desk.
#pragma once

#include "desk/history.h"

#include <variant>

namespace staveline::desk {

struct HistoryTable {
    using Cell = std::variant<std::monostate, double, std::string, Day>;
    std::vector<std::string> columns; ///< with units
    std::size_t freeText = 0;         ///< the first column of words that a brewer wrote
    std::vector<std::vector<Cell>> rows;
};
[[nodiscard]] HistoryTable tableOf(const std::vector<HistoryRow>& history);

} // namespace staveline::desk
