// SPDX-License-Identifier: GPL-3.0-or-later
// A refill recipe to and from other programs: BeerJSON 1.0 and BeerXML 1.0. Neither has room for a vessel that is never
// emptied, so each way tells what could not be carried.
#pragma once

#include "brewing/brew_plan.h"
#include "ingredient/pantry.h"

namespace staveline::desk {

enum class RecipeFormat { beerJson, beerXml };
/// By a file's ending, ".json" or ".xml", whatever its case.
[[nodiscard]] std::optional<RecipeFormat> recipeFormatOf(std::string_view ending);

struct RecipeToWrite {
    std::string name, brewer; ///< brewer: empty where none is known
    brewing::Recipe recipe;
    brewing::BrewPlan plan; ///< of this recipe
    brewing::Equipment kit;
};
struct WrittenRecipe {
    std::string text;
    std::vector<Message> left; ///< what the format has no place for
};
[[nodiscard]] WrittenRecipe writeRecipe(RecipeFormat format, const RecipeToWrite& what,
                                        const ingredient::Pantry& pantry);

struct ReadRecipe {
    std::string name;
    brewing::Recipe recipe;
    std::vector<Message> left; ///< what is not in a refill recipe, and what was taken for something near it
};
/// What the file does not say stays as in `base`, and is told. Faults: not such a file, no recipe or no grain in it, a
/// number that is none (with its place), hops of which neither batch size nor bitterness says what they bring, an
/// original gravity that no wort has.
[[nodiscard]] Result<ReadRecipe> readRecipe(RecipeFormat format, std::string_view text,
                                            const ingredient::Pantry& pantry, const brewing::Recipe& base);

} // namespace staveline::desk
