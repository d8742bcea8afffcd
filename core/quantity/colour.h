// SPDX-License-Identifier: GPL-3.0-or-later
// Scales of colour, and the colour of wort from its grist (Morey).
#pragma once

#include "quantity/units.h"

#include <span>

namespace staveline {

struct ColouredMass {
    Kilograms mass;
    Ebc colour;
};
/// Malt colour units from kg, EBC and litres, then Morey's power law.
[[nodiscard]] Ebc wortColour(std::span<const ColouredMass> grist, Litres volume);
/// Both scale the absorbance at 430 nm: EBC = 25 A, SRM = 12.7 A.
[[nodiscard]] double toSrm(Ebc colour);
[[nodiscard]] Ebc ebcOfSrm(double srm);
/// Degrees Lovibond of malt: SRM = 1.3546 L - 0.76. What is 0 on one scale is on the other: the offset belongs to malt.
[[nodiscard]] double toLovibond(Ebc malt);
[[nodiscard]] Ebc ebcOfLovibond(double lovibond);

} // namespace staveline
