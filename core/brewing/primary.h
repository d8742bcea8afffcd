// SPDX-License-Identifier: GPL-3.0-or-later
// Primary fermentation: which sugars the yeast takes, what it leaves for the vessel, what it makes.
#pragma once

#include "brewing/wort.h"

namespace staveline::brewing {

struct Attenuation {
    double taken = 0;    ///< by the yeast [g hexose/L]
    double sugar = 0;    ///< left, for lactics as it is [g hexose/L]
    double dextrin = 0;  ///< left, that a mixed culture opens with ease [g hexose/L]
    double residue = 0;  ///< left, that it opens slowly [g hexose/L]
    double glycerol = 0; ///< [g/L]
    double ethanol = 0;  ///< [g/L]
};
[[nodiscard]] Attenuation attenuate(const WortHexose& wort, const ingredient::Yeast& yeast, Plato original,
                                    const BrewParameters& parameters);

/// Boil and primary: acid [mg/L] that becomes vinyl phenol. `free`, `vinyl` are changed in place.
void decarboxylate(double& free, double& vinyl, double share, double vinylPerAcid);

} // namespace staveline::brewing
