// SPDX-License-Identifier: GPL-3.0-or-later
// Commit, undo, redo, branches, merged typing, and the log that keeps them.
#include "book/helpers.h"

#include <cmath>

namespace staveline::book {

namespace {

std::vector<std::string> vesselNames(const Book& book) {
    std::vector<std::string> names;
    const auto rows = book.rows("vessel");
    REQUIRE(rows);
    for (const Row& row : *rows)
        names.push_back(std::get<std::string>(row.values[0]));
    return names;
}
using Names = std::vector<std::string>;

Result<std::int64_t> rename(Book& book, RowId id, const std::string& name, const std::string& mergeKey) {
    return book.commit({"named " + name, "vessel_edit", name, mergeKey}, [&](Writer& writer) {
        return writer.update("vessel", id, {name, 225.0});
    });
}

/// A way out that any body may take.
Result<void> refused() {
    return badInput("/name", say("book.value_missing").with("column", "name"), say("book.remedy.give_value"));
}

} // namespace

TEST_CASE("An edit is stored with its label and can be undone and redone") {
    const Scratch scratch;
    const TestClock clock;
    const auto book = created(scratch / "a.cellar", sample::schema(), clock.now());
    CHECK_FALSE(book->undoable());
    CHECK_FALSE(book->redoable());
    const auto id = addVessel(*book, "Plover");
    REQUIRE(id);
    const auto info = book->undoable();
    REQUIRE(info);
    CHECK(info->id == *id);
    CHECK(info->label.text == "vessel Plover");
    CHECK(info->label.kind == "vessel");
    CHECK(info->label.subject == "Plover");
    CHECK(info->atUtc == "2026-03-02T10:00:00Z");
    CHECK(info->applied);

    const auto undone = book->undo();
    REQUIRE(undone);
    CHECK(undone->id == *id);
    CHECK_FALSE(undone->applied);
    CHECK(vesselNames(*book).empty());
    CHECK_FALSE(book->undoable());
    REQUIRE(book->redoable());
    CHECK(book->redoable()->id == *id);
    REQUIRE(book->redo());
    CHECK(vesselNames(*book) == Names{"Plover"});
    CHECK_FALSE(book->redoable());
}

TEST_CASE("Nothing to undo and nothing to redo are said in words") {
    const Scratch scratch;
    const auto book = created(scratch / "a.cellar");
    CHECK(keyOf(book->undo()) == "book.nothing_to_undo");
    CHECK(keyOf(book->redo()) == "book.nothing_to_redo");
    CHECK(book->undo().error().kind == FaultKind::notPossible);
    CHECK(book->revision() == 0);
}

TEST_CASE("Undo and redo survive closing the book") {
    const Scratch scratch;
    const auto file = scratch / "a.cellar";
    REQUIRE(addVessel(*created(file), "Plover"));
    REQUIRE(addVessel(*opened(file), "Wren"));
    REQUIRE(opened(file)->undo());
    CHECK(vesselNames(*opened(file)) == Names{"Plover"});
    REQUIRE(opened(file)->undo());
    REQUIRE(opened(file)->redo());
    REQUIRE(opened(file)->redo());
    CHECK(vesselNames(*opened(file)) == Names{"Plover", "Wren"});
    CHECK(ask(file, "SELECT count(*) FROM step") == 6);
    CHECK(opened(file)->check()->sound());
}

TEST_CASE("Writing after an undo starts a new branch; the old one stays in the log") {
    const Scratch scratch;
    const auto book = created(scratch / "a.cellar");
    const auto first = addVessel(*book, "Plover");
    const auto second = addVessel(*book, "Wren");
    REQUIRE(book->undo());
    const auto third = addVessel(*book, "Dunlin");
    REQUIRE(third);
    CHECK_FALSE(book->redoable());
    CHECK(vesselNames(*book) == Names{"Plover", "Dunlin"});

    const auto all = book->edits(10);
    REQUIRE(all.size() == 3);
    CHECK(all[0].id == *third);
    CHECK(all[0].applied);
    CHECK(all[1].id == *second);
    CHECK_FALSE(all[1].applied);
    CHECK(all[2].id == *first);
    CHECK(all[2].applied);
    CHECK(book->edits(2).size() == 2);

    REQUIRE(book->undo());
    REQUIRE(book->undo());
    CHECK(vesselNames(*book).empty());
    REQUIRE(book->redo());
    REQUIRE(book->redo());
    CHECK(vesselNames(*book) == Names{"Plover", "Dunlin"});
    CHECK(book->check()->sound());
}

TEST_CASE("A body that changes nothing leaves nothing") {
    const Scratch scratch;
    const auto file = scratch / "a.cellar";
    const auto book = created(file);
    const auto nothing = [](Writer&) -> Result<void> { return {}; };
    CHECK(book->commit({"n", "n", "", ""}, nothing) == 0);
    const auto head = addVessel(*book, "Plover");
    const auto before = book->revision();
    CHECK(book->commit({"n", "n", "", ""}, nothing) == *head);
    CHECK(rename(*book, 1, "Plover", "") == *head); // the same values
    CHECK(book->commit({"n", "n", "", ""}, [](Writer& writer) -> Result<void> {
        const auto id = writer.insert("vessel", {std::string("Wren"), 1.0});
        return id ? writer.remove("vessel", *id) : fail(id.error());
    }) == *head);
    CHECK(book->revision() == before);
    CHECK(book->edits(9).size() == 1);
    CHECK(book->check()->sound());
}

TEST_CASE("A body that fails or throws leaves nothing, and the book goes on") {
    const Scratch scratch;
    const auto book = created(scratch / "a.cellar");
    const auto halfway = [](Writer& writer) -> Result<void> {
        const auto id = writer.insert("vessel", {std::string("Wren"), 1.0});
        return id ? refused() : fail(id.error());
    };
    CHECK(keyOf(book->commit({"h", "h", "", ""}, halfway)) == "book.value_missing");
    const auto thrower = [](Writer& writer) -> Result<void> {
        static_cast<void>(writer.insert("vessel", {std::string("Wren"), 1.0}));
        throw std::runtime_error("body");
    };
    CHECK_THROWS_AS(book->commit({"t", "t", "", ""}, thrower), std::runtime_error);
    CHECK(vesselNames(*book).empty());
    CHECK(book->edits(9).empty());
    REQUIRE(addVessel(*book, "Plover"));
    CHECK(book->check()->sound());
}

TEST_CASE("A body may answer a refused value and go on") {
    const Scratch scratch;
    const auto book = created(scratch / "a.cellar");
    REQUIRE(addVessel(*book, "Plover"));
    REQUIRE(book->commit({"v", "v", "", ""}, [](Writer& writer) -> Result<void> {
        const auto taken = writer.insert("vessel", {std::string("Plover"), 1.0});
        CHECK_FALSE(taken);
        return writer.insert("vessel", {std::string("Plover 2"), 1.0}).map([](RowId) {});
    }));
    CHECK(vesselNames(*book) == Names{"Plover", "Plover 2"});
    CHECK(book->check()->sound());
}

TEST_CASE("A body sees what it has written, and no damage in it") {
    const Scratch scratch;
    const auto book = created(scratch / "a.cellar");
    REQUIRE(book->commit({"v", "v", "", ""}, [&](Writer& writer) -> Result<void> {
        const auto id = writer.insert("vessel", {std::string("Plover"), 1.0});
        CHECK(vesselNames(*book) == Names{"Plover"});
        CHECK(keyOf(book->commit({"inner", "v", "", ""}, [](Writer&) -> Result<void> { return {}; })) == "book.failed");
        return id.map([](RowId) {});
    }));
    CHECK(book->damages().empty());
    CHECK(vesselNames(*book) == Names{"Plover"});
}

TEST_CASE("An edit that puts in a row and what refers to it can be undone and redone") {
    const Scratch scratch;
    const auto book = created(scratch / "a.cellar");
    REQUIRE(book->commit({"both", "both", "", ""}, [](Writer& writer) -> Result<void> {
        const auto id = writer.insert("vessel", {std::string("Plover"), 1.0});
        return id ? sample::insertBoth(writer, sample::entry(*id, 60, "refill")) : fail(id.error());
    }));
    const auto before = sample::dump(*book);
    REQUIRE(book->undo());
    CHECK(vesselNames(*book).empty());
    REQUIRE(book->redo());
    CHECK(sample::dump(*book) == before);
}

TEST_CASE("Two rows that swap a unique value can be undone and redone") {
    const Scratch scratch;
    const auto file = scratch / "a.cellar";
    const auto book = created(file);
    REQUIRE(addVessel(*book, "Plover"));
    REQUIRE(addVessel(*book, "Wren"));
    REQUIRE(book->commit({"swap", "swap", "", ""}, [](Writer& writer) -> Result<void> {
        for (const auto& [id, name] : {std::pair<RowId, std::string>{1, "x"}, {2, "Plover"}, {1, "Wren"}})
            if (auto done = writer.update("vessel", id, {name, 225.0}); !done)
                return done;
        return {};
    }));
    CHECK(vesselNames(*book) == Names{"Wren", "Plover"});
    REQUIRE(keyOf(book->undo()).empty());
    CHECK(vesselNames(*book) == Names{"Plover", "Wren"});
    REQUIRE(book->redo());
    CHECK(vesselNames(*book) == Names{"Wren", "Plover"});
    CHECK(keyOf(addVessel(*book, "Wren")) == "book.not_unique"); // the guard is back
    CHECK(book->check()->sound());
    CHECK(opened(file)->damages().empty());
}

TEST_CASE("The sign of zero is undone and redone like any change") {
    const Scratch scratch;
    const auto book = created(scratch / "a.cellar");
    REQUIRE(addVessel(*book, "Plover"));
    const auto set = [&](double litres) {
        return book->commit({"l", "l", "", ""}, [&](Writer& writer) {
            return writer.update("vessel", 1, {std::string("Plover"), litres});
        });
    };
    const auto negative = [&] { return std::signbit(std::get<double>(book->row("vessel", 1)->values[1])); };
    REQUIRE(set(0.0));
    REQUIRE(set(-0.0));
    CHECK(negative());
    REQUIRE(book->undo());
    CHECK_FALSE(negative());
    REQUIRE(book->redo());
    CHECK(negative());
    CHECK(book->rowsWhere("vessel", "litres", 0.0)->size() == 1);
    CHECK(book->check()->sound());
}

TEST_CASE("Typing into one field merges into one edit") {
    const Scratch scratch;
    const TestClock clock;
    const auto file = scratch / "a.cellar";
    const auto book = created(file, sample::schema(), clock.now());
    REQUIRE(addVessel(*book, "P"));
    const auto first = rename(*book, 1, "Pl", "vessel/1/name");
    clock.turn(std::chrono::milliseconds(1999));
    CHECK(rename(*book, 1, "Plo", "vessel/1/name") == *first);
    clock.turn(std::chrono::milliseconds(2000));
    CHECK(rename(*book, 1, "Plov", "vessel/1/name") == *first);
    CHECK(book->edits(9).size() == 2);
    CHECK(book->undoable()->label.text == "named Plov");
    CHECK(book->revision() == 4); // other programs must see each
    CHECK(book->check()->sound());

    REQUIRE(book->undo());
    CHECK(vesselNames(*book) == Names{"P"});
    REQUIRE(book->redo());
    CHECK(vesselNames(*opened(file)) == Names{"Plov"});
}

TEST_CASE("Typing does not merge after a pause, in another field, without a key, or once the head has moved") {
    const Scratch scratch;
    const TestClock clock;
    const auto file = scratch / "a.cellar";
    auto book = created(file, sample::schema(), clock.now());
    REQUIRE(addVessel(*book, "P"));
    const auto count = [&] { return book->edits(99).size(); };
    REQUIRE(rename(*book, 1, "Pl", "name"));
    REQUIRE(count() == 2);
    clock.turn(std::chrono::milliseconds(2001));
    REQUIRE(rename(*book, 1, "Plo", "name"));
    CHECK(count() == 3); // a pause
    REQUIRE(rename(*book, 1, "Plov", "other"));
    CHECK(count() == 4); // another field
    REQUIRE(rename(*book, 1, "Plove", ""));
    REQUIRE(rename(*book, 1, "Plover", ""));
    CHECK(count() == 6); // no key
    REQUIRE(rename(*book, 1, "Wren", "name"));
    REQUIRE(book->undo());
    REQUIRE(rename(*book, 1, "Dunlin", "name"));
    CHECK(count() == 8); // an undo between
    clock.turn(std::chrono::milliseconds(-5));
    REQUIRE(rename(*book, 1, "Dunlins", "name"));
    CHECK(count() == 9); // a clock set back
    book = opened(file, sample::schema(), OpenMode::readWrite, clock.now());
    REQUIRE(rename(*book, 1, "Dunlin", "name"));
    CHECK(count() == 10); // another process
    CHECK(book->check()->sound());
}

TEST_CASE("Typing back to where it began is an undo, and what was typed can be redone") {
    const Scratch scratch;
    const TestClock clock;
    const auto book = created(scratch / "a.cellar", sample::schema(), clock.now());
    const auto made = addVessel(*book, "P");
    REQUIRE(rename(*book, 1, "Pl", "name"));
    CHECK(rename(*book, 1, "P", "name") == *made);
    CHECK(book->undoable()->id == *made);
    REQUIRE(book->redoable());
    CHECK(book->redoable()->label.text == "named Pl");
    REQUIRE(rename(*book, 1, "Px", "name"));
    CHECK(book->edits(9).size() == 3); // nothing merges into an edit that is undone
    REQUIRE(book->undo());
    CHECK(vesselNames(*book) == Names{"P"});
    CHECK(book->check()->sound());
}

TEST_CASE("A long text and many rows in one edit") {
    const Scratch scratch;
    const auto book = created(scratch / "a.cellar");
    REQUIRE(addVessel(*book, "Plover"));
    const auto before = sample::dump(*book);
    REQUIRE(book->commit({std::string(100000, 't'), "import", "", ""}, [](Writer& writer) -> Result<void> {
        for (int i = 0; i < 2000; ++i)
            if (auto done = sample::insertBoth(writer, sample::entry(1, i, std::string(500, 'n'))); !done)
                return done;
        return {};
    }));
    const auto after = sample::dump(*book);
    CHECK(book->undoable()->label.text.size() == 100000);
    REQUIRE(book->undo());
    CHECK(sample::dump(*book) == before);
    REQUIRE(book->redo());
    CHECK(sample::dump(*book) == after);
    CHECK(book->check()->rowsChecked == 1 + 2 * 2000 + 2 + 4);
}

} // namespace staveline::book
