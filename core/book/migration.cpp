// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/migration.h"

#include "book/ddl.h"
#include "book/faults.h"
#include "book/identity.h"
#include "book/log_writer.h"

#include <fmt/core.h>

namespace staveline::book {

namespace {

void putMeta(Connection& connection, const char* key, std::int64_t value) {
    auto put = connection.statement("INSERT OR REPLACE INTO meta VALUES (?, ?)");
    put->bind(1, key);
    put->bind(2, value);
    put->exec();
}

void putIdentity(Connection& connection, const Schema& schema) {
    connection.execute(
        fmt::format("PRAGMA application_id={}; PRAGMA user_version={}", applicationId, userVersion(schema)));
    putMeta(connection, "application_id", applicationId);
    putMeta(connection, "user_version", userVersion(schema));
    putMeta(connection, "schema", schemaDigest(connection));
}

void startTally(Connection& connection, const std::string& table) {
    auto put = connection.statement("INSERT INTO tally VALUES (?, 0, 0)");
    put->bind(1, table);
    put->exec();
}

void addTable(Connection& connection, const TableSpec& table) {
    connection.execute(createTable(table));
    startTally(connection, table.name);
}

void addMissingColumns(Connection& connection, const Table& table) {
    for (std::size_t i = 0; i < table.places.size(); ++i) {
        const Column& column = table.spec->columns[i];
        if (table.places[i])
            continue;
        if (column.required)
            refuse("book.wrong_schema");
        connection.execute(addColumn(*table.spec, column));
    }
}

void addMissing(Connection& connection, const Tables& tables, const TableSpec& spec) {
    if (const Table* table = tables.find(spec.name))
        addMissingColumns(connection, *table);
    else
        addTable(connection, spec);
}

void addIndexes(Connection& connection, const Schema& schema) {
    for (const TableSpec& table : schema.tables)
        for (const std::string& statement : createIndexes(table))
            connection.execute(statement);
}

/// Names the newest edit there is, undone or not: none up to it can be undone or redone from here on.
void layFloor(BookFile& book, const std::string& atUtc) {
    StoredStep floor;
    floor.edit = book.connection->number("SELECT max(id) FROM edit");
    floor.head = EditLog(*book.connection, book.tables, book.health).lastStep().head;
    floor.atUtc = atUtc;
    LogWriter(*book.connection).append(floor);
}

} // namespace

void createTables(Connection& connection, const Schema& schema) {
    SQLite::Transaction all(connection.database(), SQLite::TransactionBehavior::IMMEDIATE);
    for (const std::string& statement : ownTables())
        connection.execute(statement);
    for (const char* table : {"edit", "step"})
        startTally(connection, table);
    for (const TableSpec& table : schema.tables)
        addTable(connection, table);
    addIndexes(connection, schema);
    putIdentity(connection, schema);
    all.commit();
}

void migrate(BookFile& book, const std::string& atUtc) {
    Connection& connection = *book.connection;
    SQLite::Transaction all(connection.database(), SQLite::TransactionBehavior::IMMEDIATE);
    book.tables = Tables::read(connection, book.schema);
    if (connection.number("PRAGMA user_version") < userVersion(book.schema)) {
        for (const TableSpec& spec : book.schema.tables)
            addMissing(connection, book.tables, spec);
        addIndexes(connection, book.schema);
        layFloor(book, atUtc);
        putIdentity(connection, book.schema);
        book.tables = Tables::read(connection, book.schema);
    }
    all.commit();
}

} // namespace staveline::book
