// SPDX-License-Identifier: GPL-3.0-or-later
// Everything that can be checked in a book: structure, references, digests, tallies, header. Private to the book.
#pragma once

#include "book/book_file.h"

namespace staveline::book {

[[nodiscard]] CheckReport checkAll(BookFile& book);

} // namespace staveline::book
