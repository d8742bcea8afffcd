// SPDX-License-Identifier: GPL-3.0-or-later
// What happened to one vessel, fact by fact in the order of its ledger, with what the model said of the beer then.
// Numbers only: who made a story has asked the model already.
#pragma once

#include "quantity/composition.h"
#include "quantity/day.h"
#include "quantity/dimension.h"
#include "tasting/sitting.h"

#include <cstdint>
#include <optional>
#include <set>
#include <string>
#include <variant>
#include <vector>

namespace staveline::estimate {

using Tasters = std::set<std::string>;

/// A refill or top-up.
struct Filling {
    Share share{0}; ///< of the volume after it
    bool topUp = false;
    std::optional<std::int64_t> from{}; ///< the vessel it comes from
};
struct Tasting {
    Tasters tasters;
    PerDimension<std::optional<tasting::DimensionReading>> readings; ///< empty: not answered, or spoiled by a fault
    Scores model;
    bool learns = true; ///< false: the brewer set it aside
};
/// A titration, a pH or both, of one glass.
struct AcidReading {
    std::optional<GramsPerLitre> ta{};
    std::optional<Ph> ph{};
    Composition model;
};
struct Event {
    bool newTasters = false; ///< else the beer or its culture was changed
};
/// Gravity or bitterness was measured and put the model's state right: its scores moved by so much.
struct Correction {
    Scores change;
};
struct StoryFact {
    Day on{};
    std::variant<Filling, Tasting, AcidReading, Event, Correction> what;
};

struct Story {
    double cyclesBefore = 0; ///< lived through on one recipe before it was taken over; none: an empty vessel was filled
    std::vector<StoryFact> facts;
    Tasters targetsSetBy;
};

} // namespace staveline::estimate
