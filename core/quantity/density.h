// SPDX-License-Identifier: GPL-3.0-or-later
// Density scales, extract and alcohol.
#pragma once

#include "quantity/units.h"

namespace staveline {

inline constexpr double waterDensity20 = 0.998203; ///< kg/L

/// ASBC polynomial, SG 20/20 -> P; and its numerical inverse (round trip exact to 1e-9). SG 0.98..1.2.
[[nodiscard]] Plato toPlato(SpecificGravity gravity);
[[nodiscard]] SpecificGravity toGravity(Plato extract);
/// g extract per litre of wort at 20 C. The forward model's own form (P/(258.6 - 227.1 P/258.2)) is extractModel.
[[nodiscard]] GramsPerLitre extractPerLitre(Plato extract);
[[nodiscard]] GramsPerLitre extractModel(Plato extract);
/// Plato of `extractKg` in `volume` litres at 20 C.
[[nodiscard]] Plato platoFromExtract(Kilograms extract, Litres volume);

/// Balling: real extract [% w/w] from original and apparent extract, and alcohol.
[[nodiscard]] Plato realExtract(Plato original, Plato apparent);
[[nodiscard]] double alcoholByWeight(Plato original, Plato apparent); ///< % w/w
[[nodiscard]] PercentVol alcoholByVolume(Plato original, Plato apparent);
/// Apparent extract from real extract (inverse of realExtract).
[[nodiscard]] Plato apparentExtract(Plato original, Plato real);

/// OIML R 22: density of ethanol-water at 20 C [kg/m3], mass share 0..1; and % vol from it.
[[nodiscard]] double ethanolWaterDensity(double massShare);
[[nodiscard]] PercentVol volumeFromMassShare(double massShare);

} // namespace staveline
