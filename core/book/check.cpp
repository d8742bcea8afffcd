// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/check.h"

#include "book/edit_log.h"
#include "book/faults.h"
#include "book/identity.h"
#include "book/reader.h"

namespace staveline::book {

namespace {

Damage structureDamage(const std::string& table, const std::string& detail) {
    return {table, 0, say("book.damage.structure").with("detail", detail)};
}

/// A part that cannot even be read is a finding like any other.
template <class Work> void survey(Health& found, const std::string& table, Work&& work) {
    try {
        work();
    } catch (const SQLite::Exception& error) {
        if (faultOf(error).kind != FaultKind::damaged)
            throw;
        found.report(structureDamage(table, error.what()));
    }
}

/// integrity_check, not quick_check: the quick one misses what an index has lost.
void checkStructure(Connection& connection, Health& found) {
    auto query = connection.statement("PRAGMA integrity_check");
    while (query->executeStep())
        if (const std::string line = query->getColumn(0).getString(); line != "ok")
            found.report(structureDamage("", line));
}

void checkReferences(Connection& connection, Health& found) {
    auto query = connection.statement("PRAGMA foreign_key_check");
    while (query->executeStep()) {
        const std::string table = query->getColumn(0).getString();
        const RowId row = query->getColumn(1).getInt64();
        found.report({table, row, say("book.damage.reference").with("table", table).with("row", row)});
    }
}

std::int64_t checkRows(Connection& connection, const Table& table, Health& found) {
    auto query = connection.statement(table.select);
    RowCheck check(table);
    while (query->executeStep())
        if (!check.sound(*query))
            found.reportRow(table.name, query->getColumn(0).getInt64());
    if (storedTally(connection, table.name) != check.tally())
        found.report({table.name, 0, say("book.damage.tally").with("table", table.name)});
    return check.tally().rows;
}

} // namespace

CheckReport checkAll(BookFile& book) {
    Connection& connection = *book.connection;
    const ReadScope oneState(connection);
    Health found;
    CheckReport report;
    survey(found, "", [&] { checkStructure(connection, found); });
    survey(found, "", [&] { checkReferences(connection, found); });
    survey(found, "", [&] { compareIdentity(connection, found); });
    survey(found, "", [&] { EditLog(connection, book.tables, found).compareEnds(); });
    for (const auto& [name, table] : book.tables.all())
        survey(found, name, [&, &each = table] { report.rowsChecked += checkRows(connection, each, found); });
    report.damages = found.damages();
    for (const Damage& damage : report.damages)
        book.health.report(damage);
    return report;
}

} // namespace staveline::book
