// SPDX-License-Identifier: GPL-3.0-or-later
// The sample cellar: three vessels of our own invention, with several years of history that end today.
#pragma once

#include "facts/fact_list.h"

namespace staveline::facts {

/// demo-data/sample-cellar.json, every date moved so that its last day is `today`.
[[nodiscard]] Result<std::vector<Fact>> sampleCellar(Day today);
/// Every date in a fact moved by whole days.
void shiftDays(Fact& fact, int days);

} // namespace staveline::facts
