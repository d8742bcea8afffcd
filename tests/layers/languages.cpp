// SPDX-License-Identifier: GPL-3.0-or-later
// Every language says all that English says: no text is missing, none lost a placeholder, none was left in English.
#include "layers/text_rules.h"

#include "quantity/csv.h"
#include "quantity/language.h"
#include "support/catch.h"

#include <algorithm>
#include <array>
#include <fmt/core.h>
#include <regex>

namespace staveline::layers {
namespace {

/// Columns of the tables in resources/data whose cells are shown.
const std::map<std::string, std::vector<std::string>> shownColumns = {
    {"attributes", {"name", "anchor_0", "anchor_3", "anchor_5", "anchor_8", "anchor_10"}},
    {"faults", {"name", "cause", "action"}},
    {"levers", {"name"}},
    {"yeasts", {"name", "note"}},
    {"grains", {"name"}},
    {"hops", {"name"}},
    {"fruits", {"name"}},
    {"priming_sugars", {"name"}},
    {"bottles", {"name"}}};

void addCells(std::set<std::string>& texts) {
    for (const auto& file : filesUnder({"resources/data"}))
        for (const auto& [table, columns] : shownColumns)
            if (file.path.ends_with("/" + table + ".csv"))
                for (std::size_t row = 0; row < CsvTable::parse(file.text)->rows(); ++row)
                    for (const auto& column : columns)
                        texts.emplace(CsvTable::parse(file.text)->text(row, column));
}

/// Texts that are their own keys: of the window, of the tables and of the command line's help.
std::set<std::string> ownKeys() {
    static const std::regex words("[A-Za-z]{2}");
    std::set<std::string> all;
    for (const auto& file : programSources()) {
        if (file.path.starts_with("ui/"))
            for (const auto& text : windowTexts(file.text))
                all.insert(text);
        if (file.path == "app/main.cpp")
            for (const auto& text : longTexts(file.text))
                all.insert(text);
    }
    addCells(all);
    std::erase_if(all, [](const auto& text) { return !std::regex_search(text, words); });
    return all;
}

/// Of the window: "%1", "%n"; of the others: "{name}".
std::multiset<std::string> slots(const std::string& text) {
    static const std::regex slot(R"(\{[^{}]*\}|%[0-9n])");
    std::multiset<std::string> found;
    for (std::sregex_iterator at(text.begin(), text.end(), slot), end; at != end; ++at)
        found.insert(at->str());
    return found;
}
std::set<std::string> kindsOf(const std::multiset<std::string>& all) {
    return {all.begin(), all.end()};
}

/// Words that are the same in both languages.
bool isSameWord(const std::string& code, const std::string& text) {
    for (const auto& file : filesUnder({"tests/layers"}))
        if (file.path.ends_with(fmt::format("/same_in_{}.txt", code)))
            return ("\n" + file.text).find("\n" + text + "\n") != std::string::npos;
    return false;
}

struct Speech {
    std::string code;
    Templates texts;
};
std::vector<Speech> translations() {
    std::vector<Speech> all;
    for (const Language& language : languages().subspan(1))
        all.push_back({std::string(language.code),
                       readTemplates(filesUnder({fmt::format("resources/texts/{}", language.code)}))});
    return all;
}

} // namespace

TEST_CASE("Every language has every text, with its placeholders") {
    const auto english = readTemplates(filesUnder({"resources/texts/en"}));
    for (const auto& [code, texts] : translations()) {
        INFO(code);
        std::vector<std::string> wrong;
        for (const auto& [key, text] : english)
            if (const auto found = texts.find(key); found == texts.end())
                wrong.push_back("missing: " + key);
            else if (kindsOf(slots(text)) != kindsOf(slots(found->second)))
                wrong.push_back("other placeholders: " + key);
        for (const auto& text : ownKeys())
            if (const auto found = texts.find(text); found == texts.end())
                wrong.push_back("missing: " + text);
            else if (kindsOf(slots(text)) != kindsOf(slots(found->second)))
                wrong.push_back("other placeholders: " + text);
        checkNone(wrong);
    }
}

TEST_CASE("No language has a text that nothing asks for") {
    const auto english = readTemplates(filesUnder({"resources/texts/en"}));
    auto asked = ownKeys();
    asked.insert({"Options", "Positionals", "Print this help message and exit"}); // by the reader of the command line
    for (const auto& file : programSources()) {
        const auto all = literalsOf(file.text);
        asked.insert(all.begin(), all.end());
    }
    for (const auto& [code, texts] : translations()) {
        std::vector<std::string> wrong;
        for (const auto& [key, text] : texts) {
            const auto plain = key.ends_with("|1") ? key.substr(0, key.size() - 2) : key;
            if (!english.contains(plain) && !asked.contains(plain))
                wrong.push_back(fmt::format("{}: nothing asks for \"{}\"", code, key));
        }
        checkNone(wrong);
    }
}

TEST_CASE("No text is the same as in English but for words that both languages share") {
    const auto english = readTemplates(filesUnder({"resources/texts/en"}));
    static const std::regex word("[A-Za-z]{3}");
    for (const auto& [code, texts] : translations()) {
        std::vector<std::string> wrong;
        for (const auto& [key, text] : texts) {
            const auto source = english.find(key);
            const auto& original = source == english.end() ? key : source->second;
            const auto bare = std::regex_replace(text, std::regex(R"(\{[^{}]*\}|%[0-9n])"), "");
            if (text == original && std::regex_search(bare, word) && !isSameWord(code, text))
                wrong.push_back(fmt::format("{}: \"{}\" says the same as English: {}", code, key, text));
        }
        checkNone(wrong);
    }
}

TEST_CASE("A text of the window is found whole") {
    CHECK(windowTexts(R"~(tr("a " "b"); f(tr(x ? "c" : "d"), "e"); translate("Where", "what\u2026"); tr("x\ny"))~") ==
          std::vector<std::string>{"a b", "c", "d", "what…", "x\\ny"});
    CHECK(longTexts(R"~(f("--x", "some " "help"), "one")~") == std::vector<std::string>{"some help"});
}

} // namespace staveline::layers
