// SPDX-License-Identifier: GPL-3.0-or-later
// Reads the tree these tests judge.
#pragma once

#include <string>
#include <vector>

namespace staveline::layers {

struct TreeFile {
    std::string path; ///< from the top of the tree, with '/'
    std::string text;

    [[nodiscard]] bool isHeader() const { return path.ends_with(".h"); }
    [[nodiscard]] bool isCpp() const { return isHeader() || path.ends_with(".cpp"); }
};

/// All files under `folders` (of the top), sorted by path; build folders and hidden ones other than .ci are left out.
/// An empty folder name reads the whole tree.
[[nodiscard]] std::vector<TreeFile> filesUnder(const std::vector<std::string>& folders);
/// What the build writes beside core/ (build folder, generated/), under the path it is included by: core/advice/....
[[nodiscard]] std::vector<TreeFile> generatedHeaders();
/// The C++ files of the program: core, ui, app.
[[nodiscard]] const std::vector<TreeFile>& programSources();

/// Fails the running case with the whole list, one a line.
void checkNone(const std::vector<std::string>& violations);

} // namespace staveline::layers
