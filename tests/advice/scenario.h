// SPDX-License-Identifier: GPL-3.0-or-later
// Vessels of our own invention to ask for advice about.
#pragma once

#include "advice/advise.h"

namespace staveline::scenario {

/// Three quarters Pilsner malt, one quarter wheat malt, 66 C, 12 P, 10 IBU.
inline brewing::Recipe plainRecipe() {
    brewing::Recipe recipe;
    recipe.grist = {{"pilsner", {.75}, false}, {"wheat_malt", {.25}, false}};
    recipe.mash = {{{66}, {60}}};
    return recipe;
}

/// A cask that has lived on `recipe` for years, a month before its draw.
inline culture::VesselState settledState(const brewing::Recipe& recipe, double share = .35) {
    const auto input = resolve(recipe, ingredient::builtInPantry(), brewing::jumpRate).value();
    forward::OpeningFacts opening;
    opening.yearsRunning = 8;
    opening.usualShare = {share};
    auto state = forward::openingState(opening, input, {16}, 10, {});
    return culture::age(state, {{210}, {16}, 10}, {});
}

/// Verdicts as the six words would have it, from gaps and errors; no dates, no faults.
inline PerDimension<tasting::Verdict> verdictsFor(const advice::AdviceInput& input) {
    PerDimension<tasting::Verdict> verdicts;
    for (auto d : allDimensions)
        verdicts[d] = tasting::verdict(d, input.combined[d], input.target.windows[d], {});
    return verdicts;
}

/// Sets what was tasted as a difference to the model, and lets the verdicts follow.
inline void taste(advice::AdviceInput& input, const Scores& offset, double sd = .4) {
    for (auto d : allDimensions)
        input.combined[d] = {input.model[d].mean + offset[d], sd};
    input.verdicts = verdictsFor(input);
}

/// Wants the tasted scores moved by `change`.
inline void want(advice::AdviceInput& input, const Scores& change, double band = 1) {
    for (auto d : allDimensions)
        input.target.windows[d] = {input.combined[d].mean + change[d], band};
    input.verdicts = verdictsFor(input);
}

/// 225 L, a third drawn every eight months; on target in every dimension.
inline advice::AdviceInput cask(const brewing::Recipe& recipe = plainRecipe()) {
    advice::AdviceInput input;
    input.state = settledState(recipe);
    input.volumeAtDraw = {220};
    input.fillTo = {225};
    input.base.recipe = recipe;
    input.base.draw = {74};
    input.equipment = brewing::Equipment{};
    input.pantry = &ingredient::builtInPantry();
    const auto now = outcomeOf(input.state, input.parameters).scores;
    constexpr Scores sd{{1.2, 2.0, .55}};
    for (auto d : allDimensions)
        input.model[d] = {now[d], sd[d]};
    input.target.bitternessCeiling = {20};
    taste(input, {});
    want(input, {});
    return input;
}

} // namespace staveline::scenario
