// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/tally.h"

#include "book/faults.h"

namespace staveline::book {

std::optional<Tally> storedTally(Connection& connection, const std::string& table) {
    auto query = connection.statement("SELECT rows, sum FROM tally WHERE tbl = ?");
    query->bind(1, table);
    if (!query->executeStep())
        return std::nullopt;
    return Tally{query->getColumn(0).getInt64(), static_cast<std::uint64_t>(query->getColumn(1).getInt64())};
}

void addToTally(Connection& connection, const std::string& table, const Tally& difference) {
    const auto before = storedTally(connection, table);
    if (!before)
        refuse("book.damaged", {{"detail", "tally", {}}});
    auto update = connection.statement("UPDATE tally SET rows = ?, sum = ? WHERE tbl = ?");
    update->bind(1, before->rows + difference.rows);
    update->bind(2, static_cast<std::int64_t>(before->sum + difference.sum));
    update->bind(3, table);
    update->exec();
}

} // namespace staveline::book
