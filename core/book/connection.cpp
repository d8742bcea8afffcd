// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/connection.h"

#include "book/faults.h"

#include <sqlite3.h>

namespace staveline::book {

namespace {

constexpr int busyTimeoutMs = 2000;

/// A book is used by one thread at a time, so a lock for every value read would only cost.
int flagsFor(OpenMode mode) {
    return SQLITE_OPEN_NOMUTEX | (mode == OpenMode::readOnly ? SQLITE_OPEN_READONLY : SQLITE_OPEN_READWRITE);
}

/// The file may come from anywhere: nothing in its schema is trusted, every cell is checked, nothing is mapped.
void distrustFile(Connection& connection) {
    sqlite3_db_config(connection.handle(), SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
    sqlite3_db_config(connection.handle(), SQLITE_DBCONFIG_ENABLE_TRIGGER, 0, nullptr);
    sqlite3_db_config(connection.handle(), SQLITE_DBCONFIG_ENABLE_VIEW, 0, nullptr);
    sqlite3_db_config(connection.handle(), SQLITE_DBCONFIG_DQS_DML, 0, nullptr);
    sqlite3_db_config(connection.handle(), SQLITE_DBCONFIG_DQS_DDL, 0, nullptr);
    connection.execute("PRAGMA trusted_schema=OFF; PRAGMA cell_size_check=ON; PRAGMA mmap_size=0;"
                       "PRAGMA foreign_keys=ON");
}

/// A rollback journal, so that a closed book is one file; EXTRA also syncs the folder after the journal is gone.
/// Nothing reaches the file before the commit: pages written early would lock out who reads for as long as a large file
/// takes.
void writeDurably(Connection& connection) {
    if (connection.text("PRAGMA journal_mode=DELETE") != "delete")
        refuse("book.locked");
    connection.execute("PRAGMA synchronous=EXTRA; PRAGMA cache_spill=OFF");
}

} // namespace

std::string quoteName(const std::string& identifier) {
    std::string text = "\"";
    for (const char c : identifier)
        text.append(c == '"' ? 2 : 1, c);
    return text + '"';
}

Connection::Connection(const std::filesystem::path& file, OpenMode mode)
    : database_(file.string(), flagsFor(mode), busyTimeoutMs) {
    distrustFile(*this);
    if (mode == OpenMode::readOnly)
        stopWriting();
    else
        writeDurably(*this);
}

Connection::Loan Connection::statement(const std::string& sql) {
    auto found = statements_.find(sql);
    if (found == statements_.end())
        found = statements_.emplace(sql, SQLite::Statement(database_, sql)).first;
    return Loan(found->second);
}

std::int64_t Connection::number(const std::string& sql) {
    Loan query = statement(sql);
    return query->executeStep() ? query->getColumn(0).getInt64() : 0;
}

std::string Connection::text(const std::string& sql) {
    Loan query = statement(sql);
    return query->executeStep() ? query->getColumn(0).getString() : std::string();
}

bool Connection::inTransaction() {
    return sqlite3_get_autocommit(handle()) == 0;
}

ReadScope::ReadScope(Connection& connection) {
    if (!connection.inTransaction())
        transaction_.emplace(connection.database(), SQLite::TransactionBehavior::DEFERRED);
}

void bindValue(SQLite::Statement& statement, int index, const Value& value) {
    if (const auto* whole = std::get_if<std::int64_t>(&value))
        statement.bind(index, *whole);
    else if (const auto* real = std::get_if<double>(&value))
        statement.bind(index, *real);
    else if (const auto* text = std::get_if<std::string>(&value))
        statement.bind(index, *text);
    else
        statement.bind(index);
}

} // namespace staveline::book
