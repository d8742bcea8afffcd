// SPDX-License-Identifier: GPL-3.0-or-later
// Ingredients of one's own: from a built-in one to the fact, and from the fact to what the models use.
#pragma once

#include "facts/facts.h"

#include <string_view>

namespace staveline::facts {

/// All numbers of the built-in ingredient of that id; id and name stay open. An unknown one changes nothing.
void startLike(OwnGrainFact& fact, std::string_view like);
void startLike(OwnYeastFact& fact, std::string_view like);
void startLike(OwnHopFact& fact, std::string_view like);

[[nodiscard]] ingredient::Grain ingredientOf(const OwnGrainFact& fact);
[[nodiscard]] ingredient::Yeast ingredientOf(const OwnYeastFact& fact);
[[nodiscard]] ingredient::Hop ingredientOf(const OwnHopFact& fact);

} // namespace staveline::facts
