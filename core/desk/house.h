// SPDX-License-Identifier: GPL-3.0-or-later
// The house as its recorded brews show it.
#pragma once

#include "brewing/past_brews.h"
#include "desk/cellar.h"

namespace staveline::desk {

/// From brews measured up to `today`; extract only of those on the kit in use, final gravity of the latest ones.
[[nodiscard]] brewing::House houseOn(const SharedFacts& shared, Day today);

} // namespace staveline::desk
