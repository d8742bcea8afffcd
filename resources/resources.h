// SPDX-License-Identifier: GPL-3.0-or-later
// Built-in data and texts, embedded at build time.
#pragma once

#include <string_view>
#include <vector>

namespace staveline::resources {

/// Whole text of "data/grains.csv"; empty when there is no such file.
[[nodiscard]] std::string_view find(std::string_view path);
/// Texts of all files whose path starts with `folder`, sorted by path.
[[nodiscard]] std::vector<std::string_view> under(std::string_view folder);

} // namespace staveline::resources
