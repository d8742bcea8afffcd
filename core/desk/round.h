// SPDX-License-Identifier: GPL-3.0-or-later
// The round: the periodic look at all vessels, and what of it bears on the next decision.
#pragma once

#include "facts/facts.h"
#include "quantity/message.h"

#include <optional>
#include <vector>

namespace staveline::desk {

struct VesselRecord;

/// "bung loose; weep damp; room 14 °C; purged"
[[nodiscard]] Message seenWords(const facts::RoundFact& round);

/// The last look at a vessel.
struct RoundState {
    facts::RoundFact last;
    Day next{}; ///< as it was said, else a month after it
};
/// None: never looked at.
[[nodiscard]] std::optional<RoundState> roundOf(const VesselRecord& record, Day today);

/// What was seen at the vessel lately: what loses beer first, then air, then a room warmer than the model takes it for.
struct SeenAtVessel {
    std::vector<Message> words;
    bool loses = false; ///< beer: it drips, or a leak is not mended
};
[[nodiscard]] SeenAtVessel seenAt(const VesselRecord& record, Day today);

} // namespace staveline::desk
