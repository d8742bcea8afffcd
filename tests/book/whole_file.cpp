// SPDX-License-Identifier: GPL-3.0-or-later
// Papers and pictures beside the book: whole or not at all, and never in place of what is not theirs.
#include "book/whole_file.h"

#include "book/helpers.h"
#include "support/full_disk.h"

#include <sys/stat.h>
#include <unistd.h>

namespace staveline::book {

namespace {

std::vector<std::string> namesIn(const Scratch& scratch) {
    std::vector<std::string> names;
    for (const auto& entry : fs::directory_iterator(scratch.path()))
        names.push_back(entry.path().filename().string());
    std::sort(names.begin(), names.end());
    return names;
}

unsigned rightsOf(const fs::path& file) {
    return static_cast<unsigned>(fs::status(file).permissions()) & 07777U;
}

} // namespace

TEST_CASE("A file is written whole, and an earlier one is replaced with its rights") {
    const Scratch scratch;
    const auto file = scratch / "sheet.md";
    REQUIRE(keyOf(writeWhole(file, "first")).empty());
    CHECK(bytesOf(file) == "first");
    for (const unsigned rights : {0600U, 0640U, 0664U}) {
        fs::permissions(file, static_cast<fs::perms>(rights));
        REQUIRE(keyOf(writeWhole(file, "second, longer")).empty());
        CHECK(bytesOf(file) == "second, longer");
        CHECK(rightsOf(file) == rights);
    }
    REQUIRE(keyOf(writeWhole(file, "")).empty());
    CHECK(bytesOf(file).empty());
    REQUIRE(keyOf(writeWhole(file, "an empty file may be filled")).empty());
    CHECK(namesIn(scratch) == std::vector<std::string>{"sheet.md"});
}

TEST_CASE("A new file has the rights that any new file has") {
    const Scratch scratch;
    const mode_t before = ::umask(027);
    REQUIRE(writeWhole(scratch / "sheet.md", "words"));
    ::umask(before);
    CHECK(rightsOf(scratch / "sheet.md") == 0640U);
}

TEST_CASE("What may not be replaced stays as it is, with words") {
    const Scratch scratch;
    const auto file = smallBook(scratch);
    const auto book = bytesOf(file);
    fs::rename(file, scratch / "cellar.md");
    writeBytes(scratch / "victim.txt", "precious");
    fs::create_symlink("victim.txt", scratch / "link.md");
    fs::create_symlink("nowhere", scratch / "lost.md");
    fs::create_directory(scratch / "folder.md");
    REQUIRE(::mkfifo((scratch / "pipe.md").c_str(), 0600) == 0);
    tamper(scratch / "other.csv", "CREATE TABLE t (a)");
    const auto other = bytesOf(scratch / "other.csv");
    const auto names = namesIn(scratch);
    CHECK(keyOf(writeWhole(scratch / "cellar.md", "x")) == "book.is_database");
    CHECK(keyOf(writeWhole(scratch / "other.csv", "x")) == "book.is_database");
    CHECK(keyOf(writeWhole(scratch / "link.md", "x")) == "book.is_link");
    CHECK(keyOf(writeWhole(scratch / "lost.md", "x")) == "book.is_link");
    CHECK(keyOf(writeWhole(scratch / "folder.md", "x")) == "book.is_folder");
    CHECK(keyOf(writeWhole(scratch / "pipe.md", "x")) == "book.not_a_file");
    CHECK(keyOf(writeWhole(scratch / "no" / "a.md", "x")) == "book.no_such_folder");
    CHECK(bytesOf(scratch / "cellar.md") == book);
    CHECK(bytesOf(scratch / "other.csv") == other);
    CHECK(bytesOf(scratch / "victim.txt") == "precious");
    CHECK(fs::is_symlink(scratch / "link.md"));
    CHECK(fs::is_symlink(scratch / "lost.md"));
    CHECK(namesIn(scratch) == names);
}

TEST_CASE("The file of another user stays as it is") {
    if (::geteuid() != 0)
        return; // only root can give files away
    const Scratch scratch;
    writeBytes(scratch / "theirs.md", "theirs");
    REQUIRE(::chown((scratch / "theirs.md").c_str(), 12345, 12345) == 0);
    CHECK(keyOf(writeWhole(scratch / "theirs.md", "x")) == "book.of_another");
    CHECK(bytesOf(scratch / "theirs.md") == "theirs");
}

TEST_CASE("Files of others beside the target are neither used nor removed") {
    const Scratch scratch;
    const auto file = smallBook(scratch);
    writeBytes(scratch / "victim.txt", "precious");
    const std::string own = ".part" + std::to_string(::getpid());
    for (const std::string& target : {std::string("sheet.md"), std::string("copy.cellar")}) {
        for (const std::string& ending : {std::string(".part"), own, own + "-2"})
            writeBytes(scratch / (target + ending), "another program is at work");
        fs::create_symlink("victim.txt", scratch / (target + own + "-1"));
    }
    const auto names = namesIn(scratch);
    REQUIRE(keyOf(writeWhole(scratch / "sheet.md", "words")).empty());
    REQUIRE(keyOf(opened(file)->backup(scratch / "copy.cellar")).empty());
    CHECK(bytesOf(scratch / "victim.txt") == "precious");
    for (const auto& name : names)
        if (name.find(".part") != std::string::npos && !fs::is_symlink(scratch / name))
            CHECK(bytesOf(scratch / name) == "another program is at work");
    CHECK(namesIn(scratch).size() == names.size() + 2);
}

TEST_CASE("A full disk is a fault that leaves the earlier file and nothing else") {
    const Scratch scratch;
    const std::string large(100000, 'x');
    for (const bool earlier : {false, true}) {
        if (earlier)
            writeBytes(scratch / "sheet.md", "earlier");
        const auto names = namesIn(scratch);
        {
            const testing::FullDisk full(4096);
            CHECK(keyOf(writeWhole(scratch / "sheet.md", large)) == "book.cannot_create");
        }
        CHECK(namesIn(scratch) == names);
    }
    CHECK(bytesOf(scratch / "sheet.md") == "earlier");
}

} // namespace staveline::book
