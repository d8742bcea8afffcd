// SPDX-License-Identifier: GPL-3.0-or-later
// What to mind when beer is packed, as practice and local rules have it.
#pragma once

#include "quantity/message.h"

#include <vector>

namespace staveline::finishing {

struct PackedBeer {
    Ph ph{3.4};
    GramsPerLitre ta{6}; ///< as lactic
    PercentVol alcohol{6};
    bool primed = true; ///< carbonated by what ferments in the package
    bool fruit = false;
    bool keg = false;    ///< some of it
    bool liquid = false; ///< primed by wort or young beer
};
/// In the order of the steps.
[[nodiscard]] std::vector<Message> packingCautions(const PackedBeer& beer);
/// Of pouring beers together, and of the CO2 that gathers.
[[nodiscard]] std::vector<Message> blendingCautions();

} // namespace staveline::finishing
