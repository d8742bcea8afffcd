// SPDX-License-Identifier: GPL-3.0-or-later
// The two sides of funk in words.
#pragma once

#include "tasting/funk_sides.h"

#include <QString>

namespace staveline::ui {

/// "spice 2.1 ±1.5, horse 4.0 ±1.5"; empty when neither was scored.
[[nodiscard]] QString sidesWords(const tasting::FunkSides& sides);

} // namespace staveline::ui
