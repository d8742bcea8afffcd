// SPDX-License-Identifier: GPL-3.0-or-later
// Unit and valid range of the numeric columns of the data tables (resources/data/columns.csv).
#pragma once

#include "quantity/csv.h"
#include "quantity/parse.h"

#include <map>
#include <string>
#include <string_view>
#include <utility>

namespace staveline {

struct ColumnSpec {
    std::string unit; ///< as written in the table, e.g. "mg/kg"; "1" for a plain ratio
    Range range;
};

class ColumnSpecs {
public:
    /// Columns table, column, unit, low, high. A bad number, low above high or a column named twice is a fault.
    static Result<ColumnSpecs> parse(std::string_view csv);

    /// `table` without its ending, e.g. "grains"; null when the column is not listed.
    [[nodiscard]] const ColumnSpec* find(std::string_view table, std::string_view column) const;
    /// Fault at "/<row>/<column>" for the first listed cell that is no number or out of its range; empty cells pass.
    [[nodiscard]] Result<void> check(std::string_view table, const CsvTable& rows) const;

private:
    std::map<std::pair<std::string, std::string>, ColumnSpec, std::less<>> specs_;
};

/// Parsed once from resources/data/columns.csv.
[[nodiscard]] const ColumnSpecs& builtInColumns();

} // namespace staveline
