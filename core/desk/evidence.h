// SPDX-License-Identifier: GPL-3.0-or-later
// What a vessel's past offers to whoever judges it.
#pragma once

#include "desk/cellar.h"

namespace staveline::desk {

/// Events on or before `until`, oldest first, as they stand in the record.
[[nodiscard]] std::vector<const facts::EventFact*> eventsUpTo(const VesselRecord& record, Day until);
/// Sittings on or before `until` that the brewer lets be learned from, oldest first, as they stand in the record.
[[nodiscard]] std::vector<const facts::SittingFact*> sittingsToLearnFrom(const VesselRecord& record, Day until);
/// The last of them; none: nullptr.
[[nodiscard]] const facts::SittingFact* lastToLearnFrom(const VesselRecord& record, Day until);

} // namespace staveline::desk
