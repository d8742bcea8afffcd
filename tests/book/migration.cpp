// SPDX-License-Identifier: GPL-3.0-or-later
// From one minor version to the next: a copy first, then all or nothing, and old rows as they were.
#include "book/helpers.h"

namespace staveline::book {

namespace {

std::vector<std::string> filesIn(const Scratch& scratch) {
    std::vector<std::string> names;
    for (const auto& each : fs::directory_iterator(scratch.path()))
        names.push_back(each.path().filename().string());
    std::sort(names.begin(), names.end());
    return names;
}

BookPtr upgraded(const fs::path& file) {
    return opened(file, sample::nextMinor());
}

} // namespace

TEST_CASE("An older minor version is upgraded after a verified copy that bears its version") {
    const Scratch scratch;
    const auto file = smallBook(scratch);
    const auto content = sample::dump(*opened(file));
    {
        const auto book = upgraded(file);
        CHECK_FALSE(book->readOnly());
        REQUIRE(book->notices().size() == 1);
        CHECK(book->notices().front().key == "book.notice.migrated");
        CHECK(words(book->notices().front()).find("small.v1.0.cellar") != std::string::npos);
        CHECK(book->check()->sound());
        CHECK(book->damages().empty());
        CHECK(book->rows("lot")->empty());
        CHECK(book->rows("entry")->front().values.size() == 5);
        CHECK(book->rows("entry")->front().values[1] == Value());
    }
    CHECK(filesIn(scratch) == std::vector<std::string>{"small.cellar", "small.v1.0.cellar"});
    CHECK(ask(file, "PRAGMA user_version") == 101);
    CHECK(sample::dump(*opened(file)) == content);                          // by the older program, to read
    CHECK(sample::dump(*opened(scratch / "small.v1.0.cellar")) == content); // and to write
    CHECK_FALSE(opened(scratch / "small.v1.0.cellar")->readOnly());
    CHECK(upgraded(file)->notices().empty()); // only once
}

TEST_CASE("What came before an upgrade cannot be undone, what comes after it can") {
    const Scratch scratch;
    const auto file = smallBook(scratch);
    REQUIRE(opened(file)->undo());
    const auto book = upgraded(file);
    CHECK_FALSE(book->undoable());
    CHECK_FALSE(book->redoable());
    CHECK(keyOf(book->undo()) == "book.undo_floor");
    CHECK(keyOf(book->redo()) == "book.nothing_to_redo");
    const auto before = sample::dump(*book, sample::nextMinor());
    REQUIRE(book->commit({"e", "e", "", ""}, [](Writer& writer) -> Result<void> {
        auto done = writer.insert("entry", {RowId{1}, 3.4, 60.0, Value(), std::string("new")});
        return done ? writer.insert("lot", {std::string("Lot 1")}).map([](RowId) {}) : fail(done.error());
    }));
    const auto after = sample::dump(*book, sample::nextMinor());
    REQUIRE(book->undo());
    CHECK(sample::dump(*book, sample::nextMinor()) == before);
    CHECK(keyOf(book->undo()) == "book.undo_floor");
    REQUIRE(book->redo());
    CHECK(sample::dump(*book, sample::nextMinor()) == after);
    CHECK(book->edits(99).size() == 13);
    CHECK(book->check()->sound());
    const auto again = upgraded(file);
    CHECK(again->undoable());
    CHECK(again->check()->sound());
}

TEST_CASE("An old row written anew after the upgrade keeps its digest right") {
    const Scratch scratch;
    const auto file = smallBook(scratch);
    const auto id = opened(file)->rows("entry")->front().id;
    {
        const auto book = upgraded(file);
        const auto row = book->row("entry", id);
        REQUIRE(row);
        auto values = row->values;
        values[1] = 3.6;
        REQUIRE(book->commit({"e", "e", "", ""}, [&](Writer& writer) { return writer.update("entry", id, values); }));
        REQUIRE(book->undo());
        REQUIRE(book->redo());
    }
    const auto book = upgraded(file);
    CHECK(book->row("entry", id)->values[1] == Value(3.6));
    CHECK(book->rowsWhere("entry", "ph", 3.6)->size() == 1);
    CHECK(book->check()->sound());
}

TEST_CASE("An empty book can be upgraded") {
    const Scratch scratch;
    const auto file = scratch / "a.cellar";
    created(file).reset();
    const auto book = upgraded(file);
    CHECK(keyOf(book->undo()) == "book.nothing_to_undo");
    REQUIRE(addVessel(*book, "Plover"));
    REQUIRE(book->undo());
    CHECK(book->check()->sound());
}

TEST_CASE("A copy already there is not replaced") {
    const Scratch scratch;
    const auto file = smallBook(scratch);
    writeBytes(scratch / "small.v1.0.cellar", "precious");
    upgraded(file).reset();
    CHECK(bytesOf(scratch / "small.v1.0.cellar") == "precious");
    CHECK(sample::dump(*opened(scratch / "small.v1.0-2.cellar")) == sample::dump(*opened(file)));
}

TEST_CASE("An older book opened to read stays as it is, with what it lacks left empty") {
    const Scratch scratch;
    const auto file = smallBook(scratch);
    const auto before = bytesOf(file);
    {
        const auto book = opened(file, sample::nextMinor(), OpenMode::readOnly);
        CHECK(book->readOnly());
        CHECK(book->rows("lot")->empty());
        CHECK(book->rowsWhere("lot", "name", std::string("x"))->empty());
        CHECK(book->rowsWhere("entry", "ph", 3.5)->empty());
        CHECK_FALSE(book->rowsWhere("entry", "ph", Value(), {"ph"})->empty());
        CHECK(book->rows("entry")->front().values[1] == Value());
        CHECK(book->check()->sound());
    }
    CHECK(bytesOf(file) == before);
    CHECK(filesIn(scratch).size() == 1);
}

TEST_CASE("A damaged older book is not upgraded and not written") {
    const Scratch scratch;
    const auto file = smallBook(scratch);
    tamper(file, "UPDATE vessel SET litres = 100.0");
    const auto before = bytesOf(file);
    {
        const auto book = upgraded(file);
        CHECK(book->readOnly());
        REQUIRE(book->notices().size() >= 2);
        CHECK(book->notices()[0].key == "book.notice.not_migrated");
        CHECK(book->notices()[1].key == "book.backup_unsound");
        for (const Message& notice : book->notices())
            words(notice);
    }
    CHECK(bytesOf(file) == before);
    CHECK(filesIn(scratch).size() == 1);
}

TEST_CASE("A schema that needs a new required column is refused, the book left as it is") {
    const Scratch scratch;
    const auto file = smallBook(scratch);
    const auto before = bytesOf(file);
    Schema next = sample::nextMinor();
    next.tables[1].columns[1].required = true;
    CHECK(keyOf(Book::open(file, next)) == "book.wrong_schema");
    CHECK(bytesOf(file) == before);
}

TEST_CASE("An older program notices that a newer one has upgraded the book under it") {
    const Scratch scratch;
    const auto file = smallBook(scratch);
    const auto older = opened(file);
    const auto newer = upgraded(file);
    CHECK(older->changedElsewhere());
    CHECK(keyOf(addVessel(*older, "Wren")) == "book.changed_elsewhere");
    older->reload();
    CHECK(older->readOnly());
    REQUIRE(older->notices().size() == 1);
    CHECK(older->notices().front().key == "book.notice.newer_minor");
    CHECK(keyOf(addVessel(*older, "Wren")) == "book.read_only");
    CHECK(older->rows("entry")->front().values.size() == 4);
    CHECK(older->damages().empty());
    REQUIRE(addVessel(*newer, "Wren"));
}

} // namespace staveline::book
