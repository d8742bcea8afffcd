// SPDX-License-Identifier: GPL-3.0-or-later
// Quantities are one-member structs; the member names the unit. Arithmetic stays inside a type.
#pragma once

#include <compare>
#include <string_view>

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

#define STAVELINE_QUANTITY(Name, member, symbolText)                                                                   \
    struct Name {                                                                                                      \
        double member = 0.0;                                                                                           \
        using IsQuantity = void;                                                                                       \
        static constexpr std::string_view symbol = symbolText;                                                         \
        constexpr auto operator<=>(const Name&) const = default;                                                       \
    }

STAVELINE_QUANTITY(Litres, l, "L");
STAVELINE_QUANTITY(Kilograms, kg, "kg");
STAVELINE_QUANTITY(Grams, g, "g");
STAVELINE_QUANTITY(Celsius, c, "C");
STAVELINE_QUANTITY(Minutes, min, "min");
STAVELINE_QUANTITY(Days, d, "d");
STAVELINE_QUANTITY(Plato, p, "P");
STAVELINE_QUANTITY(SpecificGravity, sg, "");
STAVELINE_QUANTITY(GramsPerLitre, gPerL, "g/L");
STAVELINE_QUANTITY(MilligramsPerLitre, mgPerL, "mg/L");
STAVELINE_QUANTITY(MilliequivalentsPerLitre, mEqPerL, "mEq/L");
STAVELINE_QUANTITY(Ibu, ibu, "IBU");
STAVELINE_QUANTITY(Ebc, ebc, "EBC");
STAVELINE_QUANTITY(Ph, ph, "");
STAVELINE_QUANTITY(PercentVol, pct, "% vol");
STAVELINE_QUANTITY(Share, of1, "");     ///< 0..1; shown as per cent
STAVELINE_QUANTITY(Points, points, ""); ///< tasting score or its difference, 0..10
STAVELINE_QUANTITY(CelsiusPerMinute, cPerMin, "C/min");
STAVELINE_QUANTITY(LitresPerHour, lPerH, "L/h");
STAVELINE_QUANTITY(LitresPerKilogram, lPerKg, "L/kg");
STAVELINE_QUANTITY(Co2Volumes, vol, "vol");

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
