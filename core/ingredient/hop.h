// SPDX-License-Identifier: GPL-3.0-or-later
// Hops, and what is left of their alpha acids after a time in store.
#pragma once

#include "quantity/units.h"

#include <array>
#include <string>
#include <string_view>

namespace staveline::ingredient {

/// What keeps the air off: nothing, a tight pack with air in it, a tight pack without.
enum class HopPack { open, closed, sealed };
inline constexpr std::array<std::string_view, 3> hopPacks = {"open", "closed", "sealed"};

struct Hop {
    std::string id;
    std::string name;
    Share alpha{.05};          ///< of its mass, when it was packed; 0.001..0.25
    Share lostInSixMonths{.4}; ///< of the alpha acids, in the open at 20 C; 0.05..0.8
    Celsius storedAt{4};       ///< -25..25
    HopPack packed = HopPack::sealed;
    Days age{0}; ///< in that store when it comes to hand
    std::string source;
    bool operator==(const Hop&) const = default;
};

/// Alpha acids after `kept` more days in its store: first order, the rate halved for every 15 C below 20 (Garetz 1994).
/// Never below what a recipe can name, 0.1 %.
[[nodiscard]] Share alphaAfter(const Hop& hop, Days kept);

} // namespace staveline::ingredient
