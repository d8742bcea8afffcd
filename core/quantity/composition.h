// SPDX-License-Identifier: GPL-3.0-or-later
// What beer is made of, per litre: the part of the state that blends linearly by volume.
// Carbohydrate pools are hexose equivalents, so carbon balances by construction (reference: cycle model).
#pragma once

#include "quantity/constants.h"
#include "quantity/units.h"

#include <array>

namespace staveline {

inline constexpr double ethanolPerPercent = 7.89; ///< in a litre of beer at 20 C [g/L per % vol]
inline constexpr double hexosePerSugar = 1.05;    ///< hexose from the simple sugars left in beer [g/g]

struct Composition {
    double lactic = 0;        ///< g/L
    double acetic = 0;        ///< g/L
    double sid = 0;           ///< strong-ion difference [mEq/L]
    double buffer = 1;        ///< background buffer, multiples of a 12 P beer
    double sugar = 0;         ///< S: what lactics take directly [g hexose/L]
    double dextrin = 0;       ///< D: accessible [g hexose/L]
    double residue = 0;       ///< R: slowly accessible [g hexose/L]
    double ethanol = 0;       ///< g/L
    double otherExtract = 0;  ///< protein, minerals [g/L]
    double glycerol = 0;      ///< g/L
    double betaGlucan = 0;    ///< g/L
    double arabinoxylan = 0;  ///< g/L
    double isoCis = 0;        ///< IBU
    double isoTrans = 0;      ///< IBU
    double ferulic = 0;       ///< free ferulic acid [mg/L]
    double coumaric = 0;      ///< free p-coumaric acid [mg/L]
    double esters = 0;        ///< soluble feruloyl esters [mg ferulic/L]
    double vinylGuaiacol = 0; ///< mg/L
    double vinylPhenol = 0;   ///< mg/L
    double ethylGuaiacol = 0; ///< mg/L
    double ethylPhenol = 0;   ///< mg/L
    double alphaAcids = 0;    ///< not isomerised [mg/L]
    double original = 0;      ///< original gravity of what it was brewed from [P]

    bool operator==(const Composition&) const = default;
    [[nodiscard]] constexpr Ibu bitterness() const { return {isoCis + isoTrans}; }
    [[nodiscard]] constexpr PercentVol alcohol() const { return {ethanol / ethanolPerPercent}; }
    [[nodiscard]] constexpr Plato originalGravity() const { return {original}; }
    /// Residual carbohydrate as dry extract [g/L].
    [[nodiscard]] constexpr double carbohydrate() const {
        return (dextrin + residue) / constants::wort::dextrin + sugar / hexosePerSugar;
    }
};

/// Every member in declaration order, for code that treats all pools alike.
inline constexpr std::array compositionPools = {
    &Composition::lactic,       &Composition::acetic,        &Composition::sid,         &Composition::buffer,
    &Composition::sugar,        &Composition::dextrin,       &Composition::residue,     &Composition::ethanol,
    &Composition::otherExtract, &Composition::glycerol,      &Composition::betaGlucan,  &Composition::arabinoxylan,
    &Composition::isoCis,       &Composition::isoTrans,      &Composition::ferulic,     &Composition::coumaric,
    &Composition::esters,       &Composition::vinylGuaiacol, &Composition::vinylPhenol, &Composition::ethylGuaiacol,
    &Composition::ethylPhenol,  &Composition::alphaAcids,    &Composition::original};

/// (1 - share) * old + share * fresh, pool by pool; share 0..1 of the volume after filling.
[[nodiscard]] constexpr Composition blend(const Composition& old, const Composition& fresh, Share share) {
    Composition out;
    for (auto pool : compositionPools)
        out.*pool = (1 - share.of1) * old.*pool + share.of1 * fresh.*pool;
    return out;
}

} // namespace staveline
