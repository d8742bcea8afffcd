// SPDX-License-Identifier: GPL-3.0-or-later
// Rows out of the file, each checked against its digest. Private to the book.
#pragma once

#include "book/digest.h"
#include "book/health.h"
#include "book/tables.h"
#include "book/tally.h"

namespace staveline::book {

/// Compares the row a `Table::select` statement stands on with its digest.
class RowCheck {
public:
    explicit RowCheck(const Table& table) : table_(table) {}
    [[nodiscard]] bool sound(SQLite::Statement& at);
    /// Of all rows seen, from the digests they carry.
    [[nodiscard]] const Tally& tally() const { return tally_; }

private:
    [[nodiscard]] bool daysAreDays(SQLite::Statement& at) const;

    const Table& table_;
    RowDigest digest_;
    Tally tally_;
};

class Reader {
public:
    Reader(Connection& connection, const Tables& tables, Health& health)
        : connection_(connection), tables_(tables), health_(health) {}

    [[nodiscard]] std::vector<Row> all(const std::string& table);
    [[nodiscard]] std::vector<Row> where(const std::string& table, const std::string& column, const Value& value,
                                         const std::vector<std::string>& orderBy);
    [[nodiscard]] Row one(const std::string& table, RowId id);

private:
    Row read(const Table& table, RowCheck& check, SQLite::Statement& at);
    void compareTally(const Table& table, const Tally& seen);

    Connection& connection_;
    const Tables& tables_;
    Health& health_;
};

} // namespace staveline::book
