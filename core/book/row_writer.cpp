// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/row_writer.h"

#include "book/faults.h"
#include "book/reader.h"
#include "book/values.h"

#include <sqlite3.h>

namespace staveline::book {

namespace {

void addTo(RowDigest& digest, std::size_t place, const Value& value) {
    if (const auto* whole = std::get_if<std::int64_t>(&value))
        digest.addInteger(place, *whole);
    else if (const auto* real = std::get_if<double>(&value))
        digest.addReal(place, *real);
    else if (const auto* text = std::get_if<std::string>(&value))
        digest.addText(place, *text);
}

std::int64_t digestOf(const Table& table, RowId id, const std::vector<Value>& values) {
    RowDigest digest;
    digest.start(table.name, id);
    // In the file's order: a column that a minor version added in the middle stands at the end there.
    for (std::size_t place = 0; place < table.columns.size(); ++place)
        for (std::size_t i = 0; i < values.size(); ++i)
            if (table.places[i] == place)
                addTo(digest, place, values[i]);
    return digest.value();
}

std::string insertSql(const Table& table) {
    std::string names, marks;
    for (const Column& column : table.spec->columns) {
        names += quoteName(column.name) + ", ";
        marks += "?, ";
    }
    return "INSERT INTO " + quoteName(table.name) + " (" + names + "\"digest\", \"id\") VALUES (" + marks + "?, ?)";
}

std::string updateSql(const Table& table) {
    std::string sets;
    for (const Column& column : table.spec->columns)
        sets += quoteName(column.name) + " = ?, ";
    return "UPDATE " + quoteName(table.name) + " SET " + sets + "\"digest\" = ? WHERE \"id\" = ?";
}

RowId nextId(Connection& connection, const std::string& table) {
    return connection.number("SELECT max(id) FROM " + quoteName(table)) + 1;
}

bool exists(Connection& connection, const std::string& table, const Value& id) {
    auto query = connection.statement("SELECT 1 FROM " + quoteName(table) + " WHERE \"id\" = ?");
    bindValue(*query, 1, id);
    return query->executeStep();
}

Fault at(const std::string& column, const std::string& key) {
    Fault fault = faultNamed(FaultKind::input, key, {{"column", column, {}}});
    fault.path = "/" + column;
    return fault;
}

/// "UNIQUE constraint failed: vessel.name, vessel.kind" -> "name"
std::string firstColumn(const std::string& message) {
    const auto begin = message.find('.') + 1;
    return message.substr(begin, message.find(',', begin) - begin);
}

Fault brokenReference(Connection& connection, const TableSpec& spec, const std::vector<Value>& values) {
    for (std::size_t i = 0; i < values.size(); ++i) {
        const Column& column = spec.columns[i];
        if (!column.references.empty() && !std::holds_alternative<std::monostate>(values[i]) &&
            !exists(connection, column.references, values[i]))
            return at(column.name, "book.reference_missing");
    }
    return faultNamed(FaultKind::input, "book.value_refused");
}

/// Why the table itself turned the values down.
[[noreturn]] void refuseConstraint(Connection& connection, const Table& table, const std::vector<Value>& values,
                                   const SQLite::Exception& error) {
    if (error.getErrorCode() != SQLITE_CONSTRAINT)
        throw error;
    if (error.getExtendedErrorCode() == SQLITE_CONSTRAINT_UNIQUE)
        throw Refusal{at(firstColumn(error.what()), "book.not_unique")};
    throw Refusal{brokenReference(connection, *table.spec, values)};
}

} // namespace

template <class Work> auto RowWriter::attempt(Work&& work) {
    using Answer = Result<std::invoke_result_t<Work>>;
    if (failed_)
        return Answer(fail(*failed_));
    Answer answer = guarded(std::forward<Work>(work));
    if (!answer && ofStorage(answer.error().kind))
        failed_ = answer.error();
    return answer;
}

void RowWriter::put(const Table& table, const std::string& sql, RowId id, const std::vector<Value>& given) {
    const auto values = storedForm(given);
    const std::int64_t digest = digestOf(table, id, values);
    auto statement = connection_.statement(sql);
    int index = 0;
    for (const Value& value : values)
        bindValue(*statement, ++index, value);
    statement->bind(++index, digest);
    statement->bind(++index, id);
    try {
        statement->exec();
    } catch (const SQLite::Exception& error) {
        refuseConstraint(connection_, table, values, error);
    }
    changes_[table.name].add(digest);
}

/// Writing over a damaged row would hide the damage.
std::int64_t RowWriter::soundDigest(const Table& table, RowId id) {
    auto query = connection_.statement(table.select + " WHERE \"id\" = ?");
    query->bind(1, id);
    if (!query->executeStep())
        throw Refusal{noSuchRow(table.name, id)};
    if (!RowCheck(table).sound(*query)) {
        health_.reportRow(table.name, id);
        refuse("book.damaged", {{"detail", table.name, {}}});
    }
    return query->getColumn(table.digestIndex()).getInt64();
}

Result<RowId> RowWriter::insert(const std::string& name, const std::vector<Value>& values) {
    return attempt([&] {
        const Table& table = tables_.require(name);
        requireValues(*table.spec, values);
        const RowId id = nextId(connection_, name);
        put(table, insertSql(table), id, values);
        return id;
    });
}

Result<void> RowWriter::insertAs(const std::string& name, RowId id, const std::vector<Value>& values) {
    return attempt([&] {
        const Table& table = tables_.require(name);
        requireValues(*table.spec, values);
        if (id < 1 || exists(connection_, name, Value{id}))
            throw Refusal{at("id", "book.id_taken")};
        put(table, insertSql(table), id, values);
    });
}

Result<void> RowWriter::update(const std::string& name, RowId id, const std::vector<Value>& values) {
    return attempt([&] {
        const Table& table = tables_.require(name);
        requireValues(*table.spec, values);
        const std::int64_t before = soundDigest(table, id);
        put(table, updateSql(table), id, values);
        Tally& change = changes_[name];
        change.take(before);
    });
}

Result<void> RowWriter::remove(const std::string& name, RowId id) {
    return attempt([&] {
        const Table& table = tables_.require(name);
        const std::int64_t before = soundDigest(table, id);
        auto statement = connection_.statement("DELETE FROM " + quoteName(name) + " WHERE \"id\" = ?");
        statement->bind(1, id);
        try {
            statement->exec();
        } catch (const SQLite::Exception& error) {
            if (error.getErrorCode() != SQLITE_CONSTRAINT)
                throw;
            throw Refusal{faultNamed(FaultKind::input, "book.still_used", {{"table", name, {}}, {"row", id, {}}})};
        }
        changes_[name].take(before);
    });
}

void RowWriter::finish() {
    if (failed_)
        throw Refusal{*failed_};
    for (const auto& [table, difference] : changes_)
        addToTally(connection_, table, difference);
}

} // namespace staveline::book
