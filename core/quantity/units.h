// SPDX-License-Identifier: GPL-3.0-or-later
// Quantities are one-member structs; the member names the unit, the kind says what it measures. Arithmetic stays inside
// a type.
#pragma once

#include "quantity/unit_kind.h"

#include <compare>

namespace staveline {

template <class Q>
concept Quantity = requires {
    typename Q::IsQuantity;
};

/// The bare number inside a quantity, in the unit its member names.
template <Quantity Q> constexpr double raw(const Q& q) {
    const auto& [value] = q;
    return value;
}

#define STAVELINE_QUANTITY(Name, member, unitKind)                                                                     \
    struct Name {                                                                                                      \
        double member = 0.0;                                                                                           \
        using IsQuantity = void;                                                                                       \
        static constexpr UnitKind kind = UnitKind::unitKind;                                                           \
        constexpr auto operator<=>(const Name&) const = default;                                                       \
    }

STAVELINE_QUANTITY(Litres, l, volume);
STAVELINE_QUANTITY(Kilograms, kg, mass);
STAVELINE_QUANTITY(Grams, g, smallMass);
STAVELINE_QUANTITY(Celsius, c, temperature);
STAVELINE_QUANTITY(Minutes, min, minutes);
STAVELINE_QUANTITY(Days, d, days);
STAVELINE_QUANTITY(Age, d, age); ///< days, told as a brewer tells an age
STAVELINE_QUANTITY(Plato, p, extract);
STAVELINE_QUANTITY(SpecificGravity, sg, gravity);
STAVELINE_QUANTITY(GramsPerLitre, gPerL, concentration);
STAVELINE_QUANTITY(MilligramsPerLitre, mgPerL, trace);
STAVELINE_QUANTITY(MilliequivalentsPerLitre, mEqPerL, none);
STAVELINE_QUANTITY(Ibu, ibu, bitterness);
STAVELINE_QUANTITY(Ebc, ebc, colour);
STAVELINE_QUANTITY(Ph, ph, ph);
STAVELINE_QUANTITY(PercentVol, pct, alcohol);
STAVELINE_QUANTITY(Share, of1, share);      ///< 0..1; shown as per cent
STAVELINE_QUANTITY(Points, points, points); ///< tasting score or its difference, 0..10
STAVELINE_QUANTITY(CelsiusPerMinute, cPerMin, heatingRate);
STAVELINE_QUANTITY(LitresPerHour, lPerH, flow);
STAVELINE_QUANTITY(LitresPerKilogram, lPerKg, thickness);
STAVELINE_QUANTITY(Co2Volumes, vol, carbonation);
STAVELINE_QUANTITY(GaugePressure, barOverAir, pressure);             ///< as a gauge shows it; 0: that of the air
STAVELINE_QUANTITY(AbsolutePressure, barAbsolute, absolutePressure); ///< 0: a vacuum
STAVELINE_QUANTITY(Millilitres, ml, smallVolume);

#undef STAVELINE_QUANTITY

template <Quantity Q> constexpr Q operator+(Q a, Q b) {
    return Q{raw(a) + raw(b)};
}
template <Quantity Q> constexpr Q operator-(Q a, Q b) {
    return Q{raw(a) - raw(b)};
}
template <Quantity Q> constexpr Q operator-(Q a) {
    return Q{-raw(a)};
}
template <Quantity Q> constexpr Q operator*(Q a, double k) {
    return Q{raw(a) * k};
}
template <Quantity Q> constexpr Q operator*(double k, Q a) {
    return Q{raw(a) * k};
}
template <Quantity Q> constexpr Q operator/(Q a, double k) {
    return Q{raw(a) / k};
}
template <Quantity Q> constexpr double operator/(Q a, Q b) {
    return raw(a) / raw(b);
}
template <Quantity Q> constexpr Q& operator+=(Q& a, Q b) {
    return a = a + b;
}
template <Quantity Q> constexpr Q& operator-=(Q& a, Q b) {
    return a = a - b;
}

} // namespace staveline
