// SPDX-License-Identifier: GPL-3.0-or-later
// What the list of ingredients has for each sort, and how one of one's own begins.
#pragma once

#include "ui/pantry/ingredients_page.h"

#include <array>

namespace staveline::ui {

/// As the list is filtered: malts and grain, sugars, yeasts, hops.
enum class IngredientSort { grain, sugar, yeast, hop };
inline constexpr std::array<std::string_view, 4> ingredientSorts = {"grain", "sugar", "yeast", "hop"};

/// One's own first, then the built-in ones in their order.
[[nodiscard]] std::vector<IngredientLine> linesOf(IngredientSort sort, const desk::Desk& desk);
/// Like a built-in one or a further one like one's own; its names stay open.
[[nodiscard]] facts::Fact startedLike(IngredientSort sort, const IngredientLine& line, Day today);
/// A short name made of the name, that no other ingredient has: "Pilsner, barn" is "pilsner_barn".
[[nodiscard]] std::string shortName(const std::string& name, const ingredient::Pantry& pantry);

} // namespace staveline::ui
