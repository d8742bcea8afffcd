// SPDX-License-Identifier: GPL-3.0-or-later
// Whether beer is proven to have finished: equal gravities over months and a sample kept warm that came no lower.
#pragma once

#include "quantity/day.h"
#include "quantity/message.h"

#include <optional>
#include <vector>

namespace staveline::finishing {

struct GravityReading {
    Day on{};
    SpecificGravity gravity;
};

/// What is known of the beer that is to be packed. Readings by day, of all cycles of the vessel.
struct BeerKnown {
    Day today{};
    std::vector<GravityReading> readings;
    std::optional<GravityReading> forced; ///< where a sample kept warm ended
    std::vector<GravityReading> warm;     ///< where other such samples ended, of beer it came from too
    std::optional<Day> lastRefill, lastMove;
    std::optional<Day> lastExchange; ///< the last refill after a draw: what was measured before is of earlier beer
    std::optional<Day> takenOver;    ///< since when it is at most as old as its takeover said; unknown: the takeover
    bool diastatic = false;
    Share simpleSugar{0};        ///< the most in the extract of what went in
    Co2Volumes residual{0};      ///< the most it may hold
    GramsPerLitre fruitSugar{0}; ///< brought by fruit that is told not to have fermented
    GramsPerLitre freshSugar{0}; ///< of all that was ever added: fermented once the proof is whole
};

/// The latest gravity of this beer: since something went in or it was moved. None: not measured since.
[[nodiscard]] std::optional<GravityReading> gravityNow(const BeerKnown& beer);
/// Between the last two readings of this beer by more than a hydrometer can be off.
[[nodiscard]] bool stillFalling(const BeerKnown& beer);

struct Proof {
    bool stable = false, forced = false;
    std::optional<Day> until;     ///< of a whole proof, as long as nothing goes in
    std::vector<Message> missing; ///< what would make it whole
    [[nodiscard]] bool whole() const { return stable && forced; }
};
[[nodiscard]] Proof proofOf(const BeerKnown& beer);

/// The gravity the beer is taken to reach. Proven: the lowest of the equal readings and of the warm sample. Else the
/// lowest ever seen in this vessel, and not above 1.000; lower where it is not known, with diastatic yeast or much
/// sugar. Always less what a hydrometer can be off.
[[nodiscard]] SpecificGravity floorOf(const BeerKnown& beer);

} // namespace staveline::finishing
