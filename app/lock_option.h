// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "advice/advise.h"

namespace staveline::app {

/// "yeast=saison", "draw=60", "draw=60,5 L": numbers as everywhere, with a point or a comma, alone or with the lever's
/// own unit. A number in another unit is a fault at "/lock", never taken for the lever's own.
[[nodiscard]] Result<advice::LeverLock> parseLock(const std::string& text);

} // namespace staveline::app
