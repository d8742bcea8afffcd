// SPDX-License-Identifier: GPL-3.0-or-later
// Making and opening a book: everything that must be right before the first row is read.
#include "book/backup.h"
#include "book/file_access.h"
#include "book/file_book.h"
#include "book/identity.h"
#include "book/migration.h"

namespace staveline::book {

namespace fs = std::filesystem;

namespace {

Message versions(const char* key, const BookFile& book) {
    return say(key).with("version", versionText(book.version)).with("known", versionText(userVersion(book.schema)));
}

void readOnlyBecause(BookFile& book, Message why) {
    book.readOnly = true;
    book.notices.push_back(std::move(why));
}

void decideAccess(BookFile& book, OpenMode mode) {
    if (mode == OpenMode::readOnly)
        book.readOnly = true;
    else if (!canWrite(book.path))
        readOnlyBecause(book, say("book.notice.file_not_writable").with("path", book.path.string()));
    else if (const fs::path folder = folderOf(book.path); !canWrite(folder))
        readOnlyBecause(book, say("book.notice.folder_not_writable").with("path", folder.string()));
    if (book.version > userVersion(book.schema))
        readOnlyBecause(book, versions("book.notice.newer_minor", book));
}

/// A reader may not take back what a program left when it stopped in the middle of writing; who may write does so by
/// reading. Where nothing may be written, the reader's own fault says what to do. Whether there was something.
bool takeBackUnfinished(const fs::path& path) {
    std::error_code unknown;
    if (!fs::exists(path.string() + "-journal", unknown) || !canWrite(path) || !canWrite(folderOf(path)))
        return false;
    return Connection(path, OpenMode::readWrite).number("PRAGMA user_version") >= 0;
}

void connect(BookFile& book) {
    book.connection = std::make_unique<Connection>(book.path, book.readOnly ? OpenMode::readOnly : OpenMode::readWrite);
    book.version = book.connection->number("PRAGMA user_version"); // an unfinished write has been rolled back by now
}

void inspect(BookFile& book, const FileHeader& header) {
    const ReadScope oneState(*book.connection);
    book.tables = Tables::read(*book.connection, book.schema);
    if (!header.asWritten)
        book.health.report({"", 0, say("book.damage.header")});
    compareIdentity(*book.connection, book.health);
    EditLog log(*book.connection, book.tables, book.health);
    log.compareEnds();
    static_cast<void>(log.lastStep());
    if (book.health.sound() && !book.tables.fit(book.schema, book.version < userVersion(book.schema)))
        refuse("book.wrong_schema", {pathArgument(book.path)});
}

/// A book that cannot be upgraded safely can still be read.
void upgrade(BookFile& book, const Now& now) {
    const fs::path copy = backupNameFor(book);
    const auto done = guarded([&] {
        copyBook(book, copy);
        migrate(book, utcText(now()));
    });
    if (!done) {
        readOnlyBecause(book, versions("book.notice.not_migrated", book));
        book.notices.push_back(done.error().cause);
        return;
    }
    book.notices.push_back(versions("book.notice.migrated", book).with("backup", copy.string()));
    book.version = userVersion(book.schema);
}

std::unique_ptr<Book> openBook(const fs::path& given, const Schema& schema, OpenMode mode, Now now) {
    const fs::path path = existingFile(given);
    FileHeader header = readHeader(path);
    requireOurs(given, header, schema);
    if (mode == OpenMode::readOnly && takeBackUnfinished(path))
        header = readHeader(path);
    auto book = std::make_unique<BookFile>(path, schema);
    book->version = header.userVersion;
    decideAccess(*book, mode);
    connect(*book);
    inspect(*book, header);
    const bool older = book->version < userVersion(schema);
    if (older && !book->readOnly && book->health.sound())
        upgrade(*book, now);
    if (book->readOnly || !book->health.sound())
        book->connection->stopWriting();
    return std::make_unique<FileBook>(std::move(book), std::move(now));
}

/// Built beside the name it will have, so that a book is there whole or not at all.
void makeFile(const fs::path& path, const Schema& schema) {
    NewName name(path);
    PartFile part(path);
    {
        Connection connection(part.path(), OpenMode::readWrite);
        createTables(connection, schema);
    }
    part.publish();
    name.keep();
}

Now orMachineClock(Now now) {
    return now ? std::move(now) : Now([] { return std::chrono::system_clock::now(); });
}

} // namespace

Result<std::unique_ptr<Book>> Book::create(const fs::path& path, const Schema& schema, Now now) {
    return guarded([&] {
        makeFile(path, schema);
        return openBook(path, schema, OpenMode::readWrite, orMachineClock(std::move(now)));
    });
}

Result<std::unique_ptr<Book>> Book::open(const fs::path& path, const Schema& schema, OpenMode mode, Now now) {
    return guarded([&] { return openBook(path, schema, mode, orMachineClock(std::move(now))); });
}

} // namespace staveline::book
