// SPDX-License-Identifier: GPL-3.0-or-later
// The command line and every paper in another language. In the pseudo-language every letter of ours is accented, so a
// word in plain letters was never looked up, unless a brewer wrote it or it is the same in every language.
#include "program.h"

#include "resources/resources.h"

#include <nlohmann/json.hpp>

#include <regex>
#include <set>

using namespace staveline;
using namespace staveline::testing;

namespace {

constexpr const char* pseudo = "--today 2026-06-01 --language en-XA ";
constexpr const char* german = "--today 2026-06-01 --language de ";

struct Sample : Terminal {
    Sample() { expect("--today 2026-06-01 new s.cellar --sample"); }
};

/// Letters and those beyond ASCII, so that an accented word is one.
std::set<std::string> wordsIn(const std::string& text) {
    static const std::regex word("[A-Za-z\x80-\xff]+");
    std::set<std::string> words;
    for (std::sregex_iterator at(text.begin(), text.end(), word), end; at != end; ++at)
        words.insert(at->str());
    return words;
}

/// What the sample's brewers wrote, units, and words of computers.
const std::set<std::string>& sameInAll() {
    static const std::set<std::string> words =
        wordsIn(std::string(resources::find("demo-data/sample-cellar.json")) +
                " IBU EBC SRM bar psi min vol gal sheet pdf cellar Staveline book file");
    return words;
}

/// Words of three plain letters or more that were never looked up.
std::set<std::string> plainWords(const std::string& text) {
    auto words = wordsIn(text);
    std::erase_if(words, [](const std::string& word) {
        const bool plain = std::all_of(word.begin(), word.end(), [](char c) { return (c & 0x80) == 0; });
        return !plain || word.size() < 3 || sameInAll().contains(word);
    });
    return words;
}

void checkLookedUp(const std::string& what, const std::string& text) {
    std::string all;
    for (const auto& word : plainWords(text))
        all += word + ' ';
    INFO(what);
    CHECK(all.empty());
    CHECK(text.size() > 20);
}

} // namespace

TEST_CASE_METHOD(Sample, "every answer of the command line is looked up", "[app][language]") {
    for (const char* command :
         {"status s.cellar", "advise s.cellar --vessel Plover", "advise s.cellar --vessel Dunlin", "lots s.cellar",
          "whatif s.cellar --vessel Plover --draw 60", "package s.cellar --vessel Plover --litres 20 --volumes 2.4",
          "blend s.cellar --from Plover:40 --from Knot:40 --ta 6", "check s.cellar", "undo s.cellar", "redo s.cellar"})
        checkLookedUp(command, run(pseudo + std::string(command)).out);
}

TEST_CASE_METHOD(Sample, "every paper is looked up", "[app][language]") {
    for (const char* command :
         {"sheet s.cellar --vessel Plover --out -", "sheet s.cellar --vessel Knot --out -", "card s.cellar --out -",
          "package s.cellar --vessel Plover --litres 20 --volumes 2.4 --rating-bar 5 --out -",
          "package s.cellar --vessel Plover --litres 20 --volumes 2.4 --rating-bar 5 --label -"})
        checkLookedUp(command, run(pseudo + std::string(command)).out);
}

TEST_CASE_METHOD(Terminal, "the help of every command is looked up", "[app][language]") {
    static const std::regex optionWords(R"(/[^ ]*|--?[A-Za-z][A-Za-z-]*|\{[^}]*\}|\b[A-Z]{2,}(:[A-Z]+)?\b|\bus\b)");
    const std::string all = run(std::string(pseudo) + "--help").out;
    std::set<std::string> commands;
    static const std::regex line(R"(\n  ([a-z]+) +\[)");
    for (std::sregex_iterator at(all.begin(), all.end(), line), end; at != end; ++at)
        commands.insert((*at)[1]);
    CHECK(commands.size() >= 20);
    for (const auto& command : commands) {
        auto help = std::regex_replace(run(pseudo + command + " --help").out, optionWords, "");
        for (const auto& name : commands)
            help = std::regex_replace(help, std::regex("\\b" + name + "\\b"), "");
        checkLookedUp(command, help);
    }
}

TEST_CASE_METHOD(Sample, "German has its decimal comma in words and none in JSON", "[app][language]") {
    const std::string status = run(german + std::string("status s.cellar")).out;
    CHECK(status.find("Fass") != std::string::npos);
    CHECK(status.find(" L,") != std::string::npos);
    CHECK(std::regex_search(status, std::regex("[0-9],[0-9]")));
    CHECK_FALSE(std::regex_search(status, std::regex("[0-9]\\.[0-9]")));
    const auto json = nlohmann::json::parse(run(german + std::string("status s.cellar --json")).out);
    CHECK(json[0]["vessel"] == "Plover");
    CHECK(json[0]["volume_l"].is_number());
}

TEST_CASE_METHOD(Sample, "what a book keeps is told in the language of the reader", "[app][language]") {
    write("dip.json", R"({"kind": "dip", "vessel": "Plover", "on": "2026-06-01", "volume_l": 218.5})");
    CHECK(run(german + std::string("record s.cellar dip.json")).out.find("218,5") != std::string::npos);
    const std::string undone = run("--today 2026-06-01 undo s.cellar").out;
    CHECK(undone.find("218.5") != std::string::npos);
    CHECK(undone.find("Peilung") == std::string::npos);
}

TEST_CASE_METHOD(Terminal, "a language that there is not is refused, the machine's own never is", "[app][language]") {
    const Answer refused = run("--language xx status s.cellar");
    CHECK(refused.status == 2);
    CHECK(run("--help", "LC_ALL=xx_YY.UTF-8").status == 0);
    CHECK(run("--help", "LC_ALL=de_CH.UTF-8").out.find("Kellerbuch") != std::string::npos);
    CHECK(run("--help", "LC_ALL= LC_MESSAGES= LANG=C").out.find("Kellerbuch") == std::string::npos);
}
