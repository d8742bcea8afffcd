// SPDX-License-Identifier: GPL-3.0-or-later
// An open book file: what reading, writing, checking and copying share. Private to the book.
#pragma once

#include "book/health.h"
#include "book/tables.h"

namespace staveline::book {

struct BookFile {
    BookFile(std::filesystem::path file, const Schema& known) : path(std::move(file)), schema(known) {}
    BookFile(const BookFile&) = delete; // tables point into schema
    BookFile& operator=(const BookFile&) = delete;

    std::filesystem::path path;
    Schema schema; ///< what this program knows
    std::unique_ptr<Connection> connection;
    Tables tables; ///< what the file has
    std::int64_t version = 0;
    bool readOnly = false;
    std::vector<Message> notices;
    Health health;
};

} // namespace staveline::book
