// SPDX-License-Identifier: GPL-3.0-or-later
// Exchanging base malt for other grain, for the levers that do.
#pragma once

#include "advice/lever.h"
#include "quantity/constants.h"

namespace staveline::advice {

/// How thick a recipe with a new rest is mashed in, so that the hot water of the jump has room.
inline constexpr LitresPerKilogram thickStart{constants::advice::thickStart};

using GrainTest = bool (*)(const ingredient::Grain&);

[[nodiscard]] bool isBaseMalt(const ingredient::Grain& grain);
/// Share of the grist that passes the test [%].
[[nodiscard]] double percentOf(const brewing::Recipe& recipe, const ingredient::Pantry& pantry, GrainTest test);
/// The first of `wanted` that is in the pantry and not missing; empty: none.
[[nodiscard]] std::string firstAtHand(const std::vector<std::string>& wanted, const Stock& stock);

/// What to change: grain that passes `test` up or down to `percent` of the grist, against base malt. What is there
/// already keeps its proportions; where there is none, `filler` comes in.
struct Exchange {
    double percent = 0;
    GrainTest test = nullptr;
    std::string filler;
    bool fillerLate = false;
};
void exchange(brewing::Recipe& recipe, const Exchange& change, const Stock& stock);
/// Caps the row where base malt or the grain's own maximum ends; closes it (high = low) where there is no filler.
void narrowByGrist(LeverRow& row, const brewing::Recipe& recipe, GrainTest test, const std::string& filler,
                   const ingredient::Pantry& pantry);
/// Names of the grains that pass the test, in the recipe's order, joined by commas.
[[nodiscard]] std::string namesOf(const brewing::Recipe& recipe, const ingredient::Pantry& pantry, GrainTest test);

/// A rest below 55 C comes before the saccharification.
[[nodiscard]] bool hasLowRest(const brewing::Recipe& recipe);
[[nodiscard]] bool hasRawGrain(const brewing::Recipe& recipe, const ingredient::Pantry& pantry);

} // namespace staveline::advice
