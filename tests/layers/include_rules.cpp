// SPDX-License-Identifier: GPL-3.0-or-later
#include "layers/include_rules.h"

#include "layers/cpp_text.h"

#include <algorithm>
#include <fmt/core.h>
#include <map>
#include <optional>
#include <regex>
#include <set>

namespace staveline::layers {
namespace {

using Names = std::set<std::string, std::less<>>;

/// Rooms of core that each folder may include, beside its own.
const std::map<std::string, Names, std::less<>>& roomTable() {
    static const Names all = {"quantity", "ingredient", "brewing", "vessel", "culture",   "tasting", "forward",
                              "estimate", "advice",     "sheet",   "facts",  "finishing", "desk"};
    static const std::map<std::string, Names, std::less<>> table = {
        {"quantity", {}},
        {"ingredient", {"quantity"}},
        {"brewing", {"quantity", "ingredient"}},
        {"vessel", {"quantity"}},
        {"culture", {"quantity", "vessel"}},
        {"tasting", {"quantity"}},
        {"forward", {"quantity", "ingredient", "brewing", "vessel", "culture", "tasting"}},
        {"estimate", {"quantity", "ingredient", "brewing", "vessel", "culture", "tasting", "forward"}},
        {"advice", {"quantity", "ingredient", "brewing", "vessel", "culture", "tasting", "forward", "estimate"}},
        {"finishing", {"quantity", "vessel", "tasting"}},
        {"sheet",
         {"quantity", "ingredient", "brewing", "vessel", "culture", "tasting", "forward", "estimate", "advice",
          "finishing"}},
        {"book", {"quantity"}},
        {"facts", {"quantity", "ingredient", "brewing", "vessel", "tasting", "book"}},
        {"desk",
         {"quantity", "ingredient", "brewing", "vessel", "culture", "tasting", "forward", "estimate", "advice",
          "finishing", "sheet", "book", "facts"}},
        {"ui", all},
        {"app", all},
    };
    return table;
}

/// Standard headers that neither read nor write anything outside. Those whose numbers follow the locale are left out.
const Names pureHeaders = {
    "algorithm",   "any",      "array",         "atomic",        "bit",       "bitset",      "cassert",
    "cctype",      "charconv", "chrono",        "cmath",         "compare",   "complex",     "concepts",
    "cstddef",     "cstdint",  "cstring",       "deque",         "exception", "functional",  "initializer_list",
    "iterator",    "limits",   "list",          "map",           "memory",    "mutex",       "new",
    "numbers",     "numeric",  "optional",      "queue",         "ranges",    "set",         "shared_mutex",
    "span",        "stack",    "stdexcept",     "stop_token",    "string",    "string_view", "tuple",
    "type_traits", "typeinfo", "unordered_map", "unordered_set", "utility",   "variant",     "vector",
    "version"};
/// Files, processes, threads and clocks: for those who touch the machine.
const Names machineHeaders = {
    "cerrno",  "condition_variable", "cstdio", "cstdlib",  "ctime",  "filesystem", "fstream", "future", "iosfwd",
    "sstream", "system_error",       "thread", "unistd.h", "fcntl.h"};
const Names consoleHeaders = {"csignal", "iostream", "istream", "ostream", "iomanip"};
const Names machineFolders = {"book", "desk", "ui", "app"};

struct Library {
    std::regex header;
    Names folders; ///< empty: all
    bool cppOnly;  ///< costly to compile, so never in a header
};
const std::vector<Library>& libraries() {
    static const std::vector<Library> table = {
        {std::regex("tl/expected\\.hpp"), {}, false},
        {std::regex("fmt/\\w+\\.h"), {}, false},
        {std::regex("nlohmann/.*"), {"facts", "desk", "app"}, true},
        {std::regex("CLI/.*"), {"app"}, true},
        {std::regex("boost/(math|numeric/odeint)(/.*|\\.hpp)"),
         {"brewing", "culture", "tasting", "forward", "advice"},
         true},
        {std::regex("utf8proc\\.h"), {"quantity"}, true},
        {std::regex("libical/ical\\.h"), {"sheet"}, true},
        {std::regex("csv\\.h"), {"facts"}, true},
        {std::regex("xlsxwriter\\.h"), {"desk"}, true},
        {std::regex("pugixml\\.hpp"), {"desk"}, true},
        {std::regex("boost/crc\\.hpp"), {"book", "desk"}, true},
        {std::regex("(SQLiteCpp/.*|sqlite3\\.h)"), {"book"}, false},
        {std::regex("sys/(file|mman|stat|types|utsname|wait)\\.h"), {"book", "app"}, true},
        {std::regex("(Qt\\w+/)?Q\\w+"), {"ui", "app"}, false},
    };
    return table;
}

/// "quantity" for core/quantity/..., "ui" or "app" for the others.
std::string folderOf(std::string_view path) {
    if (path.starts_with("core/"))
        path.remove_prefix(5);
    return std::string(path.substr(0, path.find('/')));
}

std::string systemReason(const TreeFile& file, const std::string& folder, const std::string& header) {
    if (pureHeaders.contains(header) || (machineFolders.contains(folder) && machineHeaders.contains(header)) ||
        (folder == "app" && consoleHeaders.contains(header)))
        return "";
    const auto library = std::find_if(libraries().begin(), libraries().end(), [&](const Library& known) {
        return std::regex_match(header, known.header) && (known.folders.empty() || known.folders.contains(folder));
    });
    if (library == libraries().end())
        return fmt::format("<{}> is not allowed in {}", header, folder);
    if (library->cppOnly && file.isHeader())
        return fmt::format("<{}> belongs into .cpp files", header);
    return "";
}

/// Where a quoted include leads: from the top, from core/, or beside the including file.
std::optional<std::string> resolve(const TreeFile& file, const std::string& header, const Lookup& lookup) {
    const auto beside = file.path.substr(0, file.path.rfind('/') + 1) + header;
    for (const auto& path : {"core/" + header, header, beside})
        if (!lookup(path).empty())
            return path;
    return std::nullopt;
}

/// A header in a subfolder of a room, or one whose opening lines say "Private to", serves its own room only.
bool isPrivate(const std::string& path, const std::string& text) {
    const bool inSubfolder = path.starts_with("core/") && std::count(path.begin(), path.end(), '/') > 2;
    return inSubfolder || text.substr(0, text.find("#pragma")).find("Private to") != std::string::npos;
}

std::string ownReason(const TreeFile& file, const std::string& folder, const std::string& header,
                      const Lookup& lookup) {
    const auto path = resolve(file, header, lookup);
    if (!path)
        return fmt::format("\"{}\" is no file of the tree", header);
    const auto target = folderOf(*path);
    if (target == folder || *path == "resources/resources.h" || (folder == "app" && target == "ui"))
        return "";
    if (!path->starts_with("core/") || !roomTable().at(folder).contains(target))
        return fmt::format("{} may not include {}", folder, target);
    if (isPrivate(*path, lookup(*path)))
        return fmt::format("{} is private to {}", *path, target);
    return "";
}

} // namespace

std::vector<std::string> includeViolations(const TreeFile& file, const Lookup& lookup) {
    const auto folder = folderOf(file.path);
    if (!roomTable().contains(folder))
        return {fmt::format("{}: the include table has no folder {}", file.path, folder)};
    std::vector<std::string> found;
    for (const auto& include : includesOf(file.text)) {
        const auto reason =
            include.angled ? systemReason(file, folder, include.path) : ownReason(file, folder, include.path, lookup);
        if (!reason.empty())
            found.push_back(fmt::format("{}:{}: {}", file.path, include.line, reason));
    }
    return found;
}

} // namespace staveline::layers
