// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/house.h"

#include "forward/parameters.h"
#include "quantity/density.h"

#include <algorithm>

namespace staveline::desk {

using brewing::PastBrew;
using facts::BrewFact;

namespace {

/// Measured ones in the order of brewing.
std::vector<const BrewFact*> measuredBrews(const SharedFacts& shared, Day today) {
    std::vector<const BrewFact*> brews;
    for (const auto& stored : shared.brews)
        if (stored.fact.on <= today && (stored.fact.originalGravity || stored.fact.finalGravity))
            brews.push_back(&stored.fact);
    std::stable_sort(brews.begin(), brews.end(), [](const auto* a, const auto* b) { return a->on < b->on; });
    return brews;
}

/// Where the model has it end from the original gravity it had; none: a recipe that can no longer be brewed.
std::optional<Plato> modelledFinal(const BrewFact& fact, const SharedFacts& shared) {
    brewing::Recipe recipe = fact.recipe;
    if (fact.originalGravity)
        recipe.originalGravity = toPlato(*fact.originalGravity);
    const auto input = resolve(recipe, shared.pantry, shared.kit(fact.on).equipment.heatingRate);
    if (!input)
        return {};
    return brew(*input, forward::builtInParameters().brew).finalGravity;
}

} // namespace

brewing::House houseOn(const SharedFacts& shared, Day today) {
    const auto brews = measuredBrews(shared, today);
    const Day kitSince = shared.kit(today).on;
    const auto counted = static_cast<std::size_t>(constants::brew::mostCounted);
    auto finals = static_cast<std::size_t>(
        std::count_if(brews.begin(), brews.end(), [](const BrewFact* brew) { return brew->finalGravity.has_value(); }));
    std::vector<PastBrew> past;
    for (const BrewFact* each : brews) {
        const BrewFact& fact = *each;
        PastBrew& brew = past.emplace_back();
        brew.plannedOriginal = fact.recipe.originalGravity;
        if (fact.originalGravity && fact.on >= kitSince)
            brew.original = toPlato(*fact.originalGravity);
        else if (fact.originalGravity) // its beer began there, whatever the kit of its day won
            brew.plannedOriginal = toPlato(*fact.originalGravity);
        if (!fact.finalGravity || finals-- > counted)
            continue;
        if (const auto final = modelledFinal(fact, shared)) {
            brew.plannedFinal = *final;
            brew.final = toPlato(*fact.finalGravity);
        }
    }
    return brewing::houseFrom(past);
}

} // namespace staveline::desk
