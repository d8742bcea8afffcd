// SPDX-License-Identifier: GPL-3.0-or-later
// What is at hand of each ingredient, as it was counted and less what was weighed out since.
#pragma once

#include "desk/cellar.h"
#include "sheet/brew_sheet.h"

namespace staveline::desk {

struct AtHand {
    facts::AvailabilityFact counted; ///< the latest word on it
    std::optional<Kilograms> left;   ///< none: not counted
    /// There is some of it, and it is good, on that day.
    [[nodiscard]] bool on(Day day) const;
};
/// Hops a recipe can take, with what is left of their alpha acids.
struct HopOffer {
    std::string name;
    Share alpha{0};
};
/// Of each ingredient of which something was said by `day`, by id.
[[nodiscard]] std::vector<AtHand> stockOn(const SharedFacts& shared, Day day);
[[nodiscard]] std::vector<HopOffer> hopsOn(const SharedFacts& shared, Day day);
/// What the plan takes beyond what is counted; of what was never counted nothing is known and nothing is said.
[[nodiscard]] std::vector<sheet::ToBuy> toBuy(const brewing::BrewPlan& plan, const brewing::Recipe& recipe,
                                              const SharedFacts& shared, Day today, Day brewDay);

} // namespace staveline::desk
