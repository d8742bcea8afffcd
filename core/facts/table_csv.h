// SPDX-License-Identifier: GPL-3.0-or-later
// The tables of a cellar book as CSV files, one a kind of fact, and back without loss. All of it follows from the
// schema that fields.h describes, so a new fact or field needs nothing here.
//
// A file has the row's id and then its columns, in their names with units. Numbers have '.' and all their digits, days
// are like 2026-03-02, yes and no are 1 and 0, vessels and brews stand by name, lists as JSON. Nothing between two
// commas is a field that was never given; "" is an empty text.
#pragma once

#include "facts/codec.h"

#include <map>

namespace staveline::facts {

struct TextFile {
    std::string name; ///< "reading.csv"
    std::string text;
};
using TableRows = std::map<std::string, std::vector<book::Row>, std::less<>>; ///< by table

/// Every table of the book, and "tables.csv", which names them beside the version of the book's tables.
[[nodiscard]] Result<std::vector<TextFile>> writeTables(const book::Book& book);
/// Rows with the ids they had, also of tables that a spreadsheet saved with another separator; files of other names are
/// passed over. Refused, at "/<file>/<line>/<column>": what writeTables would not have written. Tables and columns that
/// are missing are refused too, but those that an older export never had: tables that its "tables.csv" does not name,
/// columns that need no value.
[[nodiscard]] Result<TableRows> readTables(const std::vector<TextFile>& files);

} // namespace staveline::facts
