// SPDX-License-Identifier: GPL-3.0-or-later
// Cask geometry: total volume, and litres from a dip in a lying or standing cask. Solids of the four classical gauging
// varieties (source key: gauging); a straight keg or tank is a cask whose head is as wide as its bung.
#pragma once

#include "quantity/fault.h"

#include <vector>

namespace staveline::vessel {

struct Centimetres {
    double cm = 0;
    using IsQuantity = void;
    static constexpr std::string_view symbol = "cm";
    constexpr auto operator<=>(const Centimetres&) const = default;
};

/// How the staves run from bung to head: strongly curved to straight.
enum class Stave { spheroid, spindle, paraboloid, cone };
enum class Position { lying, standing };

/// Inside measures.
struct Cask {
    Centimetres bung{64};   ///< diameter at the middle, above 0
    Centimetres head{52};   ///< diameter at the ends, above 0, at most `bung`
    Centimetres length{80}; ///< between the heads, above 0
    Stave stave = Stave::spheroid;
};

/// The cask itself, or a fault at "<path>/bung_cm", "/head_cm" or "/length_cm".
[[nodiscard]] Result<Cask> checked(const Cask& cask, std::string_view path = "");

// All below: for a checked cask. A dip is the wet height from the lowest inside point, 0 to wetHeight().

[[nodiscard]] Litres caskVolume(const Cask& cask);
[[nodiscard]] Centimetres wetHeight(const Cask& cask, Position position);
/// Dips outside the cask count as empty or full.
[[nodiscard]] Litres volumeAt(const Cask& cask, Position position, Centimetres dip);
/// The dip at which the cask holds `volume`; 0 or wetHeight() outside. Within 1e-6 cm.
[[nodiscard]] Centimetres dipAt(const Cask& cask, Position position, Litres volume);

struct DipRow {
    Centimetres dip;
    Litres volume;
};
/// From 0 to full; the last row is the full cask even when the step does not divide the height. Step above 0.
[[nodiscard]] std::vector<DipRow> dipTable(const Cask& cask, Position position, Centimetres step);

} // namespace staveline::vessel
