// SPDX-License-Identifier: GPL-3.0-or-later
// Damaged files: nothing crashes, nothing changes unseen, and what is known to be damaged is not written.
// STAVELINE_FLIPS sets how many bits are flipped, STAVELINE_SPOILED how many files are cut, zeroed or have pages
// swapped, each; STAVELINE_SEED where to begin.
#include "book/helpers.h"

#include <fmt/core.h>

namespace staveline::book {

namespace {

/// Everything a user could see of a book.
std::string visible(const Book& book) {
    std::string text = sample::dump(book);
    for (const EditInfo& edit : book.edits(1000))
        text += fmt::format("\n{}{}|{}|{}|{}{}", edit.id, edit.label.text, edit.label.kind, edit.label.subject,
                            edit.atUtc, edit.applied ? '+' : '-');
    for (const auto& next : {book.undoable(), book.redoable()})
        text.append("\n").append(next ? next->label.text : "-");
    return text;
}

struct Outcome {
    bool refused = false;       ///< with words, on opening
    bool seenOnReading = false; ///< by opening it and reading all of it
    bool seenByCheck = false;
    bool changed = false; ///< something else was shown, before or after an edit and its undo
};

/// An edit and its undo, as far as they go.
void tryToWrite(Book& book) {
    const auto wrote = addVessel(book, "Dunlin");
    if (!wrote) {
        words(wrote.error());
        return;
    }
    if (const auto undone = book.undo(); !undone)
        words(undone.error());
}

struct Expected {
    std::string all, rows;
};

Outcome examine(const fs::path& file, const Expected& expected) {
    const auto book = Book::open(file, sample::schema());
    if (!book) {
        words(book.error());
        return {true, false, false, false};
    }
    Outcome outcome;
    outcome.changed = visible(**book) != expected.all;
    outcome.seenOnReading = (*book)->readOnly();
    if (!outcome.seenOnReading)
        tryToWrite(**book);
    outcome.changed = outcome.changed || sample::dump(**book) != expected.rows;
    const auto report = (*book)->check();
    outcome.seenByCheck = !report || !report->sound();
    return outcome;
}

struct Tally {
    int refused = 0, seen = 0, checked = 0, clean = 0, silent = 0;
    void add(const Outcome& outcome) {
        if (outcome.refused)
            ++refused;
        else if (outcome.seenOnReading)
            ++seen;
        else if (outcome.seenByCheck)
            ++checked;
        else if (outcome.changed)
            ++silent;
        else
            ++clean;
    }
    [[nodiscard]] std::string text() const {
        return fmt::format("refused {}, seen on reading {}, by the check {}, harmless {}, silent {}", refused, seen,
                           checked, clean, silent);
    }
};

/// Spoils copies of a small book and looks what comes of each.
template <class Spoil> Tally spoil(std::size_t times, Spoil&& spoiled) {
    const Scratch scratch;
    const auto good = smallBook(scratch, 40);
    const std::string bytes = bytesOf(good);
    const Expected expected{visible(*opened(good)), sample::dump(*opened(good))};
    const auto file = scratch / "bad.cellar";
    Tally tally;
    for (std::size_t i = 0; i < times; ++i) {
        const std::string bad = spoiled(bytes);
        fs::remove(file.string() + "-journal");
        writeBytes(file, bad);
        INFO("case " << i);
        const Outcome outcome = examine(file, expected);
        tally.add(outcome);
        if (outcome.seenOnReading || outcome.refused) {
            const bool untouched = bytesOf(file) == bad;
            CHECK(untouched);
        }
    }
    return tally;
}

constexpr std::size_t sector = 512, page = 4096;

} // namespace

TEST_CASE("Flipped bits: each is harmless or seen, none changes anything unseen") {
    const auto seed = setting("STAVELINE_SEED", 600);
    const auto flips = setting("STAVELINE_FLIPS", 600);
    INFO("STAVELINE_SEED=" << seed);
    std::mt19937_64 random(seed);
    const Tally tally = spoil(flips, [&](std::string bytes) {
        const auto bit = random() % (bytes.size() * 8);
        bytes[bit / 8] = static_cast<char>(static_cast<unsigned char>(bytes[bit / 8]) ^ (1U << bit % 8));
        return bytes;
    });
    WARN(flips << " flips: " << tally.text());
    CHECK(tally.silent == 0);
    CHECK(tally.seen > 0);
    CHECK(tally.clean > 0);
}

TEST_CASE("Every bit of the file header, flipped") {
    std::size_t bit = 0;
    const Tally tally = spoil(800, [&](std::string bytes) {
        bytes[bit / 8] = static_cast<char>(static_cast<unsigned char>(bytes[bit / 8]) ^ (1U << bit % 8));
        ++bit;
        return bytes;
    });
    WARN("header: " << tally.text());
    CHECK(tally.silent == 0);
}

TEST_CASE("Truncated files: none passes for whole") {
    std::mt19937_64 random(5);
    const Tally tally = spoil(setting("STAVELINE_SPOILED", 150),
                              [&](const std::string& bytes) { return bytes.substr(0, random() % bytes.size()); });
    WARN("truncated: " << tally.text());
    CHECK(tally.silent == 0);
    CHECK(tally.clean == 0);
}

TEST_CASE("Zeroed sectors: each is harmless or seen") {
    std::mt19937_64 random(6);
    const Tally tally = spoil(setting("STAVELINE_SPOILED", 200), [&](std::string bytes) {
        const auto at = random() % (bytes.size() / sector) * sector;
        return bytes.replace(at, sector, std::string(sector, '\0'));
    });
    WARN("zeroed: " << tally.text());
    CHECK(tally.silent == 0);
    CHECK(tally.seen > 0);
}

TEST_CASE("Swapped pages: each is seen") {
    std::mt19937_64 random(8);
    const Tally tally = spoil(setting("STAVELINE_SPOILED", 100), [&](std::string bytes) {
        const auto pages = bytes.size() / page;
        const auto one = random() % pages, other = (one + 1 + random() % (pages - 1)) % pages;
        const std::string kept = bytes.substr(one * page, page);
        bytes.replace(one * page, page, bytes.substr(other * page, page));
        return bytes.replace(other * page, page, kept);
    });
    WARN("swapped: " << tally.text());
    CHECK(tally.silent == 0);
    CHECK(tally.clean == 0);
}

TEST_CASE("A value changed behind the book's back is named, the row still handed out, the book read-only") {
    const Scratch scratch;
    const auto file = smallBook(scratch);
    const auto id = opened(file)->rows("entry")->back().id;
    tamper(file, "UPDATE entry SET minute = 1234 WHERE id = " + std::to_string(id));
    const auto before = bytesOf(file);
    {
        const auto book = opened(file);
        CHECK_FALSE(book->readOnly()); // opening scans nothing
        const auto row = book->row("entry", id);
        REQUIRE(row);
        CHECK(row->values[2] == Value(std::int64_t{1234}));
        REQUIRE(book->damages().size() == 1);
        CHECK(book->damages().front().table == "entry");
        CHECK(book->damages().front().row == id);
        CHECK(words(book->damages().front().what).find("entry") != std::string::npos);
        CHECK(book->readOnly());
        REQUIRE(book->notices().size() == 1);
        CHECK(words(book->notices().front()).find('1') != std::string::npos);
        CHECK(keyOf(addVessel(*book, "Wren")) == "book.read_only");
        static_cast<void>(book->rows("entry"));
        CHECK(book->damages().size() == 1); // once
        CHECK(book->check()->damages.size() == 1);
    }
    CHECK(bytesOf(file) == before);
}

TEST_CASE("A damaged row comes in the types of its columns") {
    const Scratch scratch;
    const auto file = smallBook(scratch);
    tamper(file, "PRAGMA ignore_check_constraints=ON; PRAGMA writable_schema=ON;"
                 "UPDATE sqlite_schema SET sql = replace(replace(sql, ') STRICT', ')'), 'NOT NULL', '')"
                 " WHERE name = 'entry'");
    tamper(file, "PRAGMA ignore_check_constraints=ON;"
                 "UPDATE entry SET vessel = NULL, litres = 'much', minute = 2.5, note = NULL");
    const auto book = opened(file);
    const auto rows = book->rows("entry");
    REQUIRE(rows);
    REQUIRE_FALSE(rows->empty());
    CHECK(book->damages().size() > rows->size());
    for (const Row& row : *rows)
        CHECK(row.values == std::vector<Value>{std::int64_t{0}, 0.0, std::int64_t{2}, std::string()});
}

TEST_CASE("A row that was lost whole is missed, on reading and by the check") {
    const Scratch scratch;
    const auto file = smallBook(scratch);
    tamper(file, "DELETE FROM entry WHERE id = (SELECT max(id) FROM entry)");
    const auto book = opened(file);
    static_cast<void>(book->rows("entry"));
    REQUIRE(book->damages().size() == 1);
    CHECK(book->damages().front().row == 0);
    words(book->damages().front().what);
    CHECK_FALSE(opened(file)->check()->sound());
}

TEST_CASE("A damaged row is not written over") {
    const Scratch scratch;
    const auto file = smallBook(scratch);
    tamper(file, "UPDATE vessel SET litres = 100.0");
    for (const bool removed : {false, true}) {
        const auto book = opened(file);
        const auto done = book->commit({"v", "v", "", ""}, [&](Writer& writer) {
            return removed ? writer.remove("vessel", 1) : writer.update("vessel", 1, {std::string("Wren"), 1.0});
        });
        CHECK(keyOf(done) == "book.damaged");
        CHECK(done.error().kind == FaultKind::damaged);
        CHECK(book->readOnly());
        CHECK(book->damages().front().table == "vessel");
    }
    CHECK(ask(file, "SELECT litres = 100.0 FROM vessel") == 1);
}

TEST_CASE("Damage that is found while an edit is made keeps the edit out") {
    const Scratch scratch;
    const auto file = smallBook(scratch);
    tamper(file, "UPDATE entry SET minute = 1234 WHERE id = 1");
    const auto before = bytesOf(file);
    for (const bool whole : {false, true}) {
        const auto book = opened(file);
        const auto done = book->commit({"v", "v", "", ""}, [&](Writer& writer) -> Result<void> {
            if (whole)
                static_cast<void>(book->rows("entry"));
            else
                static_cast<void>(book->rowsWhere("entry", "vessel", std::int64_t{1}));
            const auto added = writer.insert("vessel", {std::string("Wren"), 1.0});
            return added ? Result<void>() : Result<void>(fail(added.error()));
        });
        CHECK(keyOf(done) == "book.read_only");
        CHECK(book->damages().front().row == 1);
        CHECK(book->revision() == 12);
    }
    CHECK(bytesOf(file) == before);
}

TEST_CASE("A damaged edit is neither undone nor hidden") {
    const Scratch scratch;
    const auto file = smallBook(scratch);
    tamper(file, "UPDATE edit SET changes = zeroblob(length(changes)) WHERE id = 12");
    const auto before = bytesOf(file);
    {
        const auto book = opened(file);
        const auto undone = book->undo();
        CHECK(keyOf(undone) == "book.damaged");
        CHECK(book->readOnly());
        CHECK(book->edits(99).size() == 12);
    }
    CHECK(bytesOf(file) == before);
}

TEST_CASE("An undo stops when the rows are not what the edit left") {
    const Scratch scratch;
    const auto file = scratch / "a.cellar";
    REQUIRE(addVessel(*created(file), "Plover"));
    tamper(file, "UPDATE vessel SET name = 'Wren'");
    const auto before = bytesOf(file);
    {
        const auto book = opened(file);
        CHECK(keyOf(book->undo()) == "book.damaged");
        CHECK(book->readOnly());
    }
    CHECK(bytesOf(file) == before);
}

TEST_CASE("A damaged index does not pass off one row for another") {
    const Scratch scratch;
    const auto file = smallBook(scratch);
    const std::string good = bytesOf(file);
    int found = 0;
    for (auto at = good.find("Plover"); at != std::string::npos; at = good.find("Plover", at + 1)) {
        std::string bad = good;
        bad[at] = 'C'; // in the table, in the index of names, or in the history
        writeBytes(file, bad);
        const auto book = opened(file);
        const auto rows = book->rowsWhere("vessel", "name", std::string("Clover"));
        REQUIRE(rows);
        found += static_cast<int>(rows->size());
        CHECK((rows->empty() || book->damages().size() == 1));
        CHECK_FALSE(book->check()->sound());
    }
    CHECK(found == 1);
}

TEST_CASE("The check names broken references and what lies inside the file") {
    const Scratch scratch;
    const auto file = smallBook(scratch);
    tamper(file, "PRAGMA foreign_keys=OFF; DELETE FROM vessel");
    const auto report = opened(file)->check();
    REQUIRE(report);
    const auto has = [&](const std::string& key) {
        return std::any_of(report->damages.begin(), report->damages.end(), [&](const Damage& damage) {
            words(damage.what);
            return damage.what.key == key;
        });
    };
    CHECK(has("book.damage.reference"));
    CHECK(has("book.damage.tally"));
    CHECK_FALSE(has("book.damage.digest"));
}

} // namespace staveline::book
