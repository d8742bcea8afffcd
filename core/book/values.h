// SPDX-License-Identifier: GPL-3.0-or-later
// Values against their columns: the words for what the table's own CHECKs would only reject. Private to the book.
#pragma once

#include "book/book.h"

namespace staveline::book {

/// Refuses with a fault at "/<column>" what does not fit.
void requireValues(const TableSpec& table, const std::vector<Value>& values);
/// Minus zero is kept as the whole number 0: the session extension holds 0.0 and -0.0 for equal, so that undo would
/// lose the sign. Everything else is stored as it is.
[[nodiscard]] std::vector<Value> storedForm(std::vector<Value> values);
/// Refuses an unknown column, and a value of another type than it has.
void requireType(const TableSpec& table, const std::string& column, const Value& value);
[[nodiscard]] Fault noSuchRow(const std::string& table, RowId id);

/// The most bytes of a text in a book; longer ones are refused, and damage where a file holds them.
inline constexpr std::size_t longestText = 1U << 20U;

} // namespace staveline::book
