// SPDX-License-Identifier: GPL-3.0-or-later
// Private to the room: the shares of a blend that come nearest to its aims.
#pragma once

#include "finishing/blend.h"

namespace staveline::finishing {

using Shares = std::vector<double>; ///< in the order of the sources; they sum to 1

[[nodiscard]] std::vector<Trait> aimedAt(const BlendQuestion& question);
/// Gauss and Newton from several starts, each step by exact least squares within the stocks. `question` is checked.
[[nodiscard]] Shares bestShares(const BlendQuestion& question, const std::vector<Trait>& aims);

} // namespace staveline::finishing
