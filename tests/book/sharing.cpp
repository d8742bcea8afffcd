// SPDX-License-Identifier: GPL-3.0-or-later
// Several programs on one book: nothing lost, nothing overwritten unseen. STAVELINE_TURNS sets how many edits two take
// turns at, STAVELINE_SEED where to begin.
#include "book/helpers.h"
#include "book/process.h"

#include <fmt/core.h>
#include <set>

namespace staveline::book {

TEST_CASE("A head moved by another program stops an edit until the book is loaded again") {
    const Scratch scratch;
    const auto file = scratch / "a.cellar";
    const auto window = created(file);
    const auto script = opened(file);
    REQUIRE(addVessel(*window, "Plover"));

    CHECK(script->changedElsewhere());
    const auto late = addVessel(*script, "Wren");
    CHECK(keyOf(late) == "book.changed_elsewhere");
    CHECK(late.error().kind == FaultKind::changedElsewhere);
    CHECK(ofStorage(late.error().kind));
    CHECK(keyOf(script->undo()) == "book.changed_elsewhere");
    CHECK(keyOf(script->redo()) == "book.changed_elsewhere");
    CHECK(script->rows("vessel")->size() == 1);

    const auto before = script->revision();
    script->reload();
    CHECK(script->revision() > before);
    CHECK_FALSE(script->changedElsewhere());
    REQUIRE(script->undoable());
    CHECK(script->undoable()->label.text == "vessel Plover");
    REQUIRE(addVessel(*script, "Wren"));
    CHECK_FALSE(script->changedElsewhere()); // its own edit
    CHECK(window->changedElsewhere());
    window->reload();
    CHECK(window->rows("vessel")->size() == 2);
    CHECK(window->revision() == script->revision());
    CHECK(window->check()->sound());
}

TEST_CASE("Who reads a book is not kept waiting by a large edit of another program") {
    const Scratch scratch;
    const auto file = scratch / "a.cellar";
    const auto script = created(file);
    const auto window = opened(file);
    REQUIRE(addVessel(*script, "Plover"));
    REQUIRE(window->changedElsewhere());
    window->reload();
    std::optional<std::size_t> seen;
    REQUIRE(script->commit({"many", "many", "", ""}, [&](Writer& writer) -> Result<void> {
        for (int i = 0; i < 3000; ++i) // 12 MB, far more than is kept of a file
            if (auto id = writer.insert("entry", sample::entry(1, 1, std::string(4000, 'x'))); !id)
                return fail(id.error());
        if (const auto rows = window->rows("vessel"))
            seen = rows->size();
        CHECK_FALSE(window->changedElsewhere());
        return {};
    }));
    CHECK(seen == 1);
    CHECK(window->changedElsewhere());
}

TEST_CASE("An undo and a merge by another program are seen too") {
    const Scratch scratch;
    const TestClock clock;
    const auto file = scratch / "a.cellar";
    const auto window = created(file, sample::schema(), clock.now());
    REQUIRE(addVessel(*window, "Plover"));
    const auto rename = [&](Book& book, const std::string& name) {
        return book.commit({"r", "r", "", "name"}, [&](Writer& writer) {
            return writer.update("vessel", 1, {name, 225.0});
        });
    };
    REQUIRE(rename(*window, "P"));
    const auto script = opened(file, sample::schema(), OpenMode::readWrite, clock.now());
    REQUIRE(rename(*window, "Pl")); // merged: the head is the same, its content is not
    CHECK(keyOf(rename(*script, "Wren")) == "book.changed_elsewhere");
    script->reload();
    REQUIRE(script->undo());
    CHECK(keyOf(rename(*window, "Plo")) == "book.changed_elsewhere");
    window->reload();
    REQUIRE(rename(*window, "Plo"));
    CHECK(window->edits(9).size() == 3);
    CHECK(window->check()->sound());
}

TEST_CASE("A lock held for more than two seconds is a fault in words, and nothing is written") {
    const Scratch scratch;
    const auto file = scratch / "a.cellar";
    const auto book = created(file);
    sqlite3* other = nullptr;
    REQUIRE(sqlite3_open(file.c_str(), &other) == SQLITE_OK);
    REQUIRE(sqlite3_exec(other, "BEGIN IMMEDIATE", nullptr, nullptr, nullptr) == SQLITE_OK);
    const auto blocked = addVessel(*book, "Plover");
    CHECK(keyOf(blocked) == "book.locked");
    CHECK(blocked.error().kind == FaultKind::storage);
    CHECK(book->rows("vessel")->empty()); // reading goes on
    REQUIRE(sqlite3_exec(other, "COMMIT", nullptr, nullptr, nullptr) == SQLITE_OK);
    sqlite3_close(other);
    CHECK(addVessel(*book, "Plover"));
    CHECK(book->check()->sound());
}

TEST_CASE("A reader that does not let go stops a commit, not the book") {
    const Scratch scratch;
    const auto file = scratch / "a.cellar";
    const auto book = created(file);
    sqlite3* other = nullptr;
    REQUIRE(sqlite3_open(file.c_str(), &other) == SQLITE_OK);
    REQUIRE(sqlite3_exec(other, "BEGIN; SELECT * FROM vessel", nullptr, nullptr, nullptr) == SQLITE_OK);
    CHECK(keyOf(addVessel(*book, "Plover")) == "book.locked");
    REQUIRE(sqlite3_exec(other, "COMMIT", nullptr, nullptr, nullptr) == SQLITE_OK);
    sqlite3_close(other);
    CHECK(book->rows("vessel")->empty());
    CHECK(addVessel(*book, "Plover"));
    CHECK(book->rows("vessel")->size() == 1);
}

TEST_CASE("A file moved or replaced while it is open is not written to") {
    const Scratch scratch;
    const auto file = scratch / "a.cellar";
    const auto book = created(file);
    REQUIRE(addVessel(*book, "Plover"));
    fs::rename(file, scratch / "b.cellar");
    CHECK(keyOf(addVessel(*book, "Wren")) == "book.file_moved");
    created(file).reset();
    CHECK(keyOf(addVessel(*book, "Wren")) == "book.file_moved");
    CHECK(opened(file)->rows("vessel")->empty());
    CHECK(opened(scratch / "b.cellar")->rows("vessel")->size() == 1);
}

TEST_CASE("A link leads to the same book") {
    const Scratch scratch;
    const auto file = scratch / "a.cellar";
    const auto book = created(file);
    fs::create_directory(scratch / "links");
    fs::create_symlink(file, scratch / "links/b.cellar");
    const auto same = opened(scratch / "links/b.cellar");
    CHECK(same->path() == fs::canonical(file));
    REQUIRE(addVessel(*same, "Plover"));
    CHECK(book->changedElsewhere());
}

TEST_CASE("Two objects of one process take turns at random: every edit stays") {
    const auto seed = setting("STAVELINE_SEED", 99);
    const auto turns = setting("STAVELINE_TURNS", 300);
    INFO("STAVELINE_SEED=" << seed);
    std::mt19937_64 random(seed);
    const Scratch scratch;
    const auto file = scratch / "a.cellar";
    std::vector<BookPtr> books;
    books.push_back(created(file));
    books.push_back(opened(file));
    std::size_t written = 0, refused = 0;
    while (written < turns) {
        Book& book = *books[random() % 2];
        const auto done = addVessel(book, fmt::format("V{}", written));
        if (done)
            ++written;
        else
            ++refused;
        REQUIRE((done || keyOf(done) == "book.changed_elsewhere"));
        if (!done)
            book.reload();
    }
    CHECK(refused > turns / 6);
    CHECK(opened(file)->rows("vessel")->size() == turns);
    CHECK(opened(file)->check()->sound());
}

TEST_CASE("Three processes write at once: every acknowledged edit stays") {
    const Scratch scratch;
    const auto file = scratch / "a.cellar";
    created(file).reset();
    std::vector<std::unique_ptr<Process>> writers;
    for (const char* name : {"Plover", "Wren", "Dunlin"})
        writers.push_back(std::make_unique<Process>(std::vector<std::string>{"share", file.string(), name, "40"}));
    for (const auto& writer : writers) {
        const auto lines = writer->finish();
        INFO((lines.empty() ? std::string("nothing said") : lines.back()));
        CHECK(writer->exitStatus() == 0);
        CHECK(lines.size() == 40);
    }
    const auto book = opened(file);
    const auto rows = book->rows("vessel");
    REQUIRE(rows);
    std::set<std::string> names;
    for (const Row& row : *rows)
        names.insert(std::get<std::string>(row.values[0]));
    CHECK(names.size() == 120);
    CHECK(book->edits(999).size() == 120);
    CHECK(book->check()->sound());
}

} // namespace staveline::book
