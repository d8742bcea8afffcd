// SPDX-License-Identifier: GPL-3.0-or-later
// Fields that are one of a few words, each beside its words as record files and the book have them.
#pragma once

#include <array>
#include <string_view>

namespace staveline::facts {

enum class VesselForm { cask, keg, foeder, tank, carboy, bucket };
enum class Material { oakNew, oakUsed, foeder, steel, glass, plastic };
enum class Brettanomyces { established, young, none };

namespace factWords {
inline constexpr std::array<std::string_view, 6> shapes = {"cask", "keg", "foeder", "tank", "carboy", "bucket"};
inline constexpr std::array<std::string_view, 6> materials = {"oak new", "oak used", "foeder",
                                                              "steel",   "glass",    "plastic"};
inline constexpr std::array<std::string_view, 3> brett = {"established", "young", "none"};
inline constexpr std::array<std::string_view, 2> paths = {"jump", "ramp"};
} // namespace factWords

[[nodiscard]] constexpr std::string_view wordOf(VesselForm form) {
    return factWords::shapes[static_cast<std::size_t>(form)];
}
[[nodiscard]] constexpr std::string_view wordOf(Material material) {
    return factWords::materials[static_cast<std::size_t>(material)];
}
[[nodiscard]] constexpr std::string_view wordOf(Brettanomyces state) {
    return factWords::brett[static_cast<std::size_t>(state)];
}

} // namespace staveline::facts
