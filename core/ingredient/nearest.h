// SPDX-License-Identifier: GPL-3.0-or-later
// The known id that looks most like a mistyped one.
#pragma once

#include "quantity/message.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace staveline::ingredient {

/// Fewest insertions, deletions, replacements and swaps of neighbours that turn one text into the other; ASCII case
/// does not count.
[[nodiscard]] std::size_t editDistance(std::string_view a, std::string_view b);

struct Known {
    std::string_view id, name;
};
/// The entry whose id or name is nearest to `typed`, or holds it; the first of equals. None is near enough to have been
/// meant: nullptr.
[[nodiscard]] const Known* nearest(std::string_view typed, const std::vector<Known>& known);
/// What to say to a mistyped word: the one that was meant, else all there is. `known` is not empty.
[[nodiscard]] Message offer(std::string_view typed, const std::vector<Known>& known);

} // namespace staveline::ingredient
