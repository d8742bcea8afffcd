// SPDX-License-Identifier: GPL-3.0-or-later
#include "layers/source_tree.h"

#include "support/catch.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>

namespace staveline::layers {
namespace {

namespace fs = std::filesystem;

const fs::path top = STAVELINE_SOURCE_DIR;

std::string read(const fs::path& path) {
    std::ifstream in(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

bool leftOut(const fs::path& folder) {
    const auto name = folder.filename().string();
    return name.starts_with("build") || (name.starts_with('.') && name != ".ci");
}

} // namespace

std::vector<TreeFile> filesUnder(const std::vector<std::string>& folders) {
    std::vector<TreeFile> files;
    for (const auto& folder : folders) {
        const auto start = folder.empty() ? top : top / folder;
        if (!fs::exists(start))
            continue;
        for (auto at = fs::recursive_directory_iterator(start); at != fs::recursive_directory_iterator(); ++at) {
            if (at->is_directory() && leftOut(at->path()))
                at.disable_recursion_pending();
            if (at->is_regular_file())
                files.push_back({fs::relative(at->path(), top).generic_string(), read(at->path())});
        }
    }
    std::sort(files.begin(), files.end(), [](const auto& a, const auto& b) { return a.path < b.path; });
    return files;
}

std::vector<TreeFile> generatedHeaders() {
    const auto folder = fs::path(STAVELINE_BUILD_DIR) / "generated";
    std::vector<TreeFile> files;
    if (fs::exists(folder))
        for (const auto& entry : fs::recursive_directory_iterator(folder))
            if (entry.is_regular_file())
                files.push_back({"core/" + fs::relative(entry.path(), folder).generic_string(), read(entry.path())});
    return files;
}

const std::vector<TreeFile>& programSources() {
    static const auto sources = [] {
        auto files = filesUnder({"core", "ui", "app"});
        std::erase_if(files, [](const TreeFile& file) { return !file.isCpp(); });
        return files;
    }();
    return sources;
}

void checkNone(const std::vector<std::string>& violations) {
    std::string list;
    for (const auto& violation : violations)
        list += "\n  " + violation;
    INFO(violations.size() << " found:" << list);
    CHECK(violations.empty());
}

} // namespace staveline::layers
