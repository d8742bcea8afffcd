// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/changeset.h"

#include "book/ddl.h"
#include "book/faults.h"

#include <memory>
#include <sqlite3.h>

namespace staveline::book {

namespace {

struct Free {
    void operator()(void* memory) const { sqlite3_free(memory); }
};

/// What a session call gave: its bytes, freed by the library's own hand.
class Output {
public:
    int* size() { return &size_; }
    void** bytes() { return &bytes_; }
    [[nodiscard]] std::string take(sqlite3* database, int code) {
        const std::unique_ptr<void, Free> owned(bytes_);
        requireOk(database, code);
        return size_ == 0 ? std::string() : std::string(static_cast<const char*>(bytes_), static_cast<size_t>(size_));
    }

private:
    int size_ = 0;
    void* bytes_ = nullptr;
};

int sizeOf(const std::string& changes) {
    return static_cast<int>(changes.size());
}
/// The library reads the bytes only; its signatures predate const.
void* bytesOf(const std::string& changes) {
    return const_cast<char*>(changes.data());
}

extern "C" int stopAtConflict(void* context, int conflict, sqlite3_changeset_iter*) {
    *static_cast<int*>(context) = conflict;
    return SQLITE_CHANGESET_ABORT;
}

struct Applied {
    int code = SQLITE_OK;
    int conflict = 0;
};

Applied tryToApply(Connection& connection, const std::string& changes) {
    Applied result;
    result.code = sqlite3changeset_apply(connection.handle(), sizeOf(changes), bytesOf(changes), nullptr,
                                         stopAtConflict, &result.conflict);
    return result;
}

void requireApplied(Connection& connection, const Applied& result) {
    if (result.code == SQLITE_ABORT)
        refuse("book.damaged", {{"detail", "changes", {}}});
    requireOk(connection.handle(), result.code);
}

/// Two rows that swapped a unique value cannot be put back one after the other under the index.
void applyWithoutUnique(Connection& connection, const Schema& schema, const std::string& changes) {
    for (const TableSpec& table : schema.tables)
        for (const std::string& statement : dropUniqueIndexes(table))
            connection.execute(statement);
    requireApplied(connection, tryToApply(connection, changes));
    for (const TableSpec& table : schema.tables)
        for (const std::string& statement : createIndexes(table))
            connection.execute(statement);
}

} // namespace

Recording::Recording(Connection& connection, const Tables& tables) : connection_(connection) {
    requireOk(connection.handle(), sqlite3session_create(connection.handle(), "main", &session_));
    for (const auto& [name, table] : tables.all())
        if (!isLogTable(name))
            attach(name.c_str());
    attach("tally");
}

Recording::~Recording() {
    sqlite3session_delete(session_);
}

void Recording::attach(const char* table) {
    const int code = sqlite3session_attach(session_, table);
    if (code == SQLITE_OK)
        return;
    sqlite3session_delete(session_);
    session_ = nullptr;
    requireOk(connection_.handle(), code);
}

std::string Recording::changes() const {
    Output output;
    const int code = sqlite3session_changeset(session_, output.size(), output.bytes());
    return output.take(connection_.handle(), code);
}

std::string inverted(const std::string& changes) {
    Output output;
    const int code = sqlite3changeset_invert(sizeOf(changes), bytesOf(changes), output.size(), output.bytes());
    return output.take(nullptr, code);
}

std::string joined(const std::string& first, const std::string& second) {
    Output output;
    const int code = sqlite3changeset_concat(sizeOf(first), bytesOf(first), sizeOf(second), bytesOf(second),
                                             output.size(), output.bytes());
    return output.take(nullptr, code);
}

std::vector<RowKey> touched(const std::string& changes) {
    sqlite3_changeset_iter* at = nullptr;
    requireOk(nullptr, sqlite3changeset_start(&at, sizeOf(changes), bytesOf(changes)));
    std::vector<RowKey> rows;
    while (sqlite3changeset_next(at) == SQLITE_ROW) {
        const char* table = nullptr;
        int columns = 0, operation = 0, indirect = 0;
        sqlite3changeset_op(at, &table, &columns, &operation, &indirect);
        const auto valueOf = operation == SQLITE_INSERT ? sqlite3changeset_new : sqlite3changeset_old;
        sqlite3_value* id = nullptr; // the first column of every table
        valueOf(at, 0, &id);
        if (id && std::string_view(table) != "tally")
            rows.push_back({table, sqlite3_value_int64(id)});
    }
    requireOk(nullptr, sqlite3changeset_finalize(at));
    return rows;
}

void apply(Connection& connection, const Schema& schema, const std::string& changes) {
    const Applied result = tryToApply(connection, changes);
    if (result.code == SQLITE_ABORT && result.conflict == SQLITE_CHANGESET_CONSTRAINT)
        applyWithoutUnique(connection, schema, changes);
    else
        requireApplied(connection, result);
}

} // namespace staveline::book
