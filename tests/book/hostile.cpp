// SPDX-License-Identifier: GPL-3.0-or-later
// Books made to do harm, with every digest right: nothing in them runs, nothing in them has no end.
#include "book/digest.h"
#include "book/file_book.h"
#include "book/helpers.h"
#include "book/identity.h"
#include "book/reader.h"
#include "book/values.h"

namespace staveline::book {

namespace {

/// As who knows how the digest of the tables is made would leave it.
void sealSchema(const fs::path& file) {
    Connection connection(file, OpenMode::readWrite);
    const auto digest = schemaDigest(connection);
    connection.execute("UPDATE meta SET value = " + std::to_string(digest) + " WHERE key = 'schema'");
}

} // namespace

TEST_CASE("A trigger or a view is damage, however well it is sealed, and does not run") {
    for (const char* stranger : {"CREATE TRIGGER harm AFTER INSERT ON vessel BEGIN DELETE FROM entry; END",
                                 "CREATE VIEW harm AS SELECT * FROM vessel"}) {
        const Scratch scratch;
        const auto file = smallBook(scratch);
        const auto content = sample::dump(*opened(file));
        tamper(file, stranger);
        sealSchema(file);
        INFO(stranger);
        const auto book = Book::open(file, sample::schema());
        REQUIRE(book);
        CHECK((*book)->readOnly());
        CHECK_FALSE((*book)->check()->sound());
        CHECK_FALSE(addVessel(**book, "Wren"));
        CHECK(sample::dump(**book) == content);
    }
}

TEST_CASE("A trigger does not run even where the book is not looked over") {
    const Scratch scratch;
    const auto file = smallBook(scratch);
    tamper(file, "CREATE TRIGGER harm AFTER UPDATE ON meta BEGIN DELETE FROM entry; END");
    Connection connection(file, OpenMode::readWrite);
    const auto before = connection.number("SELECT count(*) FROM entry");
    REQUIRE(before > 0);
    connection.execute("UPDATE meta SET value = value");
    CHECK(connection.number("SELECT count(*) FROM entry") == before);
}

TEST_CASE("A text longer than any that is written is refused, and is damage where it stands") {
    constexpr std::size_t longName = longestText - 100; // it stands in the words of its edit too
    const Scratch scratch;
    const auto file = smallBook(scratch);
    {
        const auto book = opened(file);
        const auto refused = addVessel(*book, std::string(longestText + 1, 'a'));
        REQUIRE_FALSE(refused);
        CHECK(refused.error().cause.key == "book.too_big");
        CHECK(addVessel(*book, std::string(longName, 'a')));
    }
    CHECK(opened(file)->check()->sound());
    tamper(file,
           "UPDATE vessel SET name = name || printf('%200s', 'a') WHERE length(name) = " + std::to_string(longName));
    const auto book = opened(file);
    const auto rows = book->rows("vessel");
    REQUIRE(rows);
    for (const auto& row : *rows)
        for (const auto& value : row.values)
            if (const auto* text = std::get_if<std::string>(&value))
                CHECK(text->size() <= longestText);
    CHECK_FALSE(book->check()->sound());
    CHECK(book->readOnly());
}

} // namespace staveline::book
