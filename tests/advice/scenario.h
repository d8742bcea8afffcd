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
    auto state = forward::openingState(opening, input, {{}, {16}, 10}, {});
    return culture::age(state, {{210}, {16}, 10}, {});
}

/// How the estimates stand; no dates, no faults.
inline PerDimension<tasting::Verdict> verdictsFor(const advice::AdviceInput& input) {
    PerDimension<tasting::Verdict> verdicts;
    for (auto d : allDimensions) {
        tasting::VerdictContext context;
        context.tasted = input.seen[d];
        verdicts[d] = tasting::standing(d, input.combined[d], input.target.windows[d], context);
    }
    return verdicts;
}

/// Sets what was ever observed, and lets the verdicts follow.
inline void see(advice::AdviceInput& input, const PerDimension<bool>& seen) {
    input.seen = seen;
    input.verdicts = verdictsFor(input);
}

/// A vessel known to lie this far from the model for good, give or take `sd`.
inline estimate::Offset lasting(double mean, double sd) {
    estimate::Offset offset;
    offset.mean = {mean, mean, 0};
    for (auto i : {estimate::Offset::now, estimate::Offset::settled})
        for (auto j : {estimate::Offset::now, estimate::Offset::settled})
            offset.cov[i][j] = sd * sd;
    return offset;
}

/// Sets what is known of the vessel beside the model, and lets the verdicts follow.
inline void taste(advice::AdviceInput& input, const Scores& offset, double sd = .4) {
    for (auto d : allDimensions) {
        input.combined[d] = {input.model[d].mean + offset[d], sd};
        input.offsets[d] = lasting(offset[d], sd);
    }
    input.verdicts = verdictsFor(input);
}

/// The same where the model's scores are not those of the library.
inline void tasteAt(advice::AdviceInput& input, const Scores& model, double sd = .4) {
    for (auto d : allDimensions)
        input.model[d].mean = model[d];
    taste(input, {}, sd);
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
    input.mayMoveDraw = input.mayMoveInterval = true;
    taste(input, {});
    want(input, {});
    return input;
}

} // namespace staveline::scenario
