// SPDX-License-Identifier: GPL-3.0-or-later
// The two sides of funk as a panel scored them.
#pragma once

#include "tasting/sitting.h"

namespace staveline::tasting {

/// Each from the one line of the sheet that is about this side alone; hay, earth and the funk after the swallow belong
/// to both. Only shown: the score of the dimension, its verdict and the advice rest on all its lines.
struct FunkSides {
    std::optional<DimensionReading> spice, horse;
};
inline constexpr std::string_view spiceLine = "AR2", horseLine = "AR1";

/// The errors are those of a reading that rests on one line. Empty where nobody scored the line, and where a fault
/// makes funk unusable.
[[nodiscard]] FunkSides funkSides(const Sitting& sitting, const TastingSheet& sheet, const TastingNoise& noise = {});

} // namespace staveline::tasting
