// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/backup.h"

#include "book/faults.h"
#include "book/file_access.h"

#include <SQLiteCpp/Backup.h>
#include <fmt/core.h>
#include <sqlite3.h>

namespace staveline::book {

namespace fs = std::filesystem;

namespace {

void requireTarget(const fs::path& book, const fs::path& to) {
    std::error_code ignored;
    if (fs::is_directory(to, ignored))
        refuse("book.is_folder", {pathArgument(to)});
    if (fs::equivalent(book, to, ignored))
        refuse("book.backup_onto_itself", {pathArgument(to)});
    if (!fs::is_directory(folderOf(to), ignored))
        refuse("book.no_such_folder", {pathArgument(to), {"folder", folderOf(to).string(), {}}});
}

/// In one step, so that the copy is of one moment. The copy is synced whole when it is published.
void copyPages(Connection& source, const fs::path& to) {
    SQLite::Database target(to.string(), SQLITE_OPEN_READWRITE);
    target.exec("PRAGMA journal_mode=MEMORY; PRAGMA synchronous=OFF");
    SQLite::Backup backup(target, source.database());
    const int code = backup.executeStep(-1);
    if (code != SQLITE_DONE)
        throw SQLite::Exception(sqlite3_errstr(code), code);
}

void requireSound(const fs::path& copy, const Schema& schema) {
    const auto book = unwrap(Book::open(copy, schema, OpenMode::readOnly));
    const CheckReport report = unwrap(book->check());
    if (!report.sound())
        refuse("book.backup_unsound", {{"count", static_cast<std::int64_t>(report.damages.size()), {}}});
}

} // namespace

void copyBook(BookFile& book, const fs::path& to) {
    requireTarget(book.path, to);
    PartFile part(to);
    copyPages(*book.connection, part.path());
    requireSound(part.path(), book.schema);
    part.publish();
}

fs::path backupNameFor(const BookFile& book) {
    const std::string stem = fmt::format("{}.v{}", book.path.stem().string(), versionText(book.version));
    const std::string extension = book.path.extension().string();
    fs::path name = book.path.parent_path() / (stem + extension);
    for (int next = 2; fs::exists(name); ++next)
        name = book.path.parent_path() / fmt::format("{}-{}{}", stem, next, extension);
    return name;
}

} // namespace staveline::book
