// SPDX-License-Identifier: GPL-3.0-or-later
// The three dimensions of character, each 0..10.
#pragma once

#include <array>
#include <cstddef>
#include <string_view>

namespace staveline {

enum class Dimension { acidity, funk, body };
inline constexpr std::array allDimensions = {Dimension::acidity, Dimension::funk, Dimension::body};

[[nodiscard]] constexpr std::string_view name(Dimension d) {
    constexpr std::array<std::string_view, 3> names = {"acidity", "funk", "body"};
    return names[static_cast<std::size_t>(d)];
}

template <class T> struct PerDimension {
    std::array<T, 3> values{};
    constexpr T& operator[](Dimension d) { return values[static_cast<std::size_t>(d)]; }
    constexpr const T& operator[](Dimension d) const { return values[static_cast<std::size_t>(d)]; }
    bool operator==(const PerDimension&) const = default;
};
using Scores = PerDimension<double>;

} // namespace staveline
