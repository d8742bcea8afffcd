// SPDX-License-Identifier: GPL-3.0-or-later
// What a vessel was made as, and what it became: the past is seen with the vessel as it was then.
#pragma once

#include "desk/cellar.h"
#include "vessel/ledger.h"

namespace staveline::desk {

/// The part of an edit that counts from a day on; empty: it says nothing of size, wood and cellar. To be drawn by the
/// interval again is none of it.
[[nodiscard]] std::optional<facts::RefitFact> refitIn(const facts::VesselEditFact& edit, Day today);
void apply(const facts::RefitFact& refit, facts::VesselFact& vessel);
/// The vessel in force on a day. Without one: as it stands in the end.
[[nodiscard]] facts::VesselFact vesselOn(const VesselRecord& record, Day day = Day::max());

[[nodiscard]] vessel::VesselShape shapeOf(const facts::VesselFact& facts);
[[nodiscard]] vessel::ShapeHistory shapesOf(const VesselRecord& record);

} // namespace staveline::desk
