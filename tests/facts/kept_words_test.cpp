// SPDX-License-Identifier: GPL-3.0-or-later
#include "facts/kept_words.h"
#include "quantity/language.h"

#include "support/catch.h"

namespace staveline::facts {

TEST_CASE("Kept words are told in the units and the language of the day they are read") {
    const auto kept = keptWords(say("advice.word.bitterness").with("to", Ibu{14}).with("from", Ibu{6.5}));
    CHECK(toldWords(kept) == "14 IBU in the refill instead of 6.5 IBU");
    const auto warm = keptWords(say("advice.word.cellarTemperature").with("to", Celsius{16}).with("from", Celsius{12}));
    CHECK(toldWords(warm) == "Cellar at 16 °C instead of 12 °C");
    DisplayUnits american;
    american.temperature = DisplayUnits::Temperature::fahrenheit;
    CHECK(toldWords(warm, american) == "Cellar at 61 °F instead of 54 °F");
    speak(languageFor("de"));
    CHECK(toldWords(kept).find("6,5") != std::string::npos);
    CHECK(toldWords(kept).find("instead") == std::string::npos);
    speak(languages().front());
}

TEST_CASE("Every kind of argument comes back from a book as it was") {
    Message all = say("k");
    all.arguments = {{"text", std::string("a \"name\" {x}"), {}},
                     {"count", std::int64_t{3}, {}},
                     {"day", Day{std::chrono::year{2026} / 3 / 2}, {}},
                     {"number", Amount{Number{2.5, 2}}, {}},
                     {"rough", roughly(Litres{2013}), {}}};
    for (int kind = 0; kind <= static_cast<int>(UnitKind::smallVolume); ++kind) {
        Amount amount(Number{1.25, 3});
        amount.kind = static_cast<UnitKind>(kind);
        all.arguments.push_back({"a" + std::to_string(kind), amount, {}});
    }
    for (const auto& argument : all.arguments) {
        const auto text = "{" + argument.name + "}"; // no such key: the message is its own template
        const Message one = say(text).with(argument.name, argument.value);
        CHECK(toldWords(keptWords(one)) == render(one));
    }
}

TEST_CASE("Kept words within kept words do not swell") {
    std::string all = keptWords(say("desk.change.rest").with("at", Celsius{62}).with("minutes", Minutes{40}));
    for (int i = 0; i < 12; ++i)
        all = keptWords(say("desk.change.and").with("all", all).with("next", std::string("x")));
    CHECK(all.size() < 1500);
    CHECK(toldWords(all) == "62 °C for 40 min, x, x, x, x, x, x, x, x, x, x, x, x");
}

TEST_CASE("What older books and brewers wrote is told as it stands") {
    for (const char* text :
         {"Record a draw of Plover", "", "{", R"({"say":)", R"({"say":7})",
          R"({"say":"{a}","with":{"a":{"of":"mass"}}})", R"({"say":"{a}","with":{"a":{"day":"never"}}})"})
        CHECK(toldWords(text) == text);
}

} // namespace staveline::facts
