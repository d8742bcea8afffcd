// SPDX-License-Identifier: GPL-3.0-or-later
// Litres from the vessel back through fermenter and kettle. Private to the room.
#pragma once

#include "brewing/brew_plan.h"

namespace staveline::brewing {

struct BrewVolumes {
    Litres intoFermenter{0};
    Litres delivered{0};   ///< what reaches the vessel and the reserve, all losses off
    Litres cooled{0};      ///< wort after the boil at 20 C, with what the kettle keeps
    Litres postBoilHot{0}; ///< the same, boiling
    Litres preBoilHot{0};
    Litres preBoil{0}; ///< at 20 C
    Litres boiledAway{0};
};

/// For a need and a kit that `planBrew` has checked.
[[nodiscard]] BrewVolumes brewVolumes(const BatchNeed& need, const Equipment& equipment, Minutes boil);
/// The fermenter volume that makes a kettle full to the brim at the start of the boil; below 0: none.
[[nodiscard]] Litres kettleFits(const Equipment& equipment, Minutes boil);

} // namespace staveline::brewing
