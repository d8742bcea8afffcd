// SPDX-License-Identifier: GPL-3.0-or-later
// The life of a vessel beside its beer: where its culture came from, through other vessels too, and what its wood saw.
#pragma once

#include "facts/facts.h"
#include "quantity/message.h"

#include <optional>
#include <vector>

namespace staveline::desk {

struct LineageLine {
    Day on{};
    Message text;
    facts::VesselName vessel; ///< whose culture it is
    int back = 0;             ///< vessels that lie between: 0 is the vessel itself
};

/// How often and when last.
struct Times {
    int count = 0;
    std::optional<Day> last;
};

struct WoodLife {
    Times fills;            ///< from empty, in this cellar
    double fillsBefore = 0; ///< that it came
    Times refills, repairs, leaks, cleanings;
    Litres lost{0}; ///< by racking, leaks, repairs, cleaning and moving
};

struct VesselLife {
    std::vector<LineageLine> lineage; ///< oldest first; below beer from another vessel stands what lived in that one
    WoodLife wood;
};
/// "Filled from empty: 2 times (1 before), last on 3 Mar 2024", one line each, without what never was.
[[nodiscard]] std::vector<Message> wordsOf(const WoodLife& wood);

} // namespace staveline::desk
