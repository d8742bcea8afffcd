// SPDX-License-Identifier: GPL-3.0-or-later
// From recorded facts to what is known of a vessel today.
#pragma once

#include "desk/current_vessel.h"
#include "estimate/estimates.h"

namespace staveline::desk {

struct MeasuredOn {
    Day on{};
    const facts::Measured* values = nullptr;
};
/// What was measured up to a day, with readings, with samples and of what was drawn; by day.
[[nodiscard]] std::vector<MeasuredOn> measuredUpTo(const VesselRecord& record, Day until);
/// For estimatesFrom(), which borrows the sitting from the vessel's record. Nothing in the vessel yet: notPossible.
[[nodiscard]] Result<estimate::KnownOfVessel> knownOf(const CurrentVessel& vessel, Cellar& cellar);

} // namespace staveline::desk
