// SPDX-License-Identifier: GPL-3.0-or-later
// Tables in CSV: the built-in kind, and those of an exported cellar. An input is a table's name, a line end, the table.
#include "facts/csv_records.h"
#include "facts/table_csv.h"
#include "fuzz/hold.h"
#include "quantity/csv.h"
#include "quantity/text.h"

#include <cmath>

using namespace staveline;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const auto text = fuzz::textOf(data, size);
    const auto end = std::min(text.find('\n'), text.size());
    const std::string name(text.substr(0, end)), body(text.substr(std::min(end + 1, text.size())));
    if (const auto table = CsvTable::parse(body))
        for (std::size_t row = 0; row < table->rows(); ++row)
            for (const auto& column : table->header())
                if (const auto number = table->number(row, column); number)
                    fuzz::hold(std::isfinite(*number), "a number that was read is one");
    const auto records = facts::readCsv(body);
    if (records)
        for (const auto& record : *records)
            fuzz::hold(facts::readCsv(facts::csvLine(record.cells)).has_value(), "a line that was written can be read");
    if (const auto rows = facts::readTables({{name, body}}); !rows)
        fuzz::hold(!render(rows.error().cause).empty(), "a fault has a cause");
    return 0;
}
