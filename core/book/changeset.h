// SPDX-License-Identifier: GPL-3.0-or-later
// What an edit did to the rows, exact to the bit, and its inverse: changesets of the session extension. Private to
// the book.
#pragma once

#include "book/tables.h"

struct sqlite3_session;

namespace staveline::book {

/// Records what happens to the schema's tables and to the tally while it lives. The tally is recorded too: so undo and
/// redo bring it back with the rows, and a tally that is not what the edit left stops them.
class Recording {
public:
    Recording(Connection& connection, const Tables& tables);
    ~Recording();
    Recording(const Recording&) = delete;
    Recording& operator=(const Recording&) = delete;

    /// Empty when the rows are as they were.
    [[nodiscard]] std::string changes() const;

private:
    void attach(const char* table);

    Connection& connection_;
    sqlite3_session* session_ = nullptr;
};

[[nodiscard]] std::string inverted(const std::string& changes);
/// `first`, then `second`, as one; empty when they cancel out.
[[nodiscard]] std::string joined(const std::string& first, const std::string& second);
/// The rows of the schema's tables that the changes put in, alter or take out.
[[nodiscard]] std::vector<RowKey> touched(const std::string& changes);
/// Inside a transaction. Refuses as damage when the rows are not what the changes start from.
void apply(Connection& connection, const Schema& schema, const std::string& changes);

} // namespace staveline::book
