// SPDX-License-Identifier: GPL-3.0-or-later
// The table of who may include what. A folder and a header that are not listed are refused.
#pragma once

#include "layers/source_tree.h"

#include <functional>

namespace staveline::layers {

/// Text of a file of the tree by its path; empty when there is none.
using Lookup = std::function<std::string(const std::string& path)>;

/// One line per include that is not allowed: "path:line: reason".
[[nodiscard]] std::vector<std::string> includeViolations(const TreeFile& file, const Lookup& lookup);

} // namespace staveline::layers
