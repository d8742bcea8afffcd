// SPDX-License-Identifier: GPL-3.0-or-later
// One row of a round as it is entered, and the facts it comes to.
#pragma once

#include "facts/fact_list.h"

#include <optional>
#include <string>
#include <vector>

namespace staveline::desk {

struct RoundEntry {
    facts::RoundFact seen;               ///< with vessel, day and next look
    std::optional<Litres> level, topped; ///< as it was found; what went in then
    std::string brew;                    ///< that it was topped with; empty: the usual recipe
};
/// In the order they happened: a dip, a top-up, what was seen. The day of the next look alone is no look: nothing.
[[nodiscard]] std::vector<facts::Fact> factsOf(const RoundEntry& entry);

} // namespace staveline::desk
