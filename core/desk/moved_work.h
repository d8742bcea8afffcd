// SPDX-License-Identifier: GPL-3.0-or-later
// Putting the coming work of a vessel off, or bringing it forward: which can be moved, and the fact that does it.
#pragma once

#include "desk/ledger.h"
#include "facts/fact_list.h"

#include <optional>
#include <vector>

namespace staveline::desk {

/// A work of the cycle that runs and the day it is planned for.
struct PlannedWork {
    vessel::DueKind kind = vessel::DueKind::taste;
    Day on{};
    bool set = false; ///< the brewer's own day
    bool operator==(const PlannedWork&) const = default;
};
/// Those still to do whose day can be set, in the order of the cycle; none of a retired vessel.
[[nodiscard]] std::vector<PlannedWork> movableWork(const VesselSummary& vessel);

/// `to` none: by the interval again. Only of taste, brew and draw.
[[nodiscard]] facts::Fact movedWork(const facts::VesselName& vessel, vessel::DueKind kind, Day today,
                                    std::optional<Day> to);

} // namespace staveline::desk
