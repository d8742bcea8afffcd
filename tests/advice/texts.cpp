// SPDX-License-Identifier: GPL-3.0-or-later
// Every text the adviser asks for exists, and none lies unused.
#include "advice/lever.h"
#include "quantity/text.h"
#include "support/catch.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <regex>
#include <set>
#include <sstream>
#include <vector>

using namespace staveline;
using namespace staveline::advice;

namespace {

std::string contents(const std::filesystem::path& path) {
    std::ifstream in(path);
    std::ostringstream out;
    out << in.rdbuf();
    return out.str();
}

std::string allSources() {
    std::string text;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(STAVELINE_SOURCE_DIR "/core/advice"))
        if (entry.path().extension() == ".cpp")
            text += contents(entry.path());
    return text;
}

/// Keys written out in the source, and those put together from a stem, a dimension and an ending.
std::set<std::string> keysAskedFor(const std::string& source) {
    std::set<std::string> keys;
    const std::regex whole("\"((?:advice|caution)\\.[A-Za-z.]*[A-Za-z])\"");
    for (std::sregex_iterator it(source.begin(), source.end(), whole), end; it != end; ++it)
        keys.insert((*it)[1]);
    const std::regex made("keyFor\\(\"(advice\\.\\w+)\", d, [^\")]*\"(\\w+)\"(?: : \"(\\w+)\")?\\)");
    for (std::sregex_iterator it(source.begin(), source.end(), made), end; it != end; ++it)
        for (auto d : allDimensions)
            for (const auto& ending : {(*it)[2].str(), (*it)[3].str()})
                if (!ending.empty())
                    keys.insert((*it)[1].str() + '.' + std::string(name(d)) + '.' + ending);
    return keys;
}

/// A key that the sources put together, as a pattern; each group is a word that was filled in.
struct Made {
    std::regex pattern;
    bool anyWord = false; ///< of a choice of a lever or a kind of evidence, which are not named in the sources
};

std::vector<Made> madeKeys(const std::string& source) {
    std::vector<Made> made;
    const std::regex literal("\"(advice\\.[A-Za-z.{}]*[.}]|advice\\.[A-Za-z.]*\\{\\}[A-Za-z.{}]*)\"");
    for (std::sregex_iterator it(source.begin(), source.end(), literal), end; it != end; ++it) {
        auto text = (*it)[1].str();
        const bool stem = text.back() == '.';
        const bool evidence = text.find(".evidence.") != std::string::npos;
        text = std::regex_replace(text, std::regex("\\."), "[.]");
        text = std::regex_replace(text, std::regex("\\{\\}"), "(\\w+)") + (stem ? "(.+)" : "");
        made.push_back({std::regex(text), stem || evidence});
    }
    made.push_back({std::regex("advice[.]explanation[.](\\w+)[.](title|formula)"), false}); // link()
    return made;
}

/// Some pattern makes the key, of words that the sources name.
bool isMade(const std::string& key, const std::vector<Made>& made, const std::string& source) {
    const auto named = [&](const std::string& word) {
        return std::any_of(allDimensions.begin(), allDimensions.end(), [&](Dimension d) { return name(d) == word; }) ||
               source.find('"' + word + '"') != std::string::npos || source.find('.' + word + '"') != std::string::npos;
    };
    return std::any_of(made.begin(), made.end(), [&](const Made& each) {
        std::smatch words;
        return std::regex_match(key, words, each.pattern) &&
               (each.anyWord || std::all_of(words.begin() + 1, words.end(),
                                            [&](const std::ssub_match& word) { return named(word.str()); }));
    });
}

const std::set<std::string>& stems() {
    static const std::set<std::string> all = {"advice.reason", "advice.limit", "advice.short"};
    return all;
}

} // namespace

TEST_CASE("every text key in the adviser's sources is in the catalogue") {
    const auto keys = keysAskedFor(allSources());
    CHECK(keys.size() > 80);
    for (const auto& key : keys) {
        INFO(key);
        CHECK((builtInTexts().has(key) || stems().contains(key)));
    }
}

TEST_CASE("every text of the adviser is asked for somewhere") {
    const auto source = allSources();
    const auto whole = keysAskedFor(source);
    const auto made = madeKeys(source);
    CHECK_FALSE(isMade("advice.why.funk.later", made, source));
    for (const auto& [key, text] : builtInTexts().all()) {
        if (!key.starts_with("advice.") || key.starts_with("advice.short."))
            continue;
        INFO(key);
        CHECK((whole.contains(key) || isMade(key, made, source)));
    }
}

TEST_CASE("short phrases belong to a lever and to a way it can go") {
    for (const auto& [key, text] : builtInTexts().all()) {
        if (!key.starts_with("advice.short."))
            continue;
        INFO(key);
        const auto rest = key.substr(std::string("advice.short.").size());
        const auto* lever = findLever(rest.substr(0, rest.find('.')));
        REQUIRE(lever);
        const auto way = rest.find('.') == std::string::npos ? std::string() : rest.substr(rest.find('.') + 1);
        const auto& choices = rowOf(*lever).choices;
        const bool isChoice = std::find(choices.begin(), choices.end(), way) != choices.end();
        const bool isYeast = lever->id == "yeast" && ingredient::builtInPantry().yeast(way);
        CHECK((way.empty() || way == "up" || way == "down" || way == "new" || isChoice || isYeast));
    }
}

TEST_CASE("texts are plain: no exclamation, no double space, no word of the trade unexplained") {
    for (const auto& [key, text] : builtInTexts().all()) {
        if (!key.starts_with("advice."))
            continue;
        INFO(key);
        CHECK(text.find('!') == std::string::npos);
        CHECK(text.find("  ") == std::string::npos);
        CHECK(text.size() < 260);
        for (const auto* jargon : {"POF", "SID", "Jacobian", "lambda", "f =", "sd "})
            CHECK(text.find(jargon) == std::string::npos);
    }
}

TEST_CASE("braces in a text are closed and hold a name") {
    const std::regex placeholder("\\{[a-zA-Z]+\\}");
    for (const auto& [key, text] : builtInTexts().all()) {
        if (!key.starts_with("advice."))
            continue;
        INFO(key);
        const auto bare = std::regex_replace(text, placeholder, "");
        CHECK(bare.find('{') == std::string::npos);
        CHECK(bare.find('}') == std::string::npos);
    }
}
