// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/tables.h"

#include "book/faults.h"

#include <algorithm>

namespace staveline::book {

namespace {

std::vector<std::string> columnsOf(Connection& connection, const std::string& table) {
    auto query = connection.statement("SELECT name FROM pragma_table_info(?) ORDER BY cid");
    query->bind(1, table);
    std::vector<std::string> names;
    while (query->executeStep())
        names.push_back(query->getColumn(0).getString());
    return names;
}

std::vector<std::string> tableNames(Connection& connection) {
    auto query = connection.statement("SELECT name FROM sqlite_schema WHERE type = 'table' "
                                      "AND name NOT LIKE 'sqlite_%' AND name NOT IN ('meta', 'tally')");
    std::vector<std::string> names;
    while (query->executeStep())
        names.push_back(query->getColumn(0).getString());
    return names;
}

const TableSpec* specOf(const Schema& schema, const std::string& name) {
    const auto found =
        std::find_if(schema.tables.begin(), schema.tables.end(), [&](const TableSpec& t) { return t.name == name; });
    return found == schema.tables.end() ? nullptr : &*found;
}

std::optional<std::size_t> placeOf(const std::vector<std::string>& columns, const std::string& name) {
    const auto found = std::find(columns.begin(), columns.end(), name);
    if (found == columns.end())
        return std::nullopt;
    return static_cast<std::size_t>(found - columns.begin());
}

/// Takes id and digest out; false when the table has none and so is not ours.
bool takeOwnColumns(std::vector<std::string>& columns) {
    const auto isOwn = [](const std::string& name) { return name == "id" || name == "digest"; };
    const std::size_t before = columns.size();
    columns.erase(std::remove_if(columns.begin(), columns.end(), isOwn), columns.end());
    return before - columns.size() == 2;
}

Table describe(std::string name, std::vector<std::string> columns, const TableSpec* spec) {
    Table table{std::move(name), spec, std::move(columns), {}, "SELECT \"id\", "};
    for (const std::string& column : table.columns)
        table.select += quoteName(column) + ", ";
    table.select += "\"digest\" FROM " + quoteName(table.name);
    if (spec != nullptr)
        for (const Column& column : spec->columns)
            table.places.push_back(placeOf(table.columns, column.name));
    return table;
}

bool fits(const Table& table, bool older) {
    for (std::size_t i = 0; i < table.places.size(); ++i)
        if (!table.places[i] && !(older && !table.spec->columns[i].required))
            return false;
    return true;
}

} // namespace

std::string Table::reference(const std::string& column) const {
    if (column == "id" || placeOf(columns, column))
        return quoteName(column);
    const auto known = [&](const Column& c) { return c.name == column; };
    if (spec == nullptr || std::none_of(spec->columns.begin(), spec->columns.end(), known))
        refuse("book.no_such_column", {{"table", name, {}}, {"column", column, {}}});
    return "NULL";
}

Tables Tables::read(Connection& connection, const Schema& schema) {
    Tables tables;
    tables.schema_ = &schema;
    for (const std::string& name : tableNames(connection)) {
        auto columns = columnsOf(connection, name);
        if (takeOwnColumns(columns))
            tables.all_.emplace(name, describe(name, std::move(columns), specOf(schema, name)));
    }
    if (!tables.all_.contains("edit") || !tables.all_.contains("step"))
        refuse("book.wrong_schema");
    return tables;
}

const Table* Tables::find(const std::string& name) const {
    const auto found = all_.find(name);
    if (found != all_.end() && found->second.spec != nullptr)
        return &found->second;
    if (specOf(*schema_, name) == nullptr)
        refuse("book.no_such_table", {{"table", name, {}}});
    return nullptr;
}

const Table& Tables::require(const std::string& name) const {
    const Table* table = find(name);
    if (table == nullptr)
        refuse("book.no_such_table", {{"table", name, {}}});
    return *table;
}

bool Tables::fit(const Schema& schema, bool older) const {
    return std::all_of(schema.tables.begin(), schema.tables.end(), [&](const TableSpec& spec) {
        const auto found = all_.find(spec.name);
        return found == all_.end() ? older : fits(found->second, older);
    });
}

bool isLogTable(const std::string& name) {
    return name == "edit" || name == "step";
}

} // namespace staveline::book
