// SPDX-License-Identifier: GPL-3.0-or-later
// What says that a file is a book and of which version: the file header, and `meta`, which repeats it. Private to the
// book.
#pragma once

#include "book/connection.h"
#include "book/health.h"

namespace staveline::book {

inline constexpr std::int64_t applicationId = 0x5374766C;

[[nodiscard]] inline std::int64_t userVersion(const Schema& schema) {
    return schema.major * 100 + schema.minor;
}

struct FileHeader {
    bool database = false; ///< the library's own signature is there
    std::int64_t applicationId = 0;
    std::int64_t userVersion = 0;
    bool asWritten = false; ///< the fields that never change have the values this room writes
};
/// The first 100 bytes, read through the library: closing a descriptor of our own would drop its locks.
[[nodiscard]] FileHeader readHeader(const std::filesystem::path& file);
/// Refuses what is no book and what another major version wrote.
void requireOurs(const std::filesystem::path& file, const FileHeader& header, const Schema& schema);

/// CRC-64 of the text of all tables and indexes.
[[nodiscard]] std::int64_t schemaDigest(Connection& connection);
/// Header against `meta`, and the schema against its digest.
void compareIdentity(Connection& connection, Health& health);

} // namespace staveline::book
