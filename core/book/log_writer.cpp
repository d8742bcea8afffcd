// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/log_writer.h"

#include "book/digest.h"
#include "book/tally.h"

namespace staveline::book {

namespace {

Value idOrNull(std::int64_t id) {
    return id == 0 ? Value() : Value(id);
}

std::int64_t digestOf(const StoredEdit& edit) {
    RowDigest digest;
    digest.start("edit", edit.id);
    if (edit.parent != 0)
        digest.addInteger(0, edit.parent);
    digest.addText(1, edit.label.text);
    digest.addText(2, edit.label.kind);
    digest.addText(3, edit.label.subject);
    digest.addText(4, edit.atUtc);
    digest.addInteger(5, edit.schema);
    digest.addBlob(6, edit.changes);
    return digest.value();
}

std::int64_t digestOf(const StoredStep& step) {
    RowDigest digest;
    digest.start("step", step.id);
    if (step.edit != 0)
        digest.addInteger(0, step.edit);
    digest.addInteger(1, step.way);
    if (step.head != 0)
        digest.addInteger(2, step.head);
    digest.addText(3, step.atUtc);
    return digest.value();
}

void bindBlob(SQLite::Statement& statement, int index, const std::string& bytes) {
    statement.bind(index, bytes.data(), static_cast<int>(bytes.size()));
}

} // namespace

void LogWriter::append(StoredEdit& edit) {
    edit.id = connection_.number("SELECT max(id) FROM edit") + 1;
    const std::int64_t digest = digestOf(edit);
    auto insert = connection_.statement("INSERT INTO edit VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)");
    insert->bind(1, edit.id);
    bindValue(*insert, 2, idOrNull(edit.parent));
    insert->bind(3, edit.label.text);
    insert->bind(4, edit.label.kind);
    insert->bind(5, edit.label.subject);
    insert->bind(6, edit.atUtc);
    insert->bind(7, edit.schema);
    bindBlob(*insert, 8, edit.changes);
    insert->bind(9, digest);
    insert->exec();
    addToTally(connection_, "edit", {1, static_cast<std::uint64_t>(digest)});
}

void LogWriter::replace(const StoredEdit& edit) {
    auto query = connection_.statement("SELECT digest FROM edit WHERE id = ?");
    query->bind(1, edit.id);
    Tally change;
    if (query->executeStep())
        change.take(query->getColumn(0).getInt64());
    const std::int64_t digest = digestOf(edit);
    change.add(digest);
    auto update = connection_.statement("UPDATE edit SET text = ?, changes = ?, digest = ? WHERE id = ?");
    update->bind(1, edit.label.text);
    bindBlob(*update, 2, edit.changes);
    update->bind(3, digest);
    update->bind(4, edit.id);
    update->exec();
    addToTally(connection_, "edit", change);
}

void LogWriter::append(StoredStep& step) {
    step.id = connection_.number("SELECT max(id) FROM step") + 1;
    const std::int64_t digest = digestOf(step);
    auto insert = connection_.statement("INSERT INTO step VALUES (?, ?, ?, ?, ?, ?)");
    insert->bind(1, step.id);
    bindValue(*insert, 2, idOrNull(step.edit));
    insert->bind(3, step.way);
    bindValue(*insert, 4, idOrNull(step.head));
    insert->bind(5, step.atUtc);
    insert->bind(6, digest);
    insert->exec();
    addToTally(connection_, "step", {1, static_cast<std::uint64_t>(digest)});
}

} // namespace staveline::book
