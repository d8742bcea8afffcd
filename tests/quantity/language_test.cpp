// SPDX-License-Identifier: GPL-3.0-or-later
// What is said in another language: words, months, decimal mark, forms for one thing.
#include "quantity/day_words.h"
#include "quantity/language.h"
#include "quantity/pseudo_words.h"
#include "quantity/text.h"

#include "support/catch.h"

namespace staveline {
namespace {

/// Speaks another language as long as it lives.
class Speaking {
public:
    explicit Speaking(std::string_view code) { speak(languageFor(code)); }
    ~Speaking() { speak(languages().front()); }
    Speaking(const Speaking&) = delete;
    Speaking& operator=(const Speaking&) = delete;
};

constexpr Day march{std::chrono::year{2026} / 3 / 2};

} // namespace

TEST_CASE("A language is found by the name of a locale, and English stands in") {
    CHECK(languageFor("de_AT.UTF-8").code == "de");
    CHECK(languageFor("de").code == "de");
    CHECK(languageFor("C.UTF-8").code == "en");
    CHECK(languageFor("").code == "en");
    CHECK(languageFor("den").code == "en");
    CHECK(languageFor("en-XA") == pseudoLanguage());
    CHECK(isLanguage("de"));
    CHECK_FALSE(isLanguage("xx"));
}

TEST_CASE("Numbers, days and ages are in the language spoken") {
    CHECK(show(Amount{Litres{88.5}}) == "88.5 L");
    CHECK(dayInWords(march) == "2 Mar 2026");
    CHECK(show(Amount{Days{1}}) == "1 day");
    const Speaking german("de");
    CHECK(show(Amount{Litres{88.5}}) == "88,5 L");
    CHECK(show(Amount{SpecificGravity{1.048}}) == "1,048");
    CHECK(dayInWords(march) == "2. Mär 2026"); // as DIN 1355 shortens the month, without its full stop
    CHECK(weekdayInWords(march) == "Mo");
    CHECK(show(Amount{Days{1}}) == "1 Tag");
    CHECK(show(Amount{Days{3}}) == "3 Tage");
    CHECK(show(Age{400}) == "13 Monate");
}

TEST_CASE("A message is told in the form for one thing where there is one") {
    const auto texts =
        Catalogue::parse(std::vector<std::string_view>{"k\t{count} brews\nk|1\t{count} brew\nm\t{count} x\n"});
    CHECK(render(say("k").with("count", std::int64_t{1}), {}, texts) == "1 brew");
    CHECK(render(say("k").with("count", std::int64_t{2}), {}, texts) == "2 brews");
    CHECK(render(say("m").with("count", std::int64_t{1}), {}, texts) == "1 x");
    CHECK(render(say("k"), {}, texts) == "{count} brews");
}

TEST_CASE("The pseudo-language keeps what is filled in and changes every letter") {
    CHECK(pseudoWords("Draw {volume}\\noff %1") == "[Ðŕàŵ {volume}\\nöƒƒ %1~~~~~~~]");
    const Speaking pseudo("en-XA");
    CHECK(inLanguage("never written down") == pseudoWords("never written down"));
    CHECK(render(say("quantity.empty")) == pseudoWords("Nothing is given here."));
}

} // namespace staveline
