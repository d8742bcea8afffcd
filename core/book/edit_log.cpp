// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/edit_log.h"

#include "book/reader.h"

#include <fmt/chrono.h>

namespace staveline::book {

StoredStep EditLog::lastStep() {
    const Table& table = tables_.step();
    auto query = connection_.statement(table.select + " ORDER BY \"id\" DESC LIMIT 1");
    if (!query->executeStep())
        return {};
    StoredStep step{query->getColumn(0).getInt64(), query->getColumn(1).getInt64(), query->getColumn(2).getInt(),
                    query->getColumn(3).getInt64(), query->getColumn(4).getString()};
    if (!RowCheck(table).sound(*query))
        health_.reportRow(table.name, step.id);
    return step;
}

std::int64_t EditLog::floor() {
    return connection_.number("SELECT max(edit) FROM step WHERE way = 0");
}

StoredEdit EditLog::read(SQLite::Statement& at) {
    StoredEdit edit;
    edit.id = at.getColumn(0).getInt64();
    edit.parent = at.getColumn(1).getInt64();
    edit.label = {at.getColumn(2).getString(), at.getColumn(3).getString(), at.getColumn(4).getString(), ""};
    edit.atUtc = at.getColumn(5).getString();
    edit.schema = at.getColumn(6).getInt64();
    edit.changes = at.getColumn(7).getString();
    edit.sound = RowCheck(tables_.edit()).sound(at);
    if (!edit.sound)
        health_.reportRow("edit", edit.id);
    return edit;
}

std::optional<StoredEdit> EditLog::edit(std::int64_t id) {
    auto query = connection_.statement(tables_.edit().select + " WHERE \"id\" = ?");
    query->bind(1, id);
    if (!query->executeStep())
        return std::nullopt;
    return read(*query);
}

std::int64_t EditLog::newestChild(std::int64_t head, std::int64_t above) {
    auto query = connection_.statement("SELECT id FROM edit WHERE parent IS ? AND id > ? ORDER BY id DESC LIMIT 1");
    bindValue(*query, 1, head == 0 ? Value() : Value(head));
    query->bind(2, above);
    return query->executeStep() ? query->getColumn(0).getInt64() : 0;
}

std::vector<StoredEdit> EditLog::newest(int count) {
    auto query = connection_.statement(tables_.edit().select + " ORDER BY \"id\" DESC LIMIT ?");
    query->bind(1, count);
    std::vector<StoredEdit> edits;
    while (query->executeStep())
        edits.push_back(read(*query));
    return edits;
}

void EditLog::compareEnds() {
    for (const char* table : {"edit", "step"}) {
        const auto tally = storedTally(connection_, table);
        const auto newest = connection_.number(std::string("SELECT max(id) FROM ") + table);
        if (!tally || tally->rows != newest)
            health_.report({table, 0, say("book.damage.tally").with("table", std::string(table))});
    }
}

EditInfo infoOf(const StoredEdit& edit, bool applied) {
    return {edit.id, edit.label, edit.atUtc, applied, {}};
}

std::string utcText(std::chrono::system_clock::time_point at) {
    return fmt::format("{:%Y-%m-%dT%H:%M:%SZ}", fmt::gmtime(std::chrono::system_clock::to_time_t(at)));
}

} // namespace staveline::book
