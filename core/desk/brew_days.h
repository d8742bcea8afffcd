// SPDX-License-Identifier: GPL-3.0-or-later
// Brews of several vessels that one day's work could make, and how its litres are shared out.
#pragma once

#include "desk/ledger.h"
#include "quantity/constants.h"
#include "quantity/text.h"

#include <optional>
#include <string>
#include <vector>

namespace staveline::desk {

/// What a vessel takes of a brew: as much as is drawn from it, losses aside.
struct BrewShare {
    facts::VesselName vessel;
    Litres draw{0};
    bool operator==(const BrewShare&) const = default;
};
struct BrewDay {
    Day on{};                      ///< of the first: the beer of the others waits, no draw moves
    std::vector<BrewShare> shares; ///< two or more, by their own days
    [[nodiscard]] Litres draws() const;
};
/// Row "desk.brews_together" of resources/data/rules.csv.
inline constexpr Days brewsTogether{constants::desk::brewsTogether};

/// Of vessels in use whose coming brew is not made, those within `apart` of the first; by day.
[[nodiscard]] std::vector<BrewDay> brewDays(const std::vector<VesselSummary>& cellar, Days apart = brewsTogether);

struct SharedOut {
    std::vector<BrewShare> shares; ///< as planned, or each smaller by the same part where the brew is short
    Litres left{0};                ///< for topping up; it has the age of the brew
    Litres missing{0};             ///< of the draws as planned
};
/// A brew of a fixed length, for these vessels. Both are at least 0.
[[nodiscard]] SharedOut shareOut(const BrewDay& day, Litres brewLength);

/// What it comes to, and with a brew of a fixed length how it is shared out.
[[nodiscard]] std::string brewDayWords(const BrewDay& day, std::optional<Litres> brewLength,
                                       const DisplayUnits& units = {});
/// "Knot, Plover and Heron"
[[nodiscard]] std::string namesIn(const BrewDay& day);

} // namespace staveline::desk
