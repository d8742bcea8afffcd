// SPDX-License-Identifier: GPL-3.0-or-later
// What a sized brew has to say for itself: where it does not fit, what may go wrong, what is dangerous. Private to the
// room. The limits are the rows "plan." of resources/data/rules.csv.
#pragma once

#include "brewing/brew_plan.h"
#include "brewing/brew_volumes.h"
#include "brewing/mash_water.h"
#include "quantity/constants.h"

namespace staveline::brewing {

inline constexpr Celsius scalding{constants::plan::scalding}; ///< from here on seconds burn
inline constexpr Celsius gelatinising{
    constants::plan::gelatinising}; ///< below it a rest breaks glucan down and converts little

/// Everything a note may look at.
struct PlanFacts {
    const BrewInput& input;
    const RefillBeer& beer;
    const Equipment& equipment;
    const BatchNeed& need;
    const BrewVolumes& volumes;
    const MashWater& water;
    MashLoad load;
};

[[nodiscard]] std::vector<Message> planFindings(const PlanFacts& facts);
/// Strike water that would have to be hotter than it gets, with what helps.
[[nodiscard]] std::optional<Fault> strikeBoils(const PlanFacts& facts);
[[nodiscard]] std::vector<Message> planCautions(const PlanFacts& facts);

/// Water beyond what the kettle can take before the boil; 0 when some is left to sparge with.
[[nodiscard]] Litres waterTooMuch(const PlanFacts& facts);
/// Glucan-rich grain and rye against their limits, together; from 1 on the run-off is likely slow.
[[nodiscard]] double runOffRisk(const BrewInput& input);

} // namespace staveline::brewing
