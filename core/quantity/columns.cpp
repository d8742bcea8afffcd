// SPDX-License-Identifier: GPL-3.0-or-later
#include "quantity/columns.h"

#include "resources/resources.h"

namespace staveline {
namespace {

Result<Range> rowRange(const CsvTable& csv, std::size_t row) {
    const auto low = csv.number(row, "low");
    if (!low)
        return fail(low.error());
    const auto high = csv.number(row, "high");
    if (!high)
        return fail(high.error());
    if (*low > *high)
        return badInput(cellPath(row, "low"), say("quantity.low_above_high"), say("quantity.csv_remedy"));
    return Range{*low, *high};
}

/// The first cell of `column` that is no number or lies outside `range`.
Result<void> checkColumn(const CsvTable& rows, std::string_view column, Range range) {
    for (std::size_t row = 0; row < rows.rows(); ++row) {
        const auto cell = rows.text(row, column);
        if (cell.empty())
            continue;
        const auto value = rows.number(row, column);
        if (!value)
            return fail(value.error());
        if (!range.holds(*value))
            return fail(outOfRange(cell, *value, range, cellPath(row, column)));
    }
    return {};
}

} // namespace

Result<ColumnSpecs> ColumnSpecs::parse(std::string_view csv) {
    const auto rows = CsvTable::parse(csv);
    if (!rows)
        return fail(rows.error());
    ColumnSpecs all;
    for (std::size_t row = 0; row < rows->rows(); ++row) {
        auto range = rowRange(*rows, row);
        if (!range)
            return fail(range.error());
        const auto [at, isNew] =
            all.specs_.try_emplace({std::string(rows->text(row, "table")), std::string(rows->text(row, "column"))},
                                   ColumnSpec{std::string(rows->text(row, "unit")), *range});
        if (!isNew)
            return badInput(cellPath(row, "column"), say("quantity.csv_row_twice").with("name", at->first.second),
                            say("quantity.csv_remedy"));
    }
    return all;
}

const ColumnSpec* ColumnSpecs::find(std::string_view table, std::string_view column) const {
    const auto found = specs_.find(std::pair(std::string(table), std::string(column)));
    return found == specs_.end() ? nullptr : &found->second;
}

Result<void> ColumnSpecs::check(std::string_view table, const CsvTable& rows) const {
    for (const auto& column : rows.header())
        if (const auto* spec = find(table, column))
            if (auto sound = checkColumn(rows, column, spec->range); !sound)
                return sound;
    return {};
}

const ColumnSpecs& builtInColumns() {
    static const ColumnSpecs columns = ColumnSpecs::parse(resources::find("data/columns.csv")).value();
    return columns;
}

} // namespace staveline
