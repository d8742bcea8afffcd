// SPDX-License-Identifier: GPL-3.0-or-later
// Memory runs out at the n-th request of the database, once or for good: nothing crashes, what is acknowledged is
// stored, what is not is said, and the book is sound. STAVELINE_STRIDE: 1 tries every n.
#include "book/helpers.h"

#include <sqlite3.h>

namespace staveline::book {

namespace {

sqlite3_mem_methods usual;
int requests = 0, failsAt = 0;
bool lasts = false, failed = false;

bool refuses() {
    ++requests;
    const bool now = failsAt > 0 && (requests == failsAt || (lasts && requests > failsAt));
    failed = failed || now;
    return now;
}
void* askFor(int bytes) {
    return refuses() ? nullptr : usual.xMalloc(bytes);
}
void* askForOther(void* had, int bytes) {
    return refuses() ? nullptr : usual.xRealloc(had, bytes);
}

/// While one lives the database asks here; no book may be open at its begin and end.
class ScarceMemory {
public:
    ScarceMemory() {
        sqlite3_shutdown();
        sqlite3_config(SQLITE_CONFIG_GETMALLOC, &usual);
        sqlite3_mem_methods scarce = usual;
        scarce.xMalloc = askFor;
        scarce.xRealloc = askForOther;
        sqlite3_config(SQLITE_CONFIG_MALLOC, &scarce);
        REQUIRE(sqlite3_initialize() == SQLITE_OK);
    }
    ~ScarceMemory() {
        sqlite3_shutdown();
        sqlite3_config(SQLITE_CONFIG_MALLOC, &usual);
        sqlite3_initialize();
    }
    ScarceMemory(const ScarceMemory&) = delete;
    ScarceMemory& operator=(const ScarceMemory&) = delete;

    void failAt(int request, bool forGood) const {
        requests = 0;
        failsAt = request;
        lasts = forGood;
        failed = false;
    }
    [[nodiscard]] bool plenty() const {
        failsAt = 0;
        return !failed;
    }
};

/// Opens, reads, writes, takes back, checks; how often the rows should have been changed.
int useOf(const fs::path& file) {
    const auto book = Book::open(file, sample::schema());
    if (!book) {
        words(book.error());
        return 0;
    }
    static_cast<void>((*book)->rows("vessel"));
    const auto added = addVessel(**book, "Dunlin");
    if (!added)
        words(added.error());
    const auto undone = added ? (*book)->undo() : Result<EditInfo>(fail(added.error()));
    if (added && !undone)
        words(undone.error());
    static_cast<void>((*book)->check());
    return added && !undone ? 1 : 0;
}

} // namespace

TEST_CASE("Memory that runs out in the database loses nothing and crashes nothing") {
    const auto stride = setting("STAVELINE_STRIDE", 29);
    const Scratch scratch;
    const auto good = smallBook(scratch), file = scratch / "scarce.cellar";
    const auto before = opened(good)->rows("vessel")->size();
    const ScarceMemory memory;
    int tried = 0;
    for (const bool forGood : {false, true})
        for (int n = 1;; n += static_cast<int>(stride)) {
            INFO("request " << n << (forGood ? " and all after it" : ""));
            fs::copy_file(good, file, fs::copy_options::overwrite_existing);
            memory.failAt(n, forGood);
            const int changed = useOf(file);
            const bool plenty = memory.plenty();
            const auto book = opened(file);
            CHECK(book->rows("vessel")->size() == before + static_cast<std::size_t>(changed));
            CHECK(book->check()->sound());
            ++tried;
            if (plenty)
                break;
        }
    WARN(tried << " times without memory");
}

} // namespace staveline::book
