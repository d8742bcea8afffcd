// SPDX-License-Identifier: GPL-3.0-or-later
// Random edits, undos and redos, with the book closed now and then. STAVELINE_STEPS sets how many steps in one book,
// STAVELINE_SEQUENCES how many sequences of 50 edits, STAVELINE_SEED where to begin.
#include "book/helpers.h"

#include <map>

namespace staveline::book {

namespace {

/// What the book held after each edit that is applied; 0 for the empty book.
std::int64_t headOf(const Book& book) {
    const auto head = book.undoable();
    return head ? head->id : 0;
}

void undoAll(Book& book) {
    while (book.undoable())
        REQUIRE(keyOf(book.undo()).empty());
}
void redoAll(Book& book) {
    while (book.redoable())
        REQUIRE(keyOf(book.redo()).empty());
}

/// The steps chain: each starts where the one before it ended.
void checkSteps(const fs::path& file) {
    CHECK(ask(file, R"(
        WITH s AS (SELECT id, edit, way, head, lag(head) OVER (ORDER BY id) AS before FROM step)
        SELECT count(*) FROM s LEFT JOIN edit ON edit.id = s.edit WHERE NOT
          CASE way WHEN 1 THEN head = s.edit AND (before IS parent OR before IS s.edit)
                   WHEN -1 THEN before IS s.edit AND head IS parent
                   ELSE head IS before END)") == 0);
    CHECK(ask(file, "SELECT count(*) = max(id) FROM step") == 1);
}

} // namespace

TEST_CASE("Random edits, undos and redos: each head has one content, whatever the way to it") {
    const auto seed = setting("STAVELINE_SEED", 20260302);
    const auto steps = setting("STAVELINE_STEPS", 1500);
    INFO("STAVELINE_SEED=" << seed);
    const Scratch scratch;
    const auto file = scratch / "random.cellar";
    std::mt19937_64 random(seed);
    auto book = created(file);
    std::map<std::int64_t, std::string> contents{{0, sample::dump(*book)}};
    for (std::size_t i = 0; i < steps; ++i) {
        INFO("step " << i);
        const auto done = sample::randomStep(*book, random);
        REQUIRE(keyOf(done).empty());
        if (random() % 100 == 0) {
            book.reset();
            book = opened(file);
        }
        const auto now = sample::dump(*book);
        const bool same = contents.try_emplace(headOf(*book), now).first->second == now;
        REQUIRE(same);
    }
    CHECK(contents.size() > steps / 3);
    CHECK(book->damages().empty());
    CHECK(book->check()->sound());
    checkSteps(file);
}

TEST_CASE("Undo all gives the book as it began, redo all as it ended, bit for bit") {
    const auto seed = setting("STAVELINE_SEED", 4711);
    const auto rounds = setting("STAVELINE_SEQUENCES", 12);
    INFO("STAVELINE_SEED=" << seed);
    std::mt19937_64 random(seed);
    for (std::size_t round = 0; round < rounds; ++round) {
        const Scratch scratch;
        const auto file = scratch / "all.cellar";
        auto book = created(file);
        const auto begin = sample::fingerprint(sample::dump(*book));
        for (int i = 0; i < 50; ++i)
            REQUIRE(sample::randomEdit(*book, random));
        const auto end = sample::fingerprint(sample::dump(*book));
        book = opened(file);
        undoAll(*book);
        CHECK(sample::fingerprint(sample::dump(*book)) == begin);
        CHECK(ask(file, "SELECT sum(rows) FROM tally WHERE tbl IN ('vessel', 'entry', 'twin')") == 0);
        book = opened(file);
        redoAll(*book);
        CHECK(sample::fingerprint(sample::dump(*book)) == end);
        CHECK(book->check()->sound());
    }
}

} // namespace staveline::book
