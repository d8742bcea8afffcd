// SPDX-License-Identifier: GPL-3.0-or-later
// Rates against temperature.
#pragma once

#include <cmath>

namespace staveline {

inline constexpr double gasConstant = 8.314462618; ///< J/(mol K)
inline constexpr double zeroCelsius = 273.15;      ///< K

/// How a rate at `reference` [C] changes at `celsius`: exp(-E/R (1/T - 1/Tref)); `energy` in J/mol.
[[nodiscard]] inline double arrhenius(double energy, double reference, double celsius) {
    return std::exp(-energy / gasConstant * (1 / (celsius + zeroCelsius) - 1 / (reference + zeroCelsius)));
}

} // namespace staveline
