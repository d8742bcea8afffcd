// SPDX-License-Identifier: GPL-3.0-or-later
// Sugar for the bottle: by weight for a wish, and what a weight gives. The two are exact inverses.
#pragma once

#include "quantity/fault.h"

#include <string>
#include <string_view>
#include <vector>

namespace staveline::finishing {

/// A row of resources/data/priming_sugars.csv.
struct PrimingSugar {
    std::string id, name;
    double co2 = 0;     ///< that it is counted on to give [g/g]; of wort and young beer per gram of extract
    double mostCo2 = 0; ///< when all of it is fermented, as a mixed culture may in time [g/g]
    std::string source;
    [[nodiscard]] bool isLiquid() const; ///< wort or young beer: it brings its volume along
};
[[nodiscard]] const std::vector<PrimingSugar>& builtInSugars();
/// An unknown one is a fault at "/sugar" that lists the known ones.
[[nodiscard]] Result<PrimingSugar> primingSugar(std::string_view id);

struct PrimingWish {
    Litres beer{0};
    Co2Volumes wanted{2.5};
    Co2Volumes residual{0}; ///< in the beer already
    PrimingSugar sugar;
    Plato extract{12};        ///< real, of wort or young beer; of a sugar it does not count
    Millilitres package{330}; ///< of each bottle
    Litres lost{0};           ///< on the way into them, of beer that has its sugar
};
struct Priming {
    GramsPerLitre perLitre{0}; ///< of beer; of wort and young beer its extract
    Grams perPackage{0};       ///< likewise
    Kilograms batch{0};
    Litres liquid{0};    ///< of wort or young beer to add; none of a sugar
    Co2Volumes gives{0}; ///< CO2 it is counted on for, in the beer as it is filled
    Co2Volumes most{0};  ///< when all of it is fermented
    double packages = 0; ///< filled with beer and liquid, less what is lost; whole ones
};
/// Lost with hose, lees and the last bottle where nobody told more.
[[nodiscard]] Litres usualLoss(Litres beer);
/// Faults: "/litres", "/lost_l", "/volumes", "/bottle_ml" and "/extract_p" out of range, more sugar than priming ever
/// is, less wanted than the beer holds already, wort too thin to bring it.
[[nodiscard]] Result<Priming> prime(const PrimingWish& wish);

/// Of the primed beer when its sugar has fermented; `beer` as it was before, above 0 L.
[[nodiscard]] PercentVol alcoholWith(const Priming& priming, Litres beer, PercentVol alcohol);

/// What beer comes to with so much sugar. More than priming ever is, or less than none: fault at "/sugar_g_l".
[[nodiscard]] Result<Co2Volumes> volumesWith(GramsPerLitre sugar, Co2Volumes residual, const PrimingSugar& kind);

} // namespace staveline::finishing
