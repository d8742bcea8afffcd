// SPDX-License-Identifier: GPL-3.0-or-later
// CSV of any origin as records, read by libcsv (RFC 4180; also LF, a byte order mark and another separator), and cells
// as a CSV file holds them.
#pragma once

#include "quantity/fault.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace staveline::facts {

struct CsvRecord {
    std::size_t line = 1; ///< of the file, where the record begins
    /// None: nothing stands between the separators; "" there is an empty text.
    std::vector<std::optional<std::string>> cells;
};

/// Empty lines are passed over. A stray or an open quote is a fault that names its line.
[[nodiscard]] Result<std::vector<CsvRecord>> readCsv(std::string_view text, char separator = ',');
/// As spreadsheets save it: the separator is the one that a first line "sep=;" says, else that of ',', ';' and tab
/// which the first line that says anything has most of. That line and records in which nothing stands are left out.
struct CsvSheet {
    char separator = ',';
    std::vector<CsvRecord> records;
};
[[nodiscard]] Result<CsvSheet> readSheet(std::string_view text);
/// Between quotes.
[[nodiscard]] std::string quotedCell(std::string_view text);
/// Quoted where it has to be; an empty text is "".
[[nodiscard]] std::string csvCell(std::string_view text);
/// One record with its end of line.
[[nodiscard]] std::string csvLine(const std::vector<std::optional<std::string>>& cells);

/// A text that no spreadsheet takes for a formula, such that withoutGuard gives the very same text back. The apostrophe
/// of a text that was never guarded ("'tis sour") stays.
[[nodiscard]] std::string guarded(std::string_view text);
[[nodiscard]] std::string withoutGuard(std::string_view cell);

} // namespace staveline::facts
