// SPDX-License-Identifier: GPL-3.0-or-later
// What speaks against a fact by itself or beside what is on record of its vessel; nothing is replayed for it.
#pragma once

#include "desk/cellar.h"

namespace staveline::desk {

/// The very same entry or tasting is on record for its day: most likely a file given twice.
[[nodiscard]] Result<void> notOnRecord(const facts::Fact& fact, Cellar& cellar);
/// A vessel takes and gives nothing after the day it was retired.
[[nodiscard]] Result<void> inUseOn(const facts::VesselFact& vessel, Day on, const char* field = "/on");
/// Once, and not before what happened in it.
[[nodiscard]] Result<void> canRetire(const VesselRecord& record, const SharedFacts& shared, Day on);
/// It was retired, and not later than that day.
[[nodiscard]] Result<void> canReturn(const facts::VesselFact& vessel, Day on);
/// So far above the capacity that it is no rounding of what was written down.
[[nodiscard]] bool runsOver(Litres volume, Litres capacity);
/// So little that it would turn the cycle without being a draw or a refill: faults at "/volume_l". `vessel`: as it was
/// on that day.
[[nodiscard]] Result<void> isDraw(Litres volume, const facts::VesselFact& vessel);
[[nodiscard]] Result<void> isRefill(Litres volume, const facts::VesselFact& vessel);
/// Gravities that can be those of one beer.
[[nodiscard]] Result<void> fermented(const facts::BrewFact& brew);
/// A brew moved to another day was not poured before that.
[[nodiscard]] Result<void> brewedBeforePoured(const facts::BrewFact& brew, const Cellar& cellar);
/// `like` is the name in use that a reader cannot tell from `name`, `own` the one it had before; faults at "/name".
[[nodiscard]] Result<void> nameIsFree(const std::string& name, const std::string& like, const std::string& own = {});
/// Faults of the tasting sheet; `list` is where they stand.
[[nodiscard]] Result<void> knownFaults(const std::vector<tasting::FaultMark>& marks, const std::string& list);

} // namespace staveline::desk
