// SPDX-License-Identifier: GPL-3.0-or-later
// Colour of wort from its grist (Morey).
#pragma once

#include "quantity/units.h"

#include <span>

namespace staveline {

struct ColouredMass {
    Kilograms mass;
    Ebc colour;
};
/// Malt colour units from kg, EBC and litres, then Morey's power law; EBC = 1.97 SRM.
[[nodiscard]] Ebc wortColour(std::span<const ColouredMass> grist, Litres volume);
[[nodiscard]] double toSrm(Ebc colour);
[[nodiscard]] Ebc fromSrm(double srm);

} // namespace staveline
