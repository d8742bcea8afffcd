// SPDX-License-Identifier: GPL-3.0-or-later
// Copies of a book that are checked before they get their name. Private to the book.
#pragma once

#include "book/book_file.h"

namespace staveline::book {

void copyBook(BookFile& book, const std::filesystem::path& to);
/// "plover.cellar" at version 1.0 -> "plover.v1.0.cellar", or the next free name after it.
[[nodiscard]] std::filesystem::path backupNameFor(const BookFile& book);

} // namespace staveline::book
