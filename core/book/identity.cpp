// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/identity.h"

#include "book/digest.h"
#include "book/faults.h"

#include <array>
#include <sqlite3.h>
#include <string_view>

namespace staveline::book {

namespace {

using HeaderBytes = std::array<unsigned char, 100>;

std::int64_t number(const HeaderBytes& bytes, std::size_t at) {
    std::uint32_t value = 0;
    for (std::size_t i = at; i < at + 4; ++i)
        value = value << 8 | bytes[i];
    return value;
}

/// Schema format 4, no auto-vacuum, UTF-8, no incremental vacuum, reserved bytes zero ("Database File Format",
/// sqlite.org, offsets 44, 52, 56, 64, 72). A flipped one would make the next write destroy pages.
bool asWritten(const HeaderBytes& bytes) {
    bool zero = true;
    for (std::size_t i = 72; i < 92; ++i)
        zero = zero && bytes[i] == 0;
    return zero && number(bytes, 44) == 4 && number(bytes, 52) == 0 && number(bytes, 56) == 1 && number(bytes, 64) == 0;
}

HeaderBytes headerBytes(const std::filesystem::path& path) {
    HeaderBytes bytes{};
    SQLite::Database database(path.string(), SQLITE_OPEN_READONLY);
    sqlite3_file* file = nullptr;
    sqlite3_file_control(database.getHandle(), "main", SQLITE_FCNTL_FILE_POINTER, &file);
    const int code = file->pMethods->xRead(file, bytes.data(), static_cast<int>(bytes.size()), 0);
    if (code != SQLITE_OK && code != SQLITE_IOERR_SHORT_READ)
        throw SQLite::Exception("header", code);
    return bytes;
}

std::optional<std::int64_t> meta(Connection& connection, const char* key) {
    auto query = connection.statement("SELECT value FROM meta WHERE key = ?");
    query->bind(1, key);
    if (!query->executeStep())
        return std::nullopt;
    return query->getColumn(0).getInt64();
}

} // namespace

FileHeader readHeader(const std::filesystem::path& file) {
    HeaderBytes bytes{};
    try {
        bytes = headerBytes(file);
    } catch (const SQLite::Exception& error) {
        refuse("book.cannot_read", {pathArgument(file), {"detail", error.what(), {}}});
    }
    constexpr std::string_view signature("SQLite format 3\0", 16);
    const std::string_view found(reinterpret_cast<const char*>(bytes.data()), signature.size());
    return {found == signature, number(bytes, 68), number(bytes, 60), asWritten(bytes)};
}

void requireOurs(const std::filesystem::path& file, const FileHeader& header, const Schema& schema) {
    if (!header.database)
        refuse("book.not_a_book", {pathArgument(file)});
    if (header.applicationId != applicationId)
        refuse("book.other_program", {pathArgument(file)});
    const std::int64_t major = header.userVersion / 100;
    if (major != schema.major)
        refuse(major > schema.major ? "book.newer_major" : "book.older_major",
               {pathArgument(file),
                {"version", versionText(header.userVersion), {}},
                {"known", versionText(userVersion(schema)), {}}});
}

std::int64_t schemaDigest(Connection& connection) {
    auto query = connection.statement("SELECT type, name, tbl_name, sql FROM sqlite_schema "
                                      "WHERE name NOT LIKE 'sqlite_%' ORDER BY type, name");
    RowDigest digest;
    digest.start("sqlite_schema", 0);
    while (query->executeStep())
        for (int i = 0; i < 4; ++i)
            digest.addText(static_cast<std::size_t>(i), query->getColumn(i).getString());
    return digest.value();
}

void compareIdentity(Connection& connection, Health& health) {
    if (meta(connection, "application_id") != connection.number("PRAGMA application_id") ||
        meta(connection, "user_version") != connection.number("PRAGMA user_version"))
        health.report({"meta", 0, say("book.damage.version")});
    // A book has neither triggers nor views: who put one there could make the digest agree too.
    if (meta(connection, "schema") != schemaDigest(connection) ||
        connection.number("SELECT count(*) FROM sqlite_schema WHERE type IN ('trigger', 'view')") != 0)
        health.report({"sqlite_schema", 0, say("book.damage.schema")});
}

} // namespace staveline::book
