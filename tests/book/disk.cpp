// SPDX-License-Identifier: GPL-3.0-or-later
// Disks that are full, read-only or failing: what was acknowledged is stored, the rest is a fault in words.
#include "book/disk_layer.h"
#include "book/faults.h"
#include "book/helpers.h"
#include "book/process.h"

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Exception.h>
#include <functional>
#include <sqlite3.h>
#include <sys/mount.h>

namespace staveline::book {

namespace {

/// A small disk of its own, where the tests have the right to make one.
class SmallDisk {
public:
    SmallDisk() { mounted_ = ::mount("tmpfs", folder_.path().c_str(), "tmpfs", 0, "size=256k") == 0; }
    ~SmallDisk() {
        if (mounted_)
            ::umount2(folder_.path().c_str(), MNT_DETACH);
    }
    SmallDisk(const SmallDisk&) = delete;
    SmallDisk& operator=(const SmallDisk&) = delete;
    [[nodiscard]] bool here() const {
        if (!mounted_)
            WARN("no right to mount a disk: left out here, the file limit and the failing disk stand for it");
        return mounted_;
    }
    void makeReadOnly() const {
        REQUIRE(::mount("", folder_.path().c_str(), "", MS_REMOUNT | MS_RDONLY, "size=256k") == 0);
    }
    [[nodiscard]] fs::path operator/(const std::string& name) const { return folder_ / name; }
    [[nodiscard]] const fs::path& path() const { return folder_.path(); }

private:
    Scratch folder_{Medium::disk};
    bool mounted_ = false;
};

Result<std::int64_t> addEntry(Book& book) {
    return book.commit({"e", "e", "", ""}, [](Writer& writer) {
        return sample::insertBoth(writer, sample::entry(1, 1.0, std::string(500, 'n')));
    });
}

std::uint64_t contentOf(const fs::path& file) {
    return sample::fingerprint(sample::dump(*opened(file)));
}

/// One thing done to an open book.
using Deed = std::function<Result<void>(Book&)>;

struct Contents {
    std::uint64_t before, after;
};
Contents contentsAround(const fs::path& good, const Deed& deed) {
    const Scratch scratch;
    const auto file = scratch / "a.cellar";
    fs::copy_file(good, file);
    REQUIRE(deed(*opened(file)));
    return {contentOf(good), contentOf(file)};
}

/// All or nothing, and nothing only when that was said.
void checkOutcome(const fs::path& file, const Contents& contents, const Result<void>& done) {
    if (!done) {
        words(done.error());
        CHECK(ofStorage(done.error().kind));
    }
    const auto now = contentOf(file);
    CHECK((now == contents.after || (!done && now == contents.before)));
    CHECK(opened(file)->check()->sound());
}

/// Does the deed with the first, second, ... call to the disk failing, until none does. Returns how many did.
int failThrough(const fs::path& good, bool lasting, const Deed& deed) {
    const Scratch scratch;
    const auto file = scratch / "a.cellar";
    const auto contents = contentsAround(good, deed);
    FailingDisk disk;
    for (int n = 1;; ++n) {
        INFO("call " << n << (lasting ? " and on" : ""));
        fs::copy_file(good, file, fs::copy_options::overwrite_existing);
        const auto book = opened(file);
        disk.failAt(n, lasting);
        const auto done = deed(*book);
        const bool failed = disk.mend();
        checkOutcome(file, contents, done);
        book->reload();
        CHECK(keyOf(addVessel(*book, "Next")).empty()); // the same object goes on once the disk is whole
        CHECK(book->check()->sound());
        if (!failed) {
            CHECK(done);
            return n - 1;
        }
    }
}

void failBothWays(const fs::path& good, const Deed& deed, int atLeast) {
    for (const bool lasting : {false, true})
        CHECK(failThrough(good, lasting, deed) >= atLeast);
}

Result<void> ignoringValue(const Result<EditInfo>& result) {
    return result.map([](const EditInfo&) {});
}

} // namespace

TEST_CASE("An edit, an undo or a redo on a failing disk is done or not done, and said") {
    const Scratch scratch;
    const auto good = smallBook(scratch);
    failBothWays(
        good, [](Book& book) { return addEntry(book).map([](std::int64_t) {}); }, 10);
    failBothWays(
        good, [](Book& book) { return ignoringValue(book.undo()); }, 10);
    REQUIRE(opened(good)->undo());
    failBothWays(
        good, [](Book& book) { return ignoringValue(book.redo()); }, 10);
}

TEST_CASE("A copy on a failing disk is whole or not there, and nothing is left of it") {
    const Scratch scratch;
    const auto good = smallBook(scratch);
    const auto book = opened(good);
    const auto content = contentOf(good);
    const auto copy = scratch / "copy.cellar";
    FailingDisk disk;
    const auto other = opened(good);
    bool failed = true;
    for (int n = 1; failed; ++n) {
        INFO("call " << n);
        disk.failAt(n, n % 2 == 0);
        const auto done = other->backup(copy);
        failed = disk.mend();
        CHECK(fs::exists(copy) == done.has_value());
        if (done)
            CHECK(contentOf(copy) == content);
        else
            words(done.error());
        fs::remove(copy);
        CHECK(std::distance(fs::directory_iterator(scratch.path()), fs::directory_iterator()) == 1);
    }
    CHECK(other->check()->sound());
}

TEST_CASE("A book made on a failing disk is whole or not there, and nothing is left of it") {
    const Scratch scratch;
    const auto file = scratch / "new.cellar";
    FailingDisk disk;
    bool failed = true;
    for (int n = 1; failed; ++n) {
        INFO("call " << n);
        disk.failAt(n, n % 2 == 0);
        const auto made = keyOf(Book::create(file, sample::schema()));
        failed = disk.mend();
        CHECK((made.empty() || failed));
        if (fs::exists(file))
            CHECK(opened(file)->check()->sound());
        fs::remove(file);
        CHECK(fs::is_empty(scratch.path()));
    }
}

TEST_CASE("A book opened and read on a failing disk is read right or not at all") {
    const Scratch scratch;
    const auto file = smallBook(scratch);
    const auto before = bytesOf(file);
    const auto content = sample::dump(*opened(file));
    FailingDisk disk;
    bool failed = true;
    for (int n = 1; failed; ++n) {
        INFO("call " << n);
        disk.failAt(n, n % 2 == 0);
        {
            const auto book = Book::open(file, sample::schema());
            if (!book)
                words(book.error());
            else if (const auto rows = sample::dump(**book); rows.find("cannot be read") != 0)
                CHECK(rows == content);
        }
        failed = disk.mend();
    }
    CHECK(bytesOf(file) == before);
}

TEST_CASE("An upgrade on a failing disk leaves the old version or the new one") {
    const Scratch scratch;
    const auto good = smallBook(scratch);
    const auto content = sample::dump(*opened(good));
    FailingDisk disk;
    bool failed = true;
    for (int n = 1; failed; ++n) {
        INFO("call " << n);
        const Scratch place;
        const auto file = place / "a.cellar";
        fs::copy_file(good, file);
        disk.failAt(n, n % 2 == 0);
        {
            const auto book = Book::open(file, sample::nextMinor());
            if (!book)
                words(book.error());
            else
                for (const Message& notice : (*book)->notices())
                    words(notice);
        }
        failed = disk.mend();
        const auto book = opened(file, sample::nextMinor());
        CHECK_FALSE(book->readOnly());
        CHECK(book->check()->sound());
        CHECK(sample::dump(*opened(file)) == content);
    }
}

TEST_CASE("A file that may not grow: what was acknowledged is stored, the fault is in words") {
    const Scratch scratch;
    const auto file = smallBook(scratch);
    const auto limit = fs::file_size(file) + 40000;
    Process filler({"fill", file.string(), std::to_string(limit)});
    auto lines = filler.finish();
    REQUIRE(lines.size() > 5);
    CHECK(filler.exitStatus() == 3);
    CHECK((lines.back() == "book.disk_error" || lines.back() == "book.disk_full"));
    lines.pop_back();
    const auto book = opened(file);
    CHECK(std::to_string(book->revision()) + " " + std::to_string(contentOf(file)) == lines.back());
    CHECK(book->check()->sound());
    CHECK(addEntry(*book)); // without the limit
}

TEST_CASE("What a disk says is not covered by the clean-up that fails after it") {
    SQLite::Database database(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    REQUIRE_THROWS(database.exec("RELEASE changeset_apply")); // the connection's last error from here on
    const SQLite::Exception full(database.getHandle(), SQLITE_FULL);
    CHECK(faultOf(full).cause.key == "book.disk_full");
}

TEST_CASE("A full disk: what was acknowledged is stored, and writing goes on once there is room") {
    const SmallDisk disk;
    if (!disk.here())
        return;
    const auto file = disk / "a.cellar";
    const auto book = created(file);
    REQUIRE(addVessel(*book, "Plover"));
    writeBytes(disk / "ballast", std::string(30000, 'b'));
    std::size_t stored = 0;
    auto done = addEntry(*book);
    for (; done; done = addEntry(*book))
        ++stored;
    CHECK(keyOf(done) == "book.disk_full");
    CHECK(stored > 10);
    CHECK(book->rows("entry")->size() == stored);
    CHECK(keyOf(book->backup(disk / "copy.cellar")) == "book.disk_full");
    CHECK(keyOf(Book::create(disk / "new.cellar", sample::schema())) == "book.disk_full");
    CHECK(std::distance(fs::directory_iterator(disk.path()), fs::directory_iterator()) == 2);
    CHECK(opened(file)->rows("twin")->size() == stored);
    CHECK(opened(file)->check()->sound());
    fs::remove(disk / "ballast");
    CHECK(addEntry(*book));
    CHECK(book->check()->sound());
}

TEST_CASE("A disk that is read-only: the book is read, and the reason said") {
    const SmallDisk disk;
    if (!disk.here())
        return;
    const auto file = disk / "a.cellar";
    REQUIRE(addVessel(*created(file), "Plover"));
    disk.makeReadOnly();
    const auto book = opened(file);
    CHECK(book->readOnly());
    REQUIRE(book->notices().size() == 1);
    CHECK(book->notices().front().key == "book.notice.file_not_writable");
    CHECK(book->rows("vessel")->size() == 1);
    CHECK(keyOf(addVessel(*book, "Wren")) == "book.read_only");
    CHECK(book->check()->sound());
    CHECK(keyOf(Book::create(disk / "b.cellar", sample::schema())) == "book.cannot_create");
    const auto older = opened(file, sample::nextMinor());
    CHECK(older->readOnly());
    CHECK(older->rows("lot")->empty());
}

} // namespace staveline::book
