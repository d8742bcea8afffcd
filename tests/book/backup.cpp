// SPDX-License-Identifier: GPL-3.0-or-later
// Copies: checked before they get their name, never in place of something better.
#include "book/helpers.h"

namespace staveline::book {

namespace {

std::size_t filesIn(const Scratch& scratch) {
    return static_cast<std::size_t>(std::distance(fs::directory_iterator(scratch.path()), fs::directory_iterator()));
}

} // namespace

TEST_CASE("A copy holds the rows and the history, and is a book of its own") {
    const Scratch scratch;
    const auto file = smallBook(scratch);
    const auto copy = scratch / "copy.cellar";
    const auto book = opened(file);
    REQUIRE(book->undo());
    REQUIRE(keyOf(book->backup(copy)).empty());
    CHECK(filesIn(scratch) == 2);
    const auto other = opened(copy);
    CHECK_FALSE(other->readOnly());
    CHECK(sample::dump(*other) == sample::dump(*book));
    REQUIRE(other->redo());
    while (other->undoable())
        REQUIRE(other->undo());
    CHECK(other->check()->sound());
    CHECK_FALSE(book->changedElsewhere());
    CHECK(sample::dump(*other) != sample::dump(*book));
}

TEST_CASE("An earlier copy is replaced by a sound one only") {
    const Scratch scratch;
    const auto file = smallBook(scratch);
    const auto copy = scratch / "copy.cellar";
    REQUIRE(opened(file)->backup(copy));
    const auto before = bytesOf(copy);
    REQUIRE(addVessel(*opened(file), "Wren"));
    REQUIRE(opened(file)->backup(copy));
    CHECK(bytesOf(copy) != before);
    const auto good = bytesOf(copy);
    tamper(file, "UPDATE vessel SET litres = 1.0");
    CHECK(keyOf(opened(file)->backup(copy)) == "book.backup_unsound");
    CHECK(bytesOf(copy) == good);
    CHECK(filesIn(scratch) == 2);
}

TEST_CASE("A copy onto the book itself, a folder or nowhere is refused with words") {
    const Scratch scratch;
    const auto file = smallBook(scratch);
    const auto before = bytesOf(file);
    const auto book = opened(file);
    fs::create_symlink(file, scratch / "link.cellar");
    CHECK(keyOf(book->backup(file)) == "book.backup_onto_itself");
    CHECK(keyOf(book->backup(scratch / "link.cellar")) == "book.backup_onto_itself");
    writeBytes(scratch / "victim.txt", "precious");
    fs::create_symlink(scratch / "victim.txt", scratch / "other.cellar");
    CHECK(keyOf(book->backup(scratch / "other.cellar")) == "book.is_link");
    CHECK(bytesOf(scratch / "victim.txt") == "precious");
    CHECK(keyOf(book->backup(scratch.path())) == "book.is_folder");
    CHECK(keyOf(book->backup(scratch / "no/copy.cellar")) == "book.no_such_folder");
    CHECK_FALSE(keyOf(book->backup("/proc/copy.cellar")).empty());
    CHECK(bytesOf(file) == before);
    CHECK(filesIn(scratch) == 4);
}

TEST_CASE("A book open to read can be copied") {
    const Scratch scratch;
    const auto file = smallBook(scratch);
    REQUIRE(opened(file, sample::schema(), OpenMode::readOnly)->backup(scratch / "copy.cellar"));
    CHECK(sample::dump(*opened(scratch / "copy.cellar")) == sample::dump(*opened(file)));
}

TEST_CASE("A newer minor version can be copied by an older program") {
    const Scratch scratch;
    const auto file = scratch / "newer.cellar";
    REQUIRE(addVessel(*created(file, sample::nextMinor()), "Plover"));
    REQUIRE(keyOf(opened(file)->backup(scratch / "copy.cellar")).empty());
    CHECK(opened(scratch / "copy.cellar", sample::nextMinor())->rows("vessel")->size() == 1);
}

TEST_CASE("A copy waits for a writer no longer than two seconds") {
    const Scratch scratch;
    const auto file = smallBook(scratch);
    const auto book = opened(file);
    sqlite3* other = nullptr;
    REQUIRE(sqlite3_open(file.c_str(), &other) == SQLITE_OK);
    REQUIRE(sqlite3_exec(other, "BEGIN EXCLUSIVE", nullptr, nullptr, nullptr) == SQLITE_OK);
    CHECK(keyOf(book->backup(scratch / "copy.cellar")) == "book.locked");
    sqlite3_close(other);
    CHECK_FALSE(fs::exists(scratch / "copy.cellar"));
    CHECK(book->backup(scratch / "copy.cellar"));
}

TEST_CASE("The check counts every row and leaves the file as it is") {
    const Scratch scratch;
    const auto file = smallBook(scratch);
    const auto before = bytesOf(file);
    {
        const auto book = opened(file);
        const auto report = book->check();
        REQUIRE(report);
        CHECK(report->sound());
        const auto rows = static_cast<std::int64_t>(book->rows("entry")->size());
        CHECK(report->rowsChecked == 1 + 2 * rows + 12 + 12);
    }
    CHECK(bytesOf(file) == before);
}

} // namespace staveline::book
