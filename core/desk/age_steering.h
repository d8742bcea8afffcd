// SPDX-License-Identifier: GPL-3.0-or-later
// A vessel that is drawn at an age: when its beer is that old, what the coming draw makes of it, and which draw would
// have it that old again on the day of the usual interval.
#pragma once

#include "quantity/day.h"
#include "quantity/message.h"

#include <optional>
#include <vector>

namespace staveline::desk {

struct CurrentVessel;

struct AgeSteering {
    Days wanted{0};
    bool reachable = true; ///< no: what goes in is no younger, so the dates go by the interval
    Day reached{};         ///< the day on which the beer is that old, or was; of an empty vessel, once it is filled
    Days atDraw{0};        ///< mean age on the day of the coming draw; of an empty vessel, of its fill
    Days afterRefill{0};   ///< with the draw as planned
    Day again{};           ///< the next draw
    Days atNextDraw{0};
    Day byInterval{};             ///< an interval after the coming draw
    std::optional<Litres> keeps;  ///< the coming draw by which it is that old on `byInterval`; none: no draw does it
    std::optional<Litres> brings; ///< older than wanted at the draw: the draw that brings it back to what is wanted
    std::vector<Message> words;   ///< all of it, most urgent first
};

/// None: it goes by its interval, or is out of use.
[[nodiscard]] std::optional<AgeSteering> steeringOf(const CurrentVessel& vessel);

} // namespace staveline::desk
