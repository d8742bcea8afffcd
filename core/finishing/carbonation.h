// SPDX-License-Identifier: GPL-3.0-or-later
// CO2 in beer, one law for what is left in it, for priming, kegs and bottles: the ASBC chart of CO2 in beer as DeLange
// fitted it. Within 0.05 volumes from 0 to 16 C and up to 2 bar; warmer and higher it is good enough to warn by. A
// volume is 1.977 g/L.
#pragma once

#include "quantity/fault.h"

#include <variant>

namespace staveline::finishing {

[[nodiscard]] AbsolutePressure absolute(GaugePressure pressure); ///< at sea level
[[nodiscard]] GaugePressure gauge(AbsolutePressure pressure);

/// What beer holds under CO2 at rest, above 0 bar absolute; and the pressure that holds so much in it.
[[nodiscard]] Co2Volumes dissolved(AbsolutePressure head, Celsius temperature);
[[nodiscard]] AbsolutePressure equilibrium(Co2Volumes held, Celsius temperature);

[[nodiscard]] GramsPerLitre gramsOf(Co2Volumes volumes);
[[nodiscard]] Co2Volumes volumesOf(GramsPerLitre co2);

/// The gauge of a keg at which beer comes to `wanted` and stays there; below 0: flatter than beer under air.
[[nodiscard]] GaugePressure setPoint(Co2Volumes wanted, Celsius temperature);

/// In a closed bottle, as if it had no headspace: on the safe side.
[[nodiscard]] GaugePressure bottlePressure(Co2Volumes all, Celsius temperature);

/// What is known of the CO2 in beer that is ready to be packed.
struct UnderHead {
    GaugePressure head;
    Celsius temperature;
};
struct UnderAir {
    Celsius temperature; ///< at which it lies now
};
using ResidualKnown = std::variant<Co2Volumes, UnderHead, UnderAir>;

struct Residual {
    Co2Volumes value{0}; ///< the most it can hold: danger is reckoned with it, and priming too
    Co2Volumes least{0}; ///< beer out of wood is often below saturation
    bool measured = false;
};
/// Faults at "/residual_vol", "/head_bar", "/head_c" or "/temperature_c": beyond what beer can be.
[[nodiscard]] Result<Residual> residualCo2(const ResidualKnown& known);

} // namespace staveline::finishing
