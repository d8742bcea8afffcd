// SPDX-License-Identifier: GPL-3.0-or-later
// What every table of resources/data must have: units, ranges and sources.
#pragma once

#include "quantity/columns.h"
#include "quantity/csv.h"

#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace staveline::layers {

/// At least one cell, and every cell that is not empty, is a number.
[[nodiscard]] bool isNumeric(const CsvTable& table, std::string_view column);
/// The table gives unit, low and high in each row, so its values need no row in columns.csv.
[[nodiscard]] bool hasOwnRanges(const CsvTable& table);

/// Numeric columns without a row in columns.csv, cells out of range, rows whose value is outside its own limits.
[[nodiscard]] std::vector<std::string> rangeViolations(std::string_view name, const CsvTable& table,
                                                       const ColumnSpecs& specs);
/// Rows without a source, or with one that is not known.
[[nodiscard]] std::vector<std::string> sourceViolations(std::string_view name, const CsvTable& table,
                                                        const std::set<std::string>& known);
/// Keys given twice, kinds that do not exist, empty texts.
[[nodiscard]] std::vector<std::string> sourceTableViolations(const CsvTable& sources);

} // namespace staveline::layers
