// SPDX-License-Identifier: GPL-3.0-or-later
// What stands until it is recorded anew.
#pragma once

#include "desk/cellar.h"

namespace staveline::desk {

/// In force on `today`: the latest of each lever, if it locks.
[[nodiscard]] std::vector<facts::LockFact> locksInForce(const VesselRecord& record, Day today);

} // namespace staveline::desk
