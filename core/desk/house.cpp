// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/house.h"

#include "forward/parameters.h"
#include "quantity/density.h"

#include <algorithm>

namespace staveline::desk {

using brewing::PastBrew;
using facts::BrewFact;
using facts::EquipmentFact;

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

/// The recipe with its measured original gravity; none: it can no longer be brewed.
std::optional<brewing::BrewInput> inputOf(const BrewFact& fact, const SharedFacts& shared) {
    brewing::Recipe recipe = fact.recipe;
    if (fact.originalGravity)
        recipe.originalGravity = toPlato(*fact.originalGravity);
    auto input = resolve(recipe, shared.pantryOn(fact.on), shared.kit(fact.on, fact.vessel).equipment.heatingRate);
    return input ? std::optional(*std::move(input)) : std::nullopt;
}

/// Where the model has it end from the original gravity it had.
std::optional<Plato> modelledFinal(const BrewFact& fact, const SharedFacts& shared) {
    const auto input = inputOf(fact, shared);
    if (!input)
        return {};
    return brew(*input, forward::builtInParameters().brew).finalGravity;
}

/// What it won, in gravity or, weighed, against the kit.
void takeExtract(PastBrew& brew, const BrewFact& fact, const SharedFacts& shared, const EquipmentFact* kit) {
    if (!fact.originalGravity)
        return;
    if (!kit || fact.on < kit->on || shared.kit(fact.on, fact.vessel) != *kit) {
        // Its beer began there, whatever the kit of its day won.
        brew.plannedOriginal = toPlato(*fact.originalGravity);
        return;
    }
    brew.original = toPlato(*fact.originalGravity);
    // More than there was to win is a slip of the pen in weights or litres; its gravity still counts.
    if (const auto won = wonOn(fact, shared); won && won->efficiency <= Share{1})
        brew.won = won->efficiency / kit->equipment.efficiency;
}

void takeFinal(PastBrew& brew, const BrewFact& fact, const SharedFacts& shared) {
    if (const auto final = modelledFinal(fact, shared)) {
        brew.plannedFinal = *final;
        brew.final = toPlato(*fact.finalGravity);
    }
}

} // namespace

std::optional<brewing::WonExtract> wonOn(const BrewFact& fact, const SharedFacts& shared) {
    if (!fact.originalGravity || !fact.intoFermenter || !isWeighed(fact.recipe))
        return {};
    const auto input = inputOf(fact, shared);
    if (!input)
        return {};
    const brewing::RefillBeer beer = brew(*input, forward::builtInParameters().brew);
    return wonExtract(*input, beer, shared.kit(fact.on, fact.vessel).equipment, *fact.intoFermenter);
}

brewing::House houseOn(const SharedFacts& shared, Day today, const EquipmentFact* kit) {
    const auto brews = measuredBrews(shared, today);
    const auto counted = static_cast<std::size_t>(constants::brew::mostCounted);
    auto finals = static_cast<std::size_t>(
        std::count_if(brews.begin(), brews.end(), [](const BrewFact* brew) { return brew->finalGravity.has_value(); }));
    std::vector<PastBrew> past;
    for (const BrewFact* each : brews) {
        PastBrew& brew = past.emplace_back();
        brew.plannedOriginal = each->recipe.originalGravity;
        takeExtract(brew, *each, shared, kit);
        if (each->finalGravity && finals-- <= counted)
            takeFinal(brew, *each, shared);
    }
    return brewing::houseFrom(past);
}

} // namespace staveline::desk
