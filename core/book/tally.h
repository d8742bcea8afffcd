// SPDX-License-Identifier: GPL-3.0-or-later
// What a table should hold: a row that is lost whole takes its own digest with it. Private to the book.
#pragma once

#include "book/connection.h"

namespace staveline::book {

struct Tally {
    std::int64_t rows = 0;
    std::uint64_t sum = 0; ///< of the digests, modulo 2^64
    bool operator==(const Tally&) const = default;

    void add(std::int64_t digest) {
        ++rows;
        sum += static_cast<std::uint64_t>(digest);
    }
    void take(std::int64_t digest) {
        --rows;
        sum -= static_cast<std::uint64_t>(digest);
    }
};
/// None: the tally of this table is gone.
[[nodiscard]] std::optional<Tally> storedTally(Connection& connection, const std::string& table);
/// In the transaction of the edit. A difference may be negative.
void addToTally(Connection& connection, const std::string& table, const Tally& difference);

} // namespace staveline::book
