// SPDX-License-Identifier: GPL-3.0-or-later
// Which vessels an answer is about that can be of one or of all.
#pragma once

#include "desk/desk.h"

#include <vector>

namespace staveline::desk {

/// The one that is named, retired or not and known or not; without a name all in use, in the order of the cellar.
[[nodiscard]] Result<std::vector<facts::VesselName>> vesselsAsked(const Desk& desk, const facts::VesselName& name);

} // namespace staveline::desk
