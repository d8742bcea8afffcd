// SPDX-License-Identifier: GPL-3.0-or-later
// What stands at the top of the tree is what a newcomer sees first: it stays short.
#include "layers/source_tree.h"

#include "quantity/language.h"
#include "support/catch.h"
#include "support/scratch.h"

#include <filesystem>
#include <regex>
#include <set>

namespace staveline::layers {
namespace {

/// Hidden files belong to tools; a build folder and the list for editors are made, not kept.
bool mayStandAtTop(const std::string& name) {
    static const std::set<std::string> kept = {
        "CHANGELOG.md", "CMakeLists.txt", "CMakePresets.json", "DEVELOPERS.md", "LICENSE", "README.md",
        "app",          "core",           "demo-data",         "resources",     "tests",   "ui"};
    static const std::set<std::string> made = {"build", "compile_commands.json"};
    return name.starts_with('.') || kept.contains(name) || made.contains(name);
}

/// Its versions, in their order.
std::vector<std::string> versionsIn(const std::string& changes) {
    static const std::regex heading("(^|\n)## ([0-9.]+)");
    std::vector<std::string> found;
    for (std::sregex_iterator at(changes.begin(), changes.end(), heading), end; at != end; ++at)
        found.push_back((*at)[2].str());
    return found;
}
std::size_t count(const std::string& text, const std::string& part) {
    std::size_t found = 0;
    for (auto at = text.find(part); at != std::string::npos; at = text.find(part, at + part.size()))
        ++found;
    return found;
}

} // namespace

TEST_CASE("What is new is told in every language, version by version") {
    const std::string english = testing::readAll(std::filesystem::path(STAVELINE_SOURCE_DIR) / "CHANGELOG.md");
    REQUIRE_FALSE(versionsIn(english).empty());
    for (const Language& language : languages()) {
        if (language == languages().front())
            continue;
        const auto told = std::filesystem::path(STAVELINE_SOURCE_DIR) / "resources" / "changes" /
                          (std::string(language.code) + ".md");
        CAPTURE(told);
        const std::string changes = testing::readAll(told);
        CHECK(versionsIn(changes) == versionsIn(english));
        for (const char* mark : {"\n- ", "\n**"})
            CHECK(count(changes, mark) == count(english, mark));
    }
}

TEST_CASE("The top of the tree holds what it is meant to hold, and nothing else") {
    std::vector<std::string> others;
    std::size_t seen = 0;
    for (const auto& entry : std::filesystem::directory_iterator(STAVELINE_SOURCE_DIR)) {
        ++seen;
        if (const auto name = entry.path().filename().string(); !mayStandAtTop(name))
            others.push_back(name + " stands at the top of the tree");
    }
    CHECK(seen > 10);
    checkNone(others);
}

TEST_CASE("A folder too many at the top is found") {
    CHECK(mayStandAtTop("core"));
    CHECK(mayStandAtTop(".ci"));
    CHECK(mayStandAtTop("build"));
    CHECK_FALSE(mayStandAtTop("cmake"));
    CHECK_FALSE(mayStandAtTop("build-asan"));
    CHECK_FALSE(mayStandAtTop("notes.txt"));
}

} // namespace staveline::layers
