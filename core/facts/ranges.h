// SPDX-License-Identifier: GPL-3.0-or-later
// Ranges that what is read is held against before there is a fact.
#pragma once

#include "quantity/parse.h"

namespace staveline::facts {

inline constexpr Range gravities{.95, 1.2}; ///< of beer or wort [SG]
inline constexpr Range extracts{0, 40};     ///< of wort [P]
/// Of a rest in the mash [C], as fields.h describes it.
[[nodiscard]] Range restTemperatures();

} // namespace staveline::facts
