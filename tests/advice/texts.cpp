// SPDX-License-Identifier: GPL-3.0-or-later
// Every text the adviser asks for exists, and none lies unused.
#include "advice/lever.h"
#include "quantity/text.h"
#include "support/catch.h"

#include <filesystem>
#include <fstream>
#include <regex>
#include <set>
#include <sstream>

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
    const std::regex made("keyFor\\(\"(advice\\.\\w+)\", d, \"(\\w+)\"\\)");
    for (std::sregex_iterator it(source.begin(), source.end(), made), end; it != end; ++it)
        for (auto d : allDimensions)
            keys.insert((*it)[1].str() + '.' + std::string(name(d)) + '.' + (*it)[2].str());
    return keys;
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
    for (const auto& [key, text] : builtInTexts().all()) {
        if (!key.starts_with("advice.") || key.starts_with("advice.short."))
            continue;
        INFO(key);
        const auto last = key.substr(key.rfind('.') + 1);
        const bool whole = source.find('"' + key + '"') != std::string::npos;
        const bool ending =
            source.find('"' + last + '"') != std::string::npos || source.find('.' + last + '"') != std::string::npos;
        // The last part is a choice of a lever, a dimension, a kind of evidence or a verdict.
        const bool choice = key.starts_with("advice.word.sacchPath.") || key.starts_with("advice.value.") ||
                            key.starts_with("advice.explanation.dimension.") ||
                            key.starts_with("advice.explanation.evidence.") ||
                            key.starts_with("advice.explanation.map.") || key.starts_with("advice.why.");
        CHECK((whole || ending || choice));
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
        const bool isYeast = lever->id == "yeast" && builtInPantry().yeast(way);
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
