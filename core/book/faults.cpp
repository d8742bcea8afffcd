// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/faults.h"

#include <fmt/core.h>
#include <sqlite3.h>

namespace staveline::book {

namespace {

/// What went wrong in the library, by its primary result code; the texts say what to do.
std::string storageKey(int primary) {
    switch (primary) {
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
        return "book.locked";
    case SQLITE_FULL:
        return "book.disk_full";
    case SQLITE_IOERR:
        return "book.disk_error";
    case SQLITE_READONLY:
    case SQLITE_PERM:
        return "book.not_writable";
    case SQLITE_CANTOPEN:
        return "book.folder_not_writable";
    case SQLITE_CORRUPT:
    case SQLITE_NOTADB:
        return "book.damaged";
    case SQLITE_NOMEM:
        return "book.no_memory";
    case SQLITE_TOOBIG:
        return "book.too_big";
    default:
        return "book.failed";
    }
}

std::string keyOf(int extended) {
    if (extended == SQLITE_READONLY_DBMOVED)
        return "book.file_moved";
    if (extended == SQLITE_READONLY_ROLLBACK || extended == SQLITE_READONLY_RECOVERY)
        return "book.unfinished";
    return storageKey(extended & 0xff);
}

/// All the book refuses is the file's fault; two kinds want an answer of their own.
FaultKind kindOf(std::string_view key) {
    if (key == "book.damaged")
        return FaultKind::damaged;
    if (key == "book.changed_elsewhere")
        return FaultKind::changedElsewhere;
    return FaultKind::storage;
}

} // namespace

Fault faultNamed(FaultKind kind, const std::string& key, std::vector<Argument> arguments) {
    Message cause(key, arguments);
    return {kind, "", std::move(cause), Message(remedyOf(key), std::move(arguments))};
}

void refuse(const std::string& key, std::vector<Argument> arguments) {
    throw Refusal{faultNamed(kindOf(key), key, std::move(arguments))};
}

Argument pathArgument(const std::filesystem::path& path) {
    return {"path", path.string(), {}};
}

std::string versionText(std::int64_t userVersion) {
    return fmt::format("{}.{}", userVersion / 100, userVersion % 100);
}

Fault faultOf(const SQLite::Exception& error) {
    // The extended code is that of the connection's last error: none without one, another's after a failed clean-up.
    const int plain = error.getErrorCode(), extended = error.getExtendedErrorCode();
    const std::string key = keyOf(extended >= 0 && (extended & 0xff) == (plain & 0xff) ? extended : plain);
    return faultNamed(kindOf(key), key, {{"detail", error.what(), {}}});
}

Fault faultOf(const std::filesystem::filesystem_error& error) {
    return faultNamed(FaultKind::storage, "book.disk_error", {{"detail", error.code().message(), {}}});
}

void requireOk(sqlite3* database, int code) {
    if (code != SQLITE_OK)
        throw SQLite::Exception(database, code);
}

} // namespace staveline::book
