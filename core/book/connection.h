// SPDX-License-Identifier: GPL-3.0-or-later
// One SQLite connection with the book's settings and its prepared statements. Private to the book.
#pragma once

#include "book/book.h"

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Statement.h>
#include <SQLiteCpp/Transaction.h>
#include <optional>
#include <unordered_map>

namespace staveline::book {

[[nodiscard]] std::string quoteName(const std::string& identifier);

class Connection {
public:
    /// A prepared statement on loan: reset when the loan ends.
    class Loan {
    public:
        explicit Loan(SQLite::Statement& statement) : statement_(statement) {}
        ~Loan() { statement_.tryReset(); }
        Loan(const Loan&) = delete;
        Loan& operator=(const Loan&) = delete;
        SQLite::Statement* operator->() { return &statement_; }
        SQLite::Statement& operator*() { return statement_; }

    private:
        SQLite::Statement& statement_;
    };

    Connection(const std::filesystem::path& file, OpenMode mode);

    [[nodiscard]] SQLite::Database& database() { return database_; }
    [[nodiscard]] sqlite3* handle() { return database_.getHandle(); }
    /// Prepared once and kept; a statement is lent to one user at a time.
    [[nodiscard]] Loan statement(const std::string& sql);
    void execute(const std::string& sql) { database_.exec(sql); }
    /// The single number a query gives.
    [[nodiscard]] std::int64_t number(const std::string& sql);
    [[nodiscard]] std::string text(const std::string& sql);
    [[nodiscard]] bool inTransaction();
    /// No more writing through this connection.
    void stopWriting() { execute("PRAGMA query_only=ON"); }

private:
    SQLite::Database database_;
    std::unordered_map<std::string, SQLite::Statement> statements_;
};

/// Several reads of one state. Inside a transaction that is already so.
class ReadScope {
public:
    explicit ReadScope(Connection& connection);

private:
    std::optional<SQLite::Transaction> transaction_;
};

void bindValue(SQLite::Statement& statement, int index, const Value& value);

} // namespace staveline::book
