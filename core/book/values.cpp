// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/values.h"

#include "book/faults.h"
#include "quantity/day_limits.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

namespace staveline::book {

namespace {

[[noreturn]] void refuseValue(const Column& column, const std::string& key, std::vector<Argument> arguments = {}) {
    arguments.push_back({"column", column.name, {}});
    Fault fault = faultNamed(FaultKind::input, key, std::move(arguments));
    fault.path = "/" + column.name;
    throw Refusal{std::move(fault)};
}

bool hasType(const Value& value, ColumnType type) {
    switch (type) {
    case ColumnType::integer:
        return std::holds_alternative<std::int64_t>(value);
    case ColumnType::real:
        return std::holds_alternative<double>(value);
    case ColumnType::text:
        break;
    case ColumnType::day:
        return std::holds_alternative<std::string>(value) && storedDay(std::get<std::string>(value));
    }
    return std::holds_alternative<std::string>(value);
}

bool isNull(const Value& value) {
    return std::holds_alternative<std::monostate>(value);
}

std::string bound(const std::optional<double>& limit, const char* none) {
    return limit ? fmt::format("{}", *limit) : none;
}

void requireRange(const Column& column, double number) {
    if (!std::isfinite(number))
        refuseValue(column, "book.value_not_finite");
    if ((column.low && number < *column.low) || (column.high && number > *column.high))
        refuseValue(column, "book.value_range",
                    {{"value", fmt::format("{}", number), {}},
                     {"low", bound(column.low, "any"), {}},
                     {"high", bound(column.high, "any"), {}}});
}

void requireValue(const Column& column, const Value& value) {
    if (isNull(value)) {
        if (column.required)
            refuseValue(column, "book.value_missing");
        return;
    }
    if (!hasType(value, column.type))
        refuseValue(column, "book.value_type");
    if (const auto* text = std::get_if<std::string>(&value); text != nullptr && text->size() > longestText)
        refuseValue(column, "book.too_big");
    if (const auto* real = std::get_if<double>(&value))
        requireRange(column, *real);
    if (const auto* whole = std::get_if<std::int64_t>(&value))
        requireRange(column, static_cast<double>(*whole));
}

} // namespace

void requireValues(const TableSpec& table, const std::vector<Value>& values) {
    if (values.size() != table.columns.size())
        refuse("book.value_count", {{"table", table.name, {}}});
    for (std::size_t i = 0; i < values.size(); ++i)
        requireValue(table.columns[i], values[i]);
}

std::vector<Value> storedForm(std::vector<Value> values) {
    for (Value& value : values)
        if (const auto* real = std::get_if<double>(&value); real != nullptr && *real == 0 && std::signbit(*real))
            value = std::int64_t{0};
    return values;
}

void requireType(const TableSpec& table, const std::string& column, const Value& value) {
    const auto& all = table.columns;
    const auto found = std::find_if(all.begin(), all.end(), [&](const Column& each) { return each.name == column; });
    if (found != all.end() && !isNull(value) && !hasType(value, found->type))
        refuseValue(*found, "book.value_type");
    if (found == all.end() && column != "id")
        refuse("book.no_such_column", {{"table", table.name, {}}, {"column", column, {}}});
}

Fault noSuchRow(const std::string& table, RowId id) {
    return faultNamed(FaultKind::input, "book.no_such_row", {{"table", table, {}}, {"row", id, {}}});
}

} // namespace staveline::book
