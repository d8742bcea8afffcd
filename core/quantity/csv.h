// SPDX-License-Identifier: GPL-3.0-or-later
// RFC 4180 tables with a header row, as resources/data uses them.
#pragma once

#include "quantity/fault.h"

#include <string>
#include <string_view>
#include <vector>

namespace staveline {

/// JSON pointer (RFC 6901) to a cell: "/<row>/<column>", rows counted from 0 below the header.
[[nodiscard]] std::string cellPath(std::size_t row, std::string_view column);

/// The text as a cell that no spreadsheet takes for a formula: with an apostrophe in front where one would begin.
/// Numbers stay as they are. Not quoted yet.
[[nodiscard]] std::string withoutFormula(std::string_view text);

class CsvTable {
public:
    /// Quotes, doubled quotes, CRLF or LF. A row with a wrong number of cells is a fault at "/<row>".
    static Result<CsvTable> parse(std::string_view text);

    [[nodiscard]] std::size_t rows() const { return cells_.size(); }
    [[nodiscard]] bool hasColumn(std::string_view name) const;
    /// Empty for a missing column.
    [[nodiscard]] std::string_view text(std::size_t row, std::string_view column) const;
    /// Fault at "/<row>/<column>" when not a number; `whenEmpty` for an empty cell.
    [[nodiscard]] Result<double> number(std::size_t row, std::string_view column) const;
    [[nodiscard]] Result<double> number(std::size_t row, std::string_view column, double whenEmpty) const;
    [[nodiscard]] const std::vector<std::string>& header() const { return header_; }

private:
    std::vector<std::string> header_;
    std::vector<std::vector<std::string>> cells_;
};

} // namespace staveline
