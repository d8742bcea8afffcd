// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/reader.h"

#include "book/faults.h"
#include "book/values.h"
#include "quantity/day_limits.h"

#include <sqlite3.h>

namespace staveline::book {

namespace {

std::string_view bytesOf(const SQLite::Column& column) {
    const auto* bytes = static_cast<const char*>(column.getBlob());
    return {bytes, static_cast<std::size_t>(bytes == nullptr ? 0 : column.getBytes())};
}

/// Nothing writes such a text, and what it would cost to read and show has no bound.
bool tooLong(const SQLite::Column& column) {
    return column.isText() && static_cast<std::size_t>(column.getBytes()) > longestText;
}

void addTo(RowDigest& digest, std::size_t place, const SQLite::Column& column) {
    switch (column.getType()) {
    case SQLITE_INTEGER:
        return digest.addInteger(place, column.getInt64());
    case SQLITE_FLOAT:
        return digest.addReal(place, column.getDouble());
    case SQLITE_TEXT:
        return digest.addText(place, bytesOf(column));
    case SQLITE_BLOB:
        return digest.addBlob(place, bytesOf(column));
    default:
        return;
    }
}

/// See storedForm().
double realOf(const SQLite::Column& column) {
    const bool minusZero = column.isInteger() && column.getInt64() == 0;
    return minusZero ? -0.0 : column.getDouble();
}

/// A damaged row may hold another type than its column: what is handed out always has the column's own.
Value valueOf(const Column& spec, const SQLite::Column& column) {
    if (column.isNull() && !spec.required)
        return {};
    switch (spec.type) {
    case ColumnType::integer:
        return static_cast<std::int64_t>(column.getInt64());
    case ColumnType::real:
        return realOf(column);
    case ColumnType::text:
    case ColumnType::day:
        break;
    }
    return tooLong(column) ? std::string() : std::string(bytesOf(column));
}

Row rowOf(const Table& table, SQLite::Statement& at) {
    Row row{at.getColumn(0).getInt64(), {}};
    row.values.reserve(table.places.size());
    for (std::size_t i = 0; i < table.places.size(); ++i)
        row.values.push_back(table.places[i]
                                 ? valueOf(table.spec->columns[i], at.getColumn(static_cast<int>(*table.places[i]) + 1))
                                 : Value());
    return row;
}

std::string whereQuery(const Table& table, const std::string& column, const std::vector<std::string>& orderBy) {
    std::string sql = table.select + " WHERE " + table.reference(column) + " IS ? ORDER BY ";
    for (const std::string& key : orderBy)
        sql += table.reference(key) + ", ";
    return sql + "\"id\"";
}

} // namespace

bool RowCheck::sound(SQLite::Statement& at) {
    digest_.start(table_.name, at.getColumn(0).getInt64());
    bool bounded = true;
    for (std::size_t place = 0; place < table_.columns.size(); ++place) {
        const SQLite::Column column = at.getColumn(static_cast<int>(place) + 1);
        bounded = bounded && !tooLong(column);
        addTo(digest_, place, column);
    }
    const std::int64_t stored = at.getColumn(table_.digestIndex()).getInt64();
    tally_.add(stored);
    return bounded && digest_.value() == stored && daysAreDays(at);
}

/// What another program wrote with the right digest is no day for that, and would be read as some other day.
bool RowCheck::daysAreDays(SQLite::Statement& at) const {
    for (std::size_t i = 0; table_.spec != nullptr && i < table_.places.size(); ++i)
        if (table_.spec->columns[i].type == ColumnType::day && table_.places[i]) {
            const SQLite::Column column = at.getColumn(static_cast<int>(*table_.places[i]) + 1);
            if (!column.isNull() && !storedDay(bytesOf(column)))
                return false;
        }
    return true;
}

Row Reader::read(const Table& table, RowCheck& check, SQLite::Statement& at) {
    Row row = rowOf(table, at);
    if (!check.sound(at))
        health_.reportRow(table.name, row.id);
    return row;
}

std::vector<Row> Reader::all(const std::string& name) {
    std::vector<Row> rows;
    const Table* table = tables_.find(name);
    if (table == nullptr)
        return rows;
    const bool settled = !connection_.inTransaction(); // a commit brings the tally up to date at its end
    const ReadScope oneState(connection_);
    auto query = connection_.statement(table->select + " ORDER BY \"id\"");
    RowCheck check(*table);
    while (query->executeStep())
        rows.push_back(read(*table, check, *query));
    if (settled)
        compareTally(*table, check.tally());
    return rows;
}

void Reader::compareTally(const Table& table, const Tally& seen) {
    if (storedTally(connection_, table.name) != seen)
        health_.report({table.name, 0, say("book.damage.tally").with("table", table.name)});
}

std::vector<Row> Reader::where(const std::string& name, const std::string& column, const Value& value,
                               const std::vector<std::string>& orderBy) {
    std::vector<Row> rows;
    const Table* table = tables_.find(name);
    if (table == nullptr)
        return rows;
    requireType(*table->spec, column, value);
    const ReadScope oneState(connection_);
    auto query = connection_.statement(whereQuery(*table, column, orderBy));
    bindValue(*query, 1, value);
    RowCheck check(*table);
    while (query->executeStep())
        rows.push_back(read(*table, check, *query));
    return rows;
}

Row Reader::one(const std::string& name, RowId id) {
    if (const Table* table = tables_.find(name)) {
        auto query = connection_.statement(table->select + " WHERE \"id\" = ?");
        query->bind(1, id);
        RowCheck check(*table);
        if (query->executeStep())
            return read(*table, check, *query);
    }
    throw Refusal{noSuchRow(name, id)};
}

} // namespace staveline::book
