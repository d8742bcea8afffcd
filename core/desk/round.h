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

/// The last look and what came of it.
struct RoundState {
    facts::RoundFact last;
    Day next{};                    ///< as it was said, else a month after it
    std::vector<Message> findings; ///< air, loss of beer, a room warmer than the model takes it for
};
/// None: never looked at.
[[nodiscard]] std::optional<RoundState> roundOf(const VesselRecord& record, Day today);

} // namespace staveline::desk
