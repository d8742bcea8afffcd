// SPDX-License-Identifier: GPL-3.0-or-later
// What a vessel's past offers to whoever judges it.
#pragma once

#include "desk/cellar.h"

namespace staveline::desk {

/// The last sitting on or before `until`, and after `after`, that the brewer lets be learned from; none: nullptr.
[[nodiscard]] const facts::SittingFact* lastToLearnFrom(const VesselRecord& record, Day until, Day after = Day::min());

} // namespace staveline::desk
