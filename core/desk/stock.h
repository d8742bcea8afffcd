// SPDX-License-Identifier: GPL-3.0-or-later
// What is at hand of each ingredient, as it was counted and less what was weighed out since.
#pragma once

#include "desk/cellar.h"
#include "sheet/brew_sheet.h"

namespace staveline::desk {

struct AtHand {
    facts::AvailabilityFact counted; ///< the latest word on it, with amounts and best-before of the last count
    Day countedOn{};                 ///< of that word where nothing was ever counted
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
struct Shopping {
    std::vector<sheet::ToBuy> toBuy;    ///< what the plan takes beyond what is counted
    std::vector<std::string> uncounted; ///< what it takes and nobody counted, by name
};
[[nodiscard]] Shopping shoppingFor(const brewing::BrewPlan& plan, const brewing::Recipe& recipe,
                                   const SharedFacts& shared, Day today, Day brewDay);

} // namespace staveline::desk
