// SPDX-License-Identifier: GPL-3.0-or-later
// Opening what is no book, what is not ours, what is newer, what cannot be written: words, and the file untouched.
// STAVELINE_SPOILED sets how many random files.
#include "book/helpers.h"
#include "book/process.h"

#include <sys/stat.h>
#include <unistd.h>

namespace staveline::book {

namespace {

std::string openKey(const fs::path& path, OpenMode mode = OpenMode::readWrite) {
    const auto book = Book::open(path, sample::schema(), mode);
    if (!book)
        CHECK(ofStorage(book.error().kind));
    return keyOf(book);
}

/// Refused, the file as it was and nothing beside it.
std::string refusedUntouched(const Scratch& scratch, const fs::path& path) {
    const auto before = bytesOf(path);
    auto key = openKey(path);
    CHECK(bytesOf(path) == before);
    CHECK(std::distance(fs::directory_iterator(scratch.path()), fs::directory_iterator()) == 1);
    return key;
}

bool hasNotice(const Book& book, const std::string& key) {
    const auto notices = book.notices();
    return std::any_of(notices.begin(), notices.end(), [&](const Message& notice) {
        words(notice);
        return notice.key == key;
    });
}

} // namespace

TEST_CASE("What is not there or not a file is told apart") {
    const Scratch scratch;
    CHECK(openKey(scratch / "none.cellar") == "book.no_such_file");
    CHECK(openKey(scratch / "no/such/folder.cellar") == "book.no_such_file");
    CHECK(openKey(scratch.path()) == "book.is_folder");
    CHECK(openKey("/dev/null") == "book.not_a_file");
    const auto pipe = scratch / "pipe";
    REQUIRE(::mkfifo(pipe.c_str(), 0600) == 0);
    CHECK(openKey(pipe) == "book.not_a_file"); // and does not wait for a writer
}

TEST_CASE("Files that are no book are told apart and left as they are") {
    std::mt19937_64 random(3);
    std::string noise(5000, ' ');
    for (char& c : noise)
        c = static_cast<char>(random());
    const std::vector<std::pair<std::string, std::string>> files = {
        {"", "book.empty_file"},
        {"x", "book.not_a_book"},
        {"{\"kind\": \"vessel\"}", "book.not_a_book"},
        {noise, "book.not_a_book"},
        {std::string("SQLite format 3\0", 16), "book.other_program"},
        {std::string("SQLite format 3\0", 16) + noise, "book.other_program"},
        {std::string(100, '\0'), "book.not_a_book"}};
    for (const auto& [bytes, key] : files) {
        const Scratch scratch;
        writeBytes(scratch / "a.cellar", bytes);
        CHECK(refusedUntouched(scratch, scratch / "a.cellar") == key);
    }
}

TEST_CASE("Random files are refused, not crashed on") {
    std::mt19937_64 random(4);
    const Scratch scratch;
    const auto head = bytesOf(smallBook(scratch)).substr(0, 100);
    const auto files = setting("STAVELINE_SPOILED", 200);
    for (std::size_t i = 0; i < files; ++i) {
        std::string bytes(random() % 20000, ' ');
        for (char& c : bytes)
            c = static_cast<char>(random());
        const auto file = scratch / "noise.cellar";
        writeBytes(file, head.substr(0, i % 2 == 0 ? 0 : 100) + bytes);
        CHECK_FALSE(openKey(file).empty());
    }
}

TEST_CASE("Another program's database is refused and left as it is") {
    const Scratch scratch;
    const auto file = scratch / "other.cellar";
    tamper(file, "CREATE TABLE t (a); INSERT INTO t VALUES (1); PRAGMA application_id=1234; PRAGMA user_version=100");
    CHECK(refusedUntouched(scratch, file) == "book.other_program");
}

TEST_CASE("Another major version is refused and left as it is") {
    for (const auto& [version, key] : {std::pair<int, const char*>{200, "book.newer_major"},
                                       {201, "book.newer_major"},
                                       {99, "book.older_major"},
                                       {0, "book.older_major"}}) {
        const Scratch scratch;
        const auto file = smallBook(scratch);
        tamper(file, "PRAGMA user_version=" + std::to_string(version));
        CHECK(refusedUntouched(scratch, file) == key);
    }
}

TEST_CASE("A newer minor version is read, its checks hold, and it is never written") {
    const Scratch scratch;
    const auto file = scratch / "newer.cellar";
    {
        const auto book = created(file, sample::nextMinor());
        REQUIRE(addVessel(*book, "Plover"));
        REQUIRE(book->commit({"e", "e", "", ""}, [](Writer& writer) -> Result<void> {
            return writer.insert("entry", {RowId{1}, 3.3, 60.0, Value(), std::string("old")}).map([](RowId) {});
        }));
        REQUIRE(book->commit({"l", "l", "", ""}, [](Writer& writer) -> Result<void> {
            return writer.insert("lot", {std::string("Lot 1")}).map([](RowId) {});
        }));
    }
    const auto before = bytesOf(file);
    {
        const auto book = opened(file);
        CHECK(book->readOnly());
        CHECK(hasNotice(*book, "book.notice.newer_minor"));
        const auto rows = book->rows("entry");
        REQUIRE(rows);
        CHECK(rows->front().values == std::vector<Value>{RowId{1}, 60.0, Value(), std::string("old")});
        CHECK(book->damages().empty());
        CHECK(book->check()->sound());
        CHECK(keyOf(addVessel(*book, "Wren")) == "book.read_only");
        CHECK(keyOf(book->undo()) == "book.read_only");
        CHECK(keyOf(book->redo()) == "book.read_only");
        CHECK(book->edits(9).size() == 3);
    }
    CHECK(bytesOf(file) == before);
    tamper(file, "UPDATE entry SET ph = 9.9");
    const auto book = opened(file);
    static_cast<void>(book->rows("entry"));
    CHECK(book->damages().size() == 1); // in a column this version does not know
}

TEST_CASE("A book asked for to read is not written, and says so") {
    const Scratch scratch;
    const auto file = smallBook(scratch);
    const auto before = bytesOf(file);
    {
        const auto book = opened(file, sample::schema(), OpenMode::readOnly);
        CHECK(book->readOnly());
        CHECK(book->notices().empty());
        CHECK(keyOf(addVessel(*book, "Wren")) == "book.read_only");
        CHECK(book->check()->sound());
        CHECK_FALSE(sample::dump(*book).empty());
    }
    CHECK(bytesOf(file) == before);
}

TEST_CASE("A book that lacks its tables is refused") {
    const Scratch scratch;
    const auto file = smallBook(scratch);
    Schema other = sample::schema();
    other.tables[2].columns[3].name = "remark";
    CHECK(keyOf(Book::open(file, other)) == "book.wrong_schema");
    other = sample::schema();
    other.tables.push_back({"lot", {}, {}, {}});
    CHECK(keyOf(Book::open(file, other)) == "book.wrong_schema");
    tamper(file, "PRAGMA foreign_keys=OFF; DROP TABLE step");
    CHECK(openKey(file) == "book.wrong_schema");
}

TEST_CASE("A table changed behind the book's back is damage: read-only and said") {
    for (const char* sql : {"CREATE TABLE mine (a)", "DROP INDEX ix_entry_vessel_minute", "DROP TABLE twin",
                            "UPDATE meta SET value = 101 WHERE key = 'user_version'",
                            "DELETE FROM meta WHERE key = 'application_id'", "DELETE FROM step WHERE id = 12",
                            "UPDATE step SET head = 3 WHERE id = 12", "DELETE FROM tally WHERE tbl = 'edit'"}) {
        INFO(sql);
        const Scratch scratch;
        const auto file = smallBook(scratch);
        tamper(file, sql);
        const auto before = bytesOf(file);
        {
            const auto book = opened(file);
            CHECK(book->readOnly());
            CHECK(hasNotice(*book, "book.notice.damaged"));
            REQUIRE_FALSE(book->damages().empty());
            words(book->damages().front().what);
            CHECK(keyOf(addVessel(*book, "Wren")) == "book.read_only");
            CHECK_FALSE(book->check()->sound());
        }
        CHECK(bytesOf(file) == before);
    }
}

TEST_CASE("A folder that cannot be written: the book is read, and the reason said") {
    const Scratch scratch;
    const auto file = smallBook(scratch);
    const auto ask = [&](fs::perms folder, fs::perms book) {
        fs::permissions(file, book);
        fs::permissions(scratch.path(), folder);
        Process nobody({"nobody", file.string()});
        auto lines = nobody.finish();
        fs::permissions(scratch.path(), fs::perms::owner_all);
        return lines;
    };
    using Lines = std::vector<std::string>;
    using fs::perms;
    const perms readFolder = perms::owner_read | perms::owner_exec | perms::others_read | perms::others_exec;
    const perms all = perms::all, read = perms::owner_read | perms::others_read;
    CHECK(ask(all, all) == Lines{"read-write"});
    CHECK(ask(readFolder, all) == Lines{"read-only", "book.notice.folder_not_writable"});
    CHECK(ask(all, read) == Lines{"read-only", "book.notice.file_not_writable"});
    CHECK(ask(all, perms::none) == Lines{"book.cannot_read"});
}

TEST_CASE("Making a book: what is in the way is told apart, and nothing is left behind") {
    const Scratch scratch;
    const auto file = scratch / "a.cellar";
    const auto makeKey = [](const fs::path& path) { return keyOf(Book::create(path, sample::schema())); };
    CHECK(makeKey(scratch / "no/a.cellar") == "book.no_such_folder");
    CHECK(makeKey(scratch.path()) == "book.exists");
    writeBytes(file, "mine");
    CHECK(makeKey(file) == "book.exists");
    CHECK(bytesOf(file) == "mine");
    CHECK_FALSE(makeKey("/proc/a.cellar").empty());
    Schema broken = sample::schema();
    broken.tables[0].name = "edit"; // taken by the book itself
    CHECK(keyOf(Book::create(scratch / "b.cellar", broken)) == "book.failed");
    CHECK(std::distance(fs::directory_iterator(scratch.path()), fs::directory_iterator()) == 1);
}

TEST_CASE("A closed book is one file, with a rollback journal and no write-ahead log") {
    const Scratch scratch;
    const auto file = smallBook(scratch);
    CHECK(std::distance(fs::directory_iterator(scratch.path()), fs::directory_iterator()) == 1);
    const auto header = bytesOf(file).substr(0, 100);
    CHECK(header[18] == 1); // file format versions: 1 legacy, 2 write-ahead log
    CHECK(header[19] == 1);
    CHECK(header.substr(68, 4) == "Stvl");
    CHECK(ask(file, "PRAGMA user_version") == 100);
    CHECK(ask(file, "SELECT value FROM meta WHERE key = 'user_version'") == 100);
    CHECK(ask(file, "SELECT value FROM meta WHERE key = 'application_id'") == 0x5374766C);
}

TEST_CASE("A book that another program put into write-ahead mode is taken back") {
    const Scratch scratch;
    const auto file = smallBook(scratch);
    tamper(file, "PRAGMA journal_mode=WAL");
    REQUIRE(bytesOf(file)[18] == 2);
    const auto book = opened(file);
    CHECK_FALSE(book->readOnly());
    CHECK(bytesOf(file)[18] == 1);
    CHECK(addVessel(*book, "Wren"));
}

TEST_CASE("An unfinished write is taken back by the next program that opens the book, to read or to write") {
    const Scratch scratch;
    const auto file = smallBook(scratch);
    const auto content = sample::dump(*opened(file));
    // A program that stops here leaves pages changed and a journal with what they held.
    const auto half = scratch / "half.cellar";
    sqlite3* writer = nullptr;
    REQUIRE(sqlite3_open(file.c_str(), &writer) == SQLITE_OK);
    REQUIRE(sqlite3_exec(writer,
                         "PRAGMA cache_size=1; PRAGMA cache_spill=1; BEGIN; UPDATE entry SET note = 'x';"
                         "UPDATE twin SET note = zeroblob(3000) || note; PRAGMA user_version=101",
                         nullptr, nullptr, nullptr) != SQLITE_MISUSE);
    fs::copy_file(file, half);
    fs::copy_file(file.string() + "-journal", half.string() + "-journal");
    sqlite3_close(writer);
    for (const OpenMode mode : {OpenMode::readOnly, OpenMode::readWrite}) {
        const auto copy = scratch / (mode == OpenMode::readOnly ? "read.cellar" : "write.cellar");
        fs::copy_file(half, copy);
        fs::copy_file(half.string() + "-journal", copy.string() + "-journal");
        CHECK(sample::dump(*opened(copy, sample::schema(), mode)) == content);
        CHECK_FALSE(fs::exists(copy.string() + "-journal"));
    }
    fs::permissions(half, fs::perms::owner_read);
    if (::access(half.c_str(), W_OK) != 0) // not for one who may write everywhere
        CHECK(openKey(half, OpenMode::readOnly) == "book.unfinished");
    fs::permissions(half, fs::perms::owner_all);
    CHECK(sample::dump(*opened(half)) == content);
    CHECK_FALSE(fs::exists(half.string() + "-journal"));
}

} // namespace staveline::book
