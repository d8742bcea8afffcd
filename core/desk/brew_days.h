// SPDX-License-Identifier: GPL-3.0-or-later
// Brews of several vessels that one day's work could make.
#pragma once

#include "desk/ledger.h"

#include <vector>

namespace staveline::desk {

struct BrewDay {
    Day on{};                               ///< of the first: the beer of the others waits, no draw moves
    std::vector<facts::VesselName> vessels; ///< two or more, by their own days
    Litres draws{0};                        ///< planned from all of them: what the refills make good, losses aside
};
/// As long as a usual primary: what is brewed so much early is not old when it goes in (common practice, no source).
inline constexpr Days brewsTogether{14};

/// Of vessels in use whose coming brew is not made, those within `apart` of the first; by day.
[[nodiscard]] std::vector<BrewDay> brewDays(const std::vector<VesselSummary>& cellar, Days apart = brewsTogether);

} // namespace staveline::desk
