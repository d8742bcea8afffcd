// SPDX-License-Identifier: GPL-3.0-or-later
#include "vessel/materials.h"

#include "quantity/csv.h"
#include "resources/resources.h"

#include <algorithm>
#include <array>
#include <fmt/core.h>

namespace staveline::vessel {
namespace {

struct KnownQuantity {
    std::string_view name, unit;
    double most;
};
constexpr std::array known{KnownQuantity{"evaporation", "% of capacity/year", 100},
                           KnownQuantity{"oxygen", "mg/(L year)", 10000},
                           KnownQuantity{"culture held back", "share", 1}};

tl::unexpected<Fault> badRow(std::size_t row, std::string_view column, const char* key) {
    return badInput(fmt::format("/{}/{}", row, column), say(key).with("row", static_cast<std::int64_t>(row)),
                    say("vessel.material_fix"));
}

Result<MaterialRow> readRow(const CsvTable& table, std::size_t row) {
    const auto value = table.number(row, "value"), low = table.number(row, "low"), high = table.number(row, "high");
    for (const auto& number : {value, low, high})
        if (!number)
            return fail(number.error());
    const auto text = [&](std::string_view column) { return std::string(table.text(row, column)); };
    MaterialRow out{text("material"), text("quantity"), *value,      *low, *high,
                    text("unit"),     text("source"),   text("note")};
    const auto quantity = std::find_if(known.begin(), known.end(), [&](auto& k) { return k.name == out.quantity; });
    if (out.material.empty())
        return badRow(row, "material", "vessel.row_no_name");
    if (quantity == known.end())
        return badRow(row, "quantity", "vessel.row_quantity");
    if (out.unit != quantity->unit)
        return badRow(row, "unit", "vessel.row_unit");
    if (!(0 <= out.low && out.low <= out.value && out.value <= out.high && out.high <= quantity->most))
        return badRow(row, "value", "vessel.row_range");
    if (out.source.empty())
        return badRow(row, "source", "vessel.row_source");
    return out;
}

/// The row of `quantity` for `material`, or none.
const MaterialRow* rowOf(const std::vector<MaterialRow>& rows, std::string_view material, std::string_view quantity) {
    const auto row = std::find_if(rows.begin(), rows.end(), [&](const MaterialRow& r) {
        return r.material == material && r.quantity == quantity;
    });
    return row == rows.end() ? nullptr : &*row;
}

std::string joined(const std::vector<std::string>& names) {
    std::string text;
    for (const auto& name : names)
        text += (text.empty() ? "" : ", ") + name;
    return text;
}

} // namespace

Result<std::vector<MaterialRow>> parseMaterials(std::string_view csv) {
    const auto table = CsvTable::parse(csv);
    if (!table)
        return fail(table.error());
    std::vector<MaterialRow> rows;
    for (std::size_t row = 0; row < table->rows(); ++row) {
        auto one = readRow(*table, row);
        if (!one)
            return fail(one.error());
        if (rowOf(rows, one->material, one->quantity))
            return badRow(row, "quantity", "vessel.row_twice");
        rows.push_back(std::move(*one));
    }
    for (std::size_t row = 0; row < rows.size(); ++row)
        for (const auto& quantity : known)
            if (!rowOf(rows, rows[row].material, quantity.name))
                return badRow(row, "quantity", "vessel.row_missing");
    return rows;
}

const std::vector<MaterialRow>& builtInMaterials() {
    static const auto rows = parseMaterials(resources::find("data/materials.csv")).value_or(std::vector<MaterialRow>{});
    return rows;
}

std::vector<std::string> materialNames() {
    std::vector<std::string> names;
    for (const auto& row : builtInMaterials())
        if (std::find(names.begin(), names.end(), row.material) == names.end())
            names.push_back(row.material);
    return names;
}

Result<MaterialFacts> materialFacts(std::string_view name, std::string_view path) {
    const auto& rows = builtInMaterials();
    const auto* evaporation = rowOf(rows, name, "evaporation");
    const auto* oxygen = rowOf(rows, name, "oxygen");
    const auto* held = rowOf(rows, name, "culture held back");
    if (!evaporation || !oxygen || !held)
        return badInput(std::string(path), say("vessel.material_unknown").with("material", std::string(name)),
                        say("vessel.material_choose").with("known", joined(materialNames())));
    return MaterialFacts{{evaporation->value / 100}, oxygen->value, {held->value}};
}

} // namespace staveline::vessel
