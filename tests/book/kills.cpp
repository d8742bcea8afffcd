// SPDX-License-Identifier: GPL-3.0-or-later
// kill -9 at random moments: what was acknowledged is there, whole; at most one edit more. STAVELINE_KILLS sets how
// often, STAVELINE_SEED where to begin.
#include "book/helpers.h"
#include "book/process.h"

#include <thread>

namespace staveline::book {

namespace {

struct Acknowledged {
    std::int64_t revision = 0;
    std::uint64_t fingerprint = 0;
};

Acknowledged lastOf(const std::vector<std::string>& lines) {
    Acknowledged last;
    REQUIRE_FALSE(lines.empty());
    REQUIRE(std::sscanf(lines.back().c_str(), "%ld %lu", &last.revision, &last.fingerprint) == 2);
    return last;
}

void pause(std::uint64_t microseconds) {
    std::this_thread::sleep_for(std::chrono::microseconds(microseconds));
}

bool hasJournal(const fs::path& file) {
    return fs::exists(file.string() + "-journal");
}

/// Entries and their twins are written together, so they differ only in half an edit.
void checkTwins(const Book& book) {
    const auto entries = book.rows("entry"), twins = book.rows("twin");
    REQUIRE(entries);
    REQUIRE(twins);
    REQUIRE(entries->size() == twins->size());
    for (std::size_t i = 0; i < entries->size(); ++i)
        REQUIRE((*entries)[i].values == (*twins)[i].values);
}

void checkAfterKill(const fs::path& file, const Acknowledged& last) {
    const auto book = opened(file);
    CHECK_FALSE(book->readOnly());
    CHECK(book->revision() >= last.revision);     // none lost
    CHECK(book->revision() <= last.revision + 1); // the one that was under way
    if (book->revision() == last.revision)
        CHECK(sample::fingerprint(sample::dump(*book)) == last.fingerprint);
    checkTwins(*book);
    CHECK(book->check()->sound());
}

/// The whole history still leads back to the empty book and forth again.
void checkHistory(const fs::path& file) {
    const auto book = opened(file);
    const auto now = sample::fingerprint(sample::dump(*book));
    int undone = 0;
    for (; book->undoable(); ++undone)
        REQUIRE(keyOf(book->undo()).empty());
    CHECK(book->rows("vessel")->empty());
    for (; undone > 0; --undone)
        REQUIRE(keyOf(book->redo()).empty());
    CHECK(sample::fingerprint(sample::dump(*book)) == now);
}

} // namespace

TEST_CASE("A killed process loses no acknowledged edit and leaves no half one") {
    const auto seed = setting("STAVELINE_SEED", std::random_device{}());
    const auto kills = setting("STAVELINE_KILLS", 60);
    INFO("STAVELINE_SEED=" << seed);
    std::mt19937_64 random(seed);
    const Scratch scratch(Medium::disk);
    std::size_t journals = 0;
    std::int64_t acknowledged = 0;
    for (std::size_t i = 0; i < kills; ++i) {
        const auto file = scratch / ("kill" + std::to_string(i / 15) + ".cellar");
        if (!fs::exists(file))
            created(file).reset();
        Process victim({"edits", file.string(), std::to_string(random())});
        victim.waitForLine();
        pause(random() % 40000);
        victim.kill();
        const auto last = lastOf(victim.finish());
        CHECK(victim.exitStatus() == -1); // it did not stop by itself
        journals += hasJournal(file) ? 1U : 0U;
        checkAfterKill(file, last);
        if (i % 15 == 14)
            checkHistory(file);
        acknowledged = last.revision;
    }
    CHECK(acknowledged > 0);
    WARN(kills << " kills, " << journals << " in the middle of writing, seed " << seed);
}

TEST_CASE("A process killed while it upgrades a book leaves the old version or the new one") {
    const auto seed = setting("STAVELINE_SEED", std::random_device{}());
    const auto kills = setting("STAVELINE_KILLS", 60) / 3;
    INFO("STAVELINE_SEED=" << seed);
    std::mt19937_64 random(seed);
    const Scratch scratch;
    const auto old = smallBook(scratch, 40);
    const auto content = sample::dump(*opened(old));
    std::size_t upgraded = 0;
    for (std::size_t i = 0; i < kills; ++i) {
        const auto file = scratch / ("upgrade" + std::to_string(i) + ".cellar");
        fs::copy_file(old, file);
        Process victim({"upgrade", file.string()});
        pause(random() % 25000);
        victim.kill();
        static_cast<void>(victim.finish());
        opened(file).reset(); // rolls back what was under way
        const auto version = ask(file, "PRAGMA user_version");
        CHECK((version == 100 || version == 101));
        upgraded += version == 101 ? 1U : 0U;
        CHECK(ask(file, "SELECT count(*) FROM sqlite_schema WHERE name = 'lot'") == version - 100);
        const auto book = opened(file, sample::nextMinor());
        CHECK(sample::dump(*opened(file)) == content);
        CHECK(book->check()->sound());
    }
    WARN(kills << " kills, " << upgraded << " after the upgrade was done, seed " << seed);
}

} // namespace staveline::book
