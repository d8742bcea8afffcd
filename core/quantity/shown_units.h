// SPDX-License-Identifier: GPL-3.0-or-later
// The units a brewer may choose, against those that are stored: size and word of each, for texts and fields alike.
#pragma once

#include "quantity/text.h"

#include <string_view>

namespace staveline {

struct ShownVolume {
    double litres; ///< in one of it
    std::string_view word;
};
/// US gallon: 231 cubic inches, exact (NIST Handbook 44).
[[nodiscard]] constexpr ShownVolume shownVolume(DisplayUnits::Volume unit) {
    switch (unit) {
    case DisplayUnits::Volume::usGallon:
        return {3.785411784, "US gal"};
    case DisplayUnits::Volume::hectolitre:
        return {100, "hL"};
    case DisplayUnits::Volume::litre:
        break;
    }
    return {1, "L"};
}

struct ShownTemperature {
    double degreesPerCelsius, atZeroCelsius;
    std::string_view word;
};
[[nodiscard]] constexpr ShownTemperature shownTemperature(DisplayUnits::Temperature unit) {
    return unit == DisplayUnits::Temperature::fahrenheit ? ShownTemperature{1.8, 32, "°F"}
                                                         : ShownTemperature{1, 0, "°C"};
}

struct ShownPressure {
    double bars; ///< in one of it
    std::string_view word;
};
/// Pound per square inch: 6894.757 Pa (NIST Special Publication 811).
[[nodiscard]] constexpr ShownPressure shownPressure(DisplayUnits::Pressure unit) {
    return unit == DisplayUnits::Pressure::psi ? ShownPressure{0.06894757, "psi"} : ShownPressure{1, "bar"};
}

} // namespace staveline
