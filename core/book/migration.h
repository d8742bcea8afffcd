// SPDX-License-Identifier: GPL-3.0-or-later
// Makes the tables of a new book and adds to an older one what a minor version brings. Private to the book.
#pragma once

#include "book/book_file.h"

namespace staveline::book {

/// In a new, empty file.
void createTables(Connection& connection, const Schema& schema);
/// Adds missing tables and nullable columns in one transaction and lays an undo floor: the changes stored before have
/// fewer columns than the tables now. Does nothing when another program was first.
void migrate(BookFile& book, const std::string& atUtc);

} // namespace staveline::book
