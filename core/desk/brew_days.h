// SPDX-License-Identifier: GPL-3.0-or-later
// Brews of several vessels that one day's work could make, and how its litres are shared out.
#pragma once

#include "desk/ledger.h"
#include "facts/fact_list.h"
#include "quantity/constants.h"
#include "quantity/text.h"

#include <optional>
#include <string>
#include <vector>

namespace staveline::desk {

/// What a vessel takes of a brew.
struct BrewShare {
    facts::VesselName vessel;
    Litres takes{0};              ///< its refill as planned, or its first fill
    std::optional<Litres> draw{}; ///< still to come, and its size is open; none: drawn already, or empty
    bool operator==(const BrewShare&) const = default;
};
struct BrewDay {
    Day on{};                      ///< of the first: the beer of the others waits, no draw moves
    std::vector<BrewShare> shares; ///< two or more, by their own days
    [[nodiscard]] Litres takes() const;
};
/// Row "desk.brews_together" of resources/data/rules.csv.
inline constexpr Days brewsTogether{constants::desk::brewsTogether};

/// Of vessels in use whose coming brew is not made, those within `apart` of the first; by day.
[[nodiscard]] std::vector<BrewDay> brewDays(const std::vector<VesselSummary>& cellar, Days apart = brewsTogether);

struct SharedOut {
    std::vector<BrewShare> shares; ///< as planned; where less drawn is enough, each draw smaller by the same part
    Litres left{0};                ///< for topping up; it has the age of the brew
    Litres missing{0};             ///< of what they take as planned
    bool drawingLess = false;      ///< it is enough so
};
/// Of a brew that gives so much, at least 0.
[[nodiscard]] SharedOut shareOut(const BrewDay& day, Litres given);

/// What it comes to, and with a brew of a fixed length how it is shared out.
[[nodiscard]] std::string brewDayWords(const BrewDay& day, const facts::EquipmentFact& kit,
                                       const DisplayUnits& units = {});
/// What makes it so: the brews of its vessels moved to it, where they are on another day.
[[nodiscard]] std::vector<facts::Fact> brewOn(const BrewDay& day, const std::vector<VesselSummary>& cellar, Day today);
/// "Knot, Plover and Heron"
[[nodiscard]] std::string namesIn(const BrewDay& day);

} // namespace staveline::desk
