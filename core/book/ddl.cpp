// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/ddl.h"

#include "book/connection.h"

#include <algorithm>
#include <fmt/core.h>

namespace staveline::book {

namespace {

/// REAL columns drop the sign of zero; ANY keeps what it is given.
const char* storedType(ColumnType type) {
    switch (type) {
    case ColumnType::integer:
        return "INTEGER";
    case ColumnType::real:
        return "ANY";
    case ColumnType::text:
    case ColumnType::day:
        break;
    }
    return "TEXT";
}

std::vector<std::string> conditions(const Column& column) {
    const std::string name = quoteName(column.name);
    std::vector<std::string> all;
    if (column.type == ColumnType::real)
        all.push_back("(typeof(" + name + ") = 'real' OR " + name + " = 0)"); // see storedForm()
    if (column.low)
        all.push_back(fmt::format("{} >= {}", name, *column.low));
    if (column.high)
        all.push_back(fmt::format("{} <= {}", name, *column.high));
    return all;
}

std::string check(const Column& column) {
    std::string text;
    for (const std::string& condition : conditions(column))
        text += (text.empty() ? "" : " AND ") + condition;
    if (text.empty())
        return text;
    return " CHECK (" + quoteName(column.name) + " IS NULL OR (" + text + "))";
}

std::string definition(const Column& column) {
    std::string text = quoteName(column.name) + " " + storedType(column.type);
    if (column.required)
        text += " NOT NULL";
    if (!column.references.empty())
        text += " REFERENCES " + quoteName(column.references) + "(\"id\") ON DELETE RESTRICT";
    return text + check(column);
}

std::string joined(const std::vector<std::string>& names, const char* between, const char* around) {
    std::string text;
    for (const std::string& name : names)
        text += (text.empty() ? "" : between) + (around + name + around);
    return text;
}

std::string indexName(const char* prefix, const TableSpec& table, const std::vector<std::string>& columns) {
    return quoteName(fmt::format("{}_{}_{}", prefix, table.name, joined(columns, "_", "")));
}

std::string createIndex(bool unique, const TableSpec& table, const std::vector<std::string>& columns) {
    return fmt::format("CREATE {}INDEX IF NOT EXISTS {} ON {}({})", unique ? "UNIQUE " : "",
                       indexName(unique ? "uq" : "ix", table, columns), quoteName(table.name),
                       joined(columns, ", ", "\""));
}

/// Without an index of its own each removal of a referenced row would scan this table.
bool needsIndex(const TableSpec& table, const Column& column) {
    const auto leads = [&](const std::vector<std::string>& columns) { return columns.front() == column.name; };
    return !column.references.empty() && std::none_of(table.indexes.begin(), table.indexes.end(), leads) &&
           std::none_of(table.unique.begin(), table.unique.end(), leads);
}

} // namespace

const std::vector<std::string>& ownTables() {
    static const std::vector<std::string> statements = {
        R"(CREATE TABLE "meta" ("key" TEXT NOT NULL PRIMARY KEY, "value" INTEGER NOT NULL) STRICT, WITHOUT ROWID)",
        R"(CREATE TABLE "tally" ("tbl" TEXT NOT NULL PRIMARY KEY, "rows" INTEGER NOT NULL CHECK ("rows" >= 0),
  "sum" INTEGER NOT NULL) STRICT, WITHOUT ROWID)",
        R"(CREATE TABLE "edit" ("id" INTEGER PRIMARY KEY, "parent" INTEGER REFERENCES "edit"("id"),
  "text" TEXT NOT NULL, "kind" TEXT NOT NULL, "subject" TEXT NOT NULL, "at_utc" TEXT NOT NULL,
  "schema" INTEGER NOT NULL, "changes" BLOB NOT NULL, "digest" INTEGER NOT NULL) STRICT)",
        R"(CREATE INDEX "ix_edit_parent" ON "edit"("parent"))",
        R"(CREATE TABLE "step" ("id" INTEGER PRIMARY KEY, "edit" INTEGER REFERENCES "edit"("id"),
  "way" INTEGER NOT NULL CHECK ("way" IN (1, -1, 0)), "head" INTEGER REFERENCES "edit"("id"),
  "at_utc" TEXT NOT NULL, "digest" INTEGER NOT NULL) STRICT)",
        R"(CREATE INDEX "ix_step_floor" ON "step"("edit") WHERE "way" = 0)"};
    return statements;
}

std::string createTable(const TableSpec& table) {
    std::string text = "CREATE TABLE " + quoteName(table.name) + " (\"id\" INTEGER PRIMARY KEY";
    for (const Column& column : table.columns)
        text += ", " + definition(column);
    return text + ", \"digest\" INTEGER NOT NULL) STRICT";
}

std::string addColumn(const TableSpec& table, const Column& column) {
    return "ALTER TABLE " + quoteName(table.name) + " ADD COLUMN " + definition(column);
}

std::vector<std::string> createIndexes(const TableSpec& table) {
    std::vector<std::string> statements;
    for (const auto& columns : table.unique)
        statements.push_back(createIndex(true, table, columns));
    for (const auto& columns : table.indexes)
        statements.push_back(createIndex(false, table, columns));
    for (const Column& column : table.columns)
        if (needsIndex(table, column))
            statements.push_back(createIndex(false, table, {column.name}));
    return statements;
}

std::vector<std::string> dropUniqueIndexes(const TableSpec& table) {
    std::vector<std::string> statements;
    for (const auto& columns : table.unique)
        statements.push_back("DROP INDEX IF EXISTS " + indexName("uq", table, columns));
    return statements;
}

} // namespace staveline::book
