// SPDX-License-Identifier: GPL-3.0-or-later
// Water and heat of the mash, rest by rest. Private to the room.
#pragma once

#include "brewing/brew_plan.h"

namespace staveline::brewing {

struct MashLoad {
    Kilograms early{0}; ///< mashed in
    Kilograms late{0};  ///< goes in when the last rest is reached
    [[nodiscard]] Kilograms all() const { return early + late; }
};

struct MashWater {
    std::vector<MashStage> stages;
    Litres water{0};           ///< strike and infusions
    Litres volume{0};          ///< of the mash at its fullest
    Celsius beforeLateGrain{}; ///< the mash must be this warm when the late grain goes in
};

/// Strike water is `liquorToGrist` for all of the grist, late grain included. Rests rise. The water of a jump and the
/// heat of a ramp warm the late grain too. With nothing to mash there are no stages.
[[nodiscard]] MashWater mashWater(const Recipe& recipe, const Equipment& equipment, MashLoad load,
                                  LitresPerKilogram liquorToGrist);

} // namespace staveline::brewing
