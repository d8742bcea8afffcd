// SPDX-License-Identifier: GPL-3.0-or-later
// Primary fermentation: which sugars the yeast takes, what it leaves for the vessel, what it makes.
#pragma once

#include "brewing/wort.h"

namespace staveline {

struct PrimaryConstants {
    double everydayGlycerol = 2.0; ///< g/L at 12 P; already inside the yield of ethanol and the other extract
    double glucoamylaseTaste = .7; ///< a diastatic yeast takes mostly the accessible dextrin
    double leastAccessible = .15;  ///< share of the dextrin left that stays accessible even so
    double everydayLactic = .2;    ///< g/L; inside the other extract
};
inline constexpr PrimaryConstants primaryConstants;

struct Attenuation {
    double taken = 0;                           ///< by the yeast [g hexose/L]
    double sugar = 0, dextrin = 0, residue = 0; ///< left, by how easily a mixed culture opens it [g hexose/L]
    double glycerol = 0, ethanol = 0;           ///< g/L
};
[[nodiscard]] Attenuation attenuate(const WortHexose& wort, const Yeast& yeast, Plato original,
                                    const BrewParameters& parameters);

/// Molar masses of a phenolic acid and the vinyl phenol it gives [g/g].
inline constexpr double vinylGuaiacolPerFerulic = .7734, vinylPhenolPerCoumaric = .7319;

/// Boil and primary: acid [mg/L] that becomes vinyl phenol. `free`, `vinyl` are changed in place.
void decarboxylate(double& free, double& vinyl, double share, double vinylPerAcid);

} // namespace staveline
