// SPDX-License-Identifier: GPL-3.0-or-later
// Recipes for the tests of the brewing model: short ways to write them, and random ones for properties.
#pragma once

#include "support/property.h"
#include "support/reference_pantry.h"

#include <algorithm>
#include <string>
#include <vector>

namespace staveline::reference {

inline brewing::Recipe allOf(const std::string& grain, std::vector<brewing::MashStep> mash) {
    brewing::Recipe recipe = baseRecipe();
    recipe.grist = {{grain, {1}}};
    recipe.mash = std::move(mash);
    return recipe;
}
inline brewing::RefillBeer brewed(const brewing::Recipe& recipe, const brewing::BrewParameters& parameters = {}) {
    return brew(inputFor(recipe), parameters);
}
inline brewing::RefillBeer brewedAt(double celsius, double minutes = 60) {
    return brewed(allOf("pilsner", {{{celsius}, {minutes}}}));
}

/// Evenly spread in low..high, by whole steps, so that counterexamples read well.
inline double between(double low, double high) {
    constexpr int steps = 1000;
    return low + (high - low) * *rc::gen::inRange(0, steps + 1) / steps;
}

/// Mostly Pilsner malt, so that it converts, with up to three other grains, one of them perhaps late.
inline std::vector<brewing::GristPart> anyGrist(bool mayBeLate) {
    std::vector<brewing::GristPart> grist{{"pilsner", {1}}};
    const int others = *rc::gen::inRange(0, 4);
    for (int i = 0; i < others; ++i) {
        const auto& row =
            grainRows[static_cast<std::size_t>(*rc::gen::inRange(1, static_cast<int>(std::size(grainRows))))];
        grist.push_back({row.id, {between(.02, .3)}, mayBeLate && *rc::gen::arbitrary<bool>()});
    }
    double sum = 0;
    for (const auto& part : grist)
        sum += part.share.of1;
    for (auto& part : grist)
        part.share.of1 /= sum;
    return grist;
}
inline std::vector<brewing::MashStep> anyMash() {
    const int rests = *rc::gen::inRange(1, 5);
    std::vector<double> temperatures;
    for (int i = 0; i < rests; ++i)
        temperatures.push_back(between(38, 80));
    std::sort(temperatures.begin(), temperatures.end());
    std::vector<brewing::MashStep> mash;
    for (double temperature : temperatures)
        mash.push_back({{temperature}, {between(1, 90)}});
    return mash;
}
/// Any recipe that resolves; without sugar and souring when `plain`.
inline brewing::Recipe anyRecipe(bool plain = false) {
    brewing::Recipe recipe;
    recipe.mash = anyMash();
    recipe.grist = anyGrist(recipe.mash.size() > 1);
    recipe.path = *rc::gen::element(brewing::MashPath::jump, brewing::MashPath::ramp);
    recipe.mashPh = {between(4.8, 6.4)};
    recipe.liquorToGrist = {between(1.5, 10)};
    recipe.originalGravity = {between(2, 25)};
    recipe.bitterness = {between(0, 100)};
    recipe.boil = {between(0, 300)};
    recipe.yeast = *rc::gen::element<std::string>("low", "clean", "high", "saison", "diastatic", "wine");
    if (!plain) {
        recipe.sugarShare = {between(0, .25)};
        recipe.sugar = *rc::gen::element<std::string>("sucrose", "honey", "maltodextrin");
        recipe.preSoured = {between(0, 1)};
        recipe.preSourTa = {between(1, 15)};
    }
    return recipe;
}

} // namespace staveline::reference
