// SPDX-License-Identifier: GPL-3.0-or-later
#include "quantity/text.h"

#include "support/property.h"

#include <array>

namespace staveline {
namespace {

Catalogue catalogue(std::string_view file) {
    const std::array files = {file};
    return Catalogue::parse(files);
}
std::string rendered(std::string_view text, const Message& message) {
    return render(message, {}, catalogue("a.key\t" + std::string(text) + "\n"));
}

} // namespace

TEST_CASE("A catalogue holds a key and its text a line") {
    const auto texts = catalogue("# comment\twith a tab\n\na.one\tFirst.\nno tab here\na.two\tSecond, a\tb.\n");
    CHECK(texts.all().size() == 2);
    CHECK(texts.find("a.one") == "First.");
    CHECK(texts.find("a.two") == "Second, a\tb.");
    CHECK(texts.has("a.one"));
    CHECK_FALSE(texts.has("a.on"));
}

TEST_CASE("The last line needs no line end, and CRLF does not stay in a text") {
    CHECK(catalogue("a\tText").find("a") == "Text");
    CHECK(catalogue("a\tText\r\nb\tMore\r\n").find("a") == "Text");
    CHECK(catalogue("a\t\n").find("a").empty());
    CHECK(catalogue("a\t\n").has("a"));
    CHECK(catalogue("").all().empty());
}

TEST_CASE("Several files make one catalogue; a later text wins") {
    const std::array<std::string_view, 2> files = {"a\tone\nb\ttwo\n", "b\tthree\n"};
    const auto texts = Catalogue::parse(files);
    CHECK(texts.find("a") == "one");
    CHECK(texts.find("b") == "three");
}

TEST_CASE("A missing text shows its key, so that it is seen") {
    CHECK(catalogue("").find("a.key") == "a.key");
    CHECK(render(say("a.missing").with("x", Litres{1}), {}, catalogue("")) == "a.missing");
}

TEST_CASE("Arguments go where their names stand") {
    CHECK(rendered("{a} and {b}, then {a}.", say("a.key").with("b", Litres{2}).with("a", Ph{3.4})) ==
          "3.40 and 2.0 L, then 3.40.");
    CHECK(rendered("{a}{b}", say("a.key").with("a", std::int64_t{1}).with("b", std::int64_t{2})) == "12");
    CHECK(rendered("No names.", say("a.key").with("a", Ph{3.4})) == "No names.");
}

TEST_CASE("A name that is not given stays visible") {
    CHECK(rendered("{a} of {b}", say("a.key").with("a", std::int64_t{1})) == "1 of {b}");
    CHECK(rendered("{}", say("a.key")) == "{}");
}

TEST_CASE("Braces that do not pair are plain text") {
    const auto message = say("a.key").with("a", std::int64_t{1});
    CHECK(rendered("{a} {a", message) == "1 {a");
    CHECK(rendered("a} {a}", message) == "a} 1");
    CHECK(rendered("{", message) == "{");
}

TEST_CASE("What the brewer typed is never taken for a placeholder") {
    const auto message = say("a.key").with("name", std::string("{other}")).with("other", std::string("secret"));
    CHECK(rendered("{name}", message) == "{other}");
}

TEST_CASE("The chosen units reach the arguments") {
    DisplayUnits units;
    units.volume = DisplayUnits::Volume::hectolitre;
    CHECK(render(say("a.key").with("v", Litres{88}), units, catalogue("a.key\tDraw {v}.\n")) == "Draw 0.88 hL.");
}

TEST_CASE("Choosing units does not touch the message") {
    const auto message = say("a.key").with("v", Litres{88.123456789}, OriginKind::moveTo);
    const auto before = message;
    DisplayUnits units;
    units.volume = DisplayUnits::Volume::usGallon;
    (void)render(message, units);
    CHECK(message == before);
    CHECK(message.arguments.front().origin == Origin(OriginKind::moveTo));
}

TEST_CASE("The built-in texts are found") {
    CHECK(builtInTexts().has("quantity.not_a_number"));
    CHECK(render(say("quantity.not_a_number").with("text", std::string("abc"))) == "\"abc\" is not a number.");
}

TEST_CASE("Any template renders") {
    CHECK_PROPERTY("total, and literal without braces", [](const std::string& text) {
        auto line = text;
        std::erase_if(line, [](char c) { return c == '\n' || c == '\r'; });
        const auto out = rendered(line, say("a.key"));
        if (line.find('{') == std::string::npos)
            RC_ASSERT(out == line);
    });
}

} // namespace staveline
