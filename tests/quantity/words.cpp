// SPDX-License-Identifier: GPL-3.0-or-later
#include "quantity/words.h"

#include "support/catch.h"

namespace staveline {

namespace {

std::string causeOf(const Result<void>& checked) {
    return checked ? "" : checked.error().cause.key;
}

} // namespace

TEST_CASE("Names that a reader cannot tell apart have one key") {
    const std::string key = nameKey("Caf\u00e9 Plover");
    for (const char* twin :
         {"cafe\u0301 plover", "CAF\u00c9 PLOVER", " Caf\u00e9  Plover ", "Caf\u00e9\u00a0Plover", "Caf\u00e9Plover",
          "Caf\u00e9\u200b Plover", "\ufeffCaf\u00e9 Plover", "Caf\u00e9 Plo\u00adver", "\uff23af\u00e9 Plover"}) {
        INFO(twin);
        CHECK(nameKey(twin) == key);
    }
    for (const char* other : {"Cafe Plover", "Caf\u00e9 Plover 2", "Caf\u00e9 Pl\u00f8ver", "Caf\u00e9"}) {
        INFO(other);
        CHECK(nameKey(other) != key);
    }
    CHECK(nameKey("Stra\u00dfe") == nameKey("STRASSE"));
    CHECK(nameKey("Pl\xffover") != nameKey("Pl\xfeover"));
    CHECK(nameKey("").empty());
}

TEST_CASE("A name has something to see in it, no controls and an end") {
    for (const char* good : {"Plover", "5\" keg", "Brew 31", "\u706b", "Caf\u00e9 No. 4", "x"})
        CHECK(checkName(good, "/name"));
    for (const char* blank : {"", " ", "   ", "\u00a0", "\u200b", "\ufeff \u200b", "\u3000"}) {
        INFO('"' << blank << '"');
        CHECK(causeOf(checkName(blank, "/name")) == "quantity.blank_name");
    }
    for (const char* steering :
         {"Plo\nver", "\tPlover", "Plover\x1b[31m", "Plover\x7f", "a\u202eb", "a\u2066b", "a\u2028b", "a\u0085b"}) {
        INFO(steering);
        CHECK(causeOf(checkName(steering, "/name")) == "quantity.unseen");
    }
    CHECK(causeOf(checkName(std::string("Plo\0ver", 7), "/name")) == "quantity.unseen");
    CHECK(causeOf(checkName("Pl\xffover", "/name")) == "quantity.not_utf8");
    CHECK(causeOf(checkName("\xed\xa0\x80", "/name")) == "quantity.not_utf8"); // half of a pair
    CHECK(checkName(std::string(longestName, 'a'), "/name"));
    CHECK(causeOf(checkName(std::string(longestName + 1, 'a'), "/name")) == "quantity.too_long");
    std::string accents;
    for (std::size_t i = 0; i < longestName; ++i)
        accents += "\u00e9"; // characters count, not bytes
    CHECK(checkName(accents, "/name"));
    CHECK(checkName(" ", "/name").error().path == "/name");
}

TEST_CASE("A line may be empty and long, a note may have lines") {
    CHECK(checkLine("", "/lot"));
    CHECK(checkLine(std::string(longestLine, 'a'), "/lot"));
    CHECK(causeOf(checkLine(std::string(longestLine + 1, 'a'), "/lot")) == "quantity.too_long");
    CHECK(causeOf(checkLine("two\nlines", "/lot")) == "quantity.unseen");
    CHECK(checkProse("two\r\nlines\tand a tab", "/note"));
    CHECK(causeOf(checkProse("\x1b[2J", "/note")) == "quantity.unseen");
    CHECK(checkProse(std::string(longestProse, 'a'), "/note"));
    CHECK(causeOf(checkProse(std::string(longestProse + 1, 'a'), "/note")) == "quantity.too_long");
}

} // namespace staveline
