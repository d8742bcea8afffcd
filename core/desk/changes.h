// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "advice/advise.h"

namespace staveline::desk {

/// What `to` changes against `from`, each with its old and new value: lever by lever, then what no lever speaks of.
/// Kept words (facts/kept_words.h).
[[nodiscard]] std::vector<std::string> changesBetween(const advice::Setting& from, const advice::Setting& to,
                                                      const ingredient::Pantry& pantry);

} // namespace staveline::desk
