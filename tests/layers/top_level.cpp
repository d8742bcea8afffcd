// SPDX-License-Identifier: GPL-3.0-or-later
// What stands at the top of the tree is what a newcomer sees first: it stays short.
#include "layers/source_tree.h"

#include "support/catch.h"

#include <filesystem>
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

} // namespace

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
