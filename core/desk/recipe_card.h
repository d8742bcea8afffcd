// SPDX-License-Identifier: GPL-3.0-or-later
// A recipe as the open formats hold it: weighed and sized for one batch. Private to the desk.
#pragma once

#include "brewing/brew_plan.h"
#include "desk/recipe_exchange.h"

namespace staveline::desk {

struct RecipeCard {
    struct Fermentable {
        std::string name, id{}; ///< id: of the pantry, where the format has room for it
        enum class Type { grain, sugar, extract, dryExtract, other } type = Type::grain;
        std::string group{};                ///< BeerJSON's: "base", "caramel", ...
        std::optional<double> yieldShare{}; ///< of grain fine and dry, of sugar and extract as they are weighed
        Ebc colour{5};
        Kilograms mass{0};
        bool late = false; ///< to the mash at its last rest
    };
    struct Hop {
        std::string name;
        Share alpha{0};
        Grams mass{0};
        Minutes boiled{0};
        bool inBoil = true;
    };
    struct Culture {
        std::string name, id, type; ///< type: BeerJSON's word
    };
    struct Step {
        Celsius temperature{66};
        Minutes rest{60};
        enum class Type { infusion, heat, other } type = Type::infusion;
        Litres water{0};
    };
    std::string name, notes;
    Litres batch{0}, preBoil{0}; ///< 0: not said
    std::optional<Share> brewhouse;
    std::optional<Share> mashEfficiency; ///< grain to kettle
    Minutes boil{60};
    std::vector<Fermentable> fermentables;
    std::vector<Hop> hops;
    std::vector<Culture> cultures;
    std::vector<Step> mash;
    Celsius grainTemperature{18};
    std::optional<LitresPerKilogram> liquor;
    std::optional<Ph> mashPh;
    std::optional<Plato> original, final;
    std::optional<PercentVol> alcohol;
    std::optional<Ibu> bitterness;
    std::optional<Ebc> colour;
    std::vector<std::string> others; ///< names of what is added beside: spices, water salts
};

[[nodiscard]] std::string beerJson(const RecipeCard& card, const std::string& brewer);
[[nodiscard]] std::string beerXml(const RecipeCard& card, const std::string& brewer);
/// The first recipe of a file. Faults: not the format, no recipe in it.
[[nodiscard]] Result<RecipeCard> fromBeerJson(std::string_view text);
[[nodiscard]] Result<RecipeCard> fromBeerXml(std::string_view text);

} // namespace staveline::desk
