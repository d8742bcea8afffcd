// SPDX-License-Identifier: GPL-3.0-or-later
#include "layers/data_rules.h"

#include "quantity/text.h"

#include <algorithm>
#include <array>
#include <fmt/core.h>

namespace staveline::layers {
namespace {

/// Columns that carry the unit of their row.
constexpr std::array<std::string_view, 6> inRowUnit = {"value", "centre", "dose", "low", "high", "step"};

bool ownUnit(const CsvTable& table, std::string_view column) {
    return hasOwnRanges(table) && std::find(inRowUnit.begin(), inRowUnit.end(), column) != inRowUnit.end();
}

bool outsideOwnRange(const CsvTable& table, std::size_t row, std::string_view column) {
    const auto value = table.number(row, column), low = table.number(row, "low"), high = table.number(row, "high");
    return value && low && high && !Range{*low, *high}.holds(*value);
}

} // namespace

bool isNumeric(const CsvTable& table, std::string_view column) {
    bool any = false;
    for (std::size_t row = 0; row < table.rows(); ++row) {
        if (table.text(row, column).empty())
            continue;
        if (!table.number(row, column))
            return false;
        any = true;
    }
    return any;
}

bool hasOwnRanges(const CsvTable& table) {
    return table.hasColumn("unit") && table.hasColumn("low") && table.hasColumn("high");
}

std::vector<std::string> rangeViolations(std::string_view name, const CsvTable& table, const ColumnSpecs& specs) {
    std::vector<std::string> found;
    for (const auto& column : table.header())
        if (isNumeric(table, column) && !specs.find(name, column) && !ownUnit(table, column))
            found.push_back(fmt::format("{}.csv: column {} has no row in columns.csv", name, column));
    if (const auto sound = specs.check(name, table); !sound)
        found.push_back(fmt::format("{}.csv{}: {} {}", name, sound.error().path, render(sound.error().cause),
                                    render(sound.error().remedy)));
    if (hasOwnRanges(table))
        for (std::size_t row = 0; row < table.rows(); ++row)
            for (const auto* column : {"value", "centre", "dose"})
                if (outsideOwnRange(table, row, column))
                    found.push_back(fmt::format("{}.csv/{}: {} is outside low and high", name, row, column));
    return found;
}

std::vector<std::string> sourceViolations(std::string_view name, const CsvTable& table,
                                          const std::set<std::string>& known) {
    if (!table.hasColumn("source"))
        return {fmt::format("{}.csv has no column source", name)};
    std::vector<std::string> found;
    for (std::size_t row = 0; row < table.rows(); ++row)
        if (const auto key = std::string(table.text(row, "source")); !known.contains(key))
            found.push_back(fmt::format("{}.csv/{}: source \"{}\" is not in sources.csv", name, row, key));
    return found;
}

std::vector<std::string> sourceTableViolations(const CsvTable& sources) {
    static const std::set<std::string_view> kinds = {"published", "memory", "computed", "proposal", "practice"};
    std::set<std::string_view> keys;
    std::vector<std::string> found;
    for (std::size_t row = 0; row < sources.rows(); ++row) {
        const auto key = sources.text(row, "key");
        if (key.empty() || !keys.insert(key).second)
            found.push_back(fmt::format("sources.csv/{}: key \"{}\" is empty or given twice", row, key));
        if (!kinds.contains(sources.text(row, "kind")))
            found.push_back(fmt::format("sources.csv/{}: no kind \"{}\"", row, sources.text(row, "kind")));
        if (sources.text(row, "text").empty())
            found.push_back(fmt::format("sources.csv/{}: \"{}\" has no text", row, key));
    }
    return found;
}

} // namespace staveline::layers
