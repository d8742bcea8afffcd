// SPDX-License-Identifier: GPL-3.0-or-later
// Each room of core keeps to a namespace of its own; the vocabulary in quantity is everybody's.
#include "layers/source_tree.h"

#include "support/catch.h"

#include <fmt/core.h>
#include <regex>
#include <set>

namespace staveline::layers {
namespace {

std::string namespaceOf(const std::string& room) {
    return room == "quantity" ? "staveline" : "staveline::" + room;
}

/// Namespaces opened at the left margin that are neither the room's nor inside it. Another room's may be opened only to
/// declare its types.
std::vector<std::string> strayNamespaces(const TreeFile& file) {
    static const std::regex opened(R"(\nnamespace (staveline[\w:]*) \{\n((?:(?:struct|class) \w+;\n)*)(\})?)");
    const std::string room = file.path.substr(5, file.path.find('/', 5) - 5);
    const std::string own = namespaceOf(room);
    std::vector<std::string> found;
    for (std::sregex_iterator it(file.text.begin(), file.text.end(), opened), end; it != end; ++it) {
        const std::string name = (*it)[1].str();
        const bool declaresOnly = (*it)[2].length() > 0 && (*it)[3].matched;
        const bool inside = name == own || (room != "quantity" && name.starts_with(own + "::"));
        if (!inside && !declaresOnly)
            found.push_back(fmt::format("{}: namespace {} instead of {}", file.path, name, own));
    }
    return found;
}

} // namespace

TEST_CASE("Each room of core keeps to its own namespace") {
    std::vector<std::string> found;
    std::set<std::string> rooms;
    for (const auto& file : programSources()) {
        if (!file.path.starts_with("core/"))
            continue;
        rooms.insert(file.path.substr(5, file.path.find('/', 5) - 5));
        for (auto& stray : strayNamespaces(file))
            found.push_back(std::move(stray));
    }
    CHECK(rooms.size() > 8);
    checkNone(found);
}

TEST_CASE("A namespace of another room is found") {
    const auto stray = [](const char* path, const std::string& text) { return strayNamespaces({path, text}).size(); };
    CHECK(stray("core/vessel/a.h", "\nnamespace staveline {\nint a;\n}\n") == 1);
    CHECK(stray("core/vessel/a.h", "\nnamespace staveline::desk {\nint a;\n}\n") == 1);
    CHECK(stray("core/vessel/a.h", "\nnamespace staveline::vessel {\nint a;\n}\n") == 0);
    CHECK(stray("core/vessel/a.h", "\nnamespace staveline::vessel::cask {\nint a;\n}\n") == 0);
    CHECK(stray("core/vessel/a.h", "\nnamespace staveline::desk {\nclass Desk;\n} // namespace\n") == 0);
    CHECK(stray("core/quantity/a.h", "\nnamespace staveline {\nint a;\n}\n") == 0);
    CHECK(stray("core/quantity/a.h", "\nnamespace staveline::quantity {\nint a;\n}\n") == 1);
}

} // namespace staveline::layers
