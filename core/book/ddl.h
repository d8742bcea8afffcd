// SPDX-License-Identifier: GPL-3.0-or-later
// The SQL that makes the tables of a schema and the book's own. Private to the book.
#pragma once

#include "book/book.h"

namespace staveline::book {

/// `meta` repeats the header's numbers, `tally` counts each table's rows and sums their digests modulo 2^64, `edit` is
/// the tree of edits, `step` the log of what was done, undone and redone.
[[nodiscard]] const std::vector<std::string>& ownTables();

[[nodiscard]] std::string createTable(const TableSpec& table);
[[nodiscard]] std::string addColumn(const TableSpec& table, const Column& column);
/// CREATE INDEX IF NOT EXISTS for the unique sets, the indexes and every reference without one.
[[nodiscard]] std::vector<std::string> createIndexes(const TableSpec& table);
/// Unique sets are named indexes, never table constraints, so that they can be taken away for a moment.
[[nodiscard]] std::vector<std::string> dropUniqueIndexes(const TableSpec& table);

} // namespace staveline::book
