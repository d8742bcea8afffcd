// SPDX-License-Identifier: GPL-3.0-or-later
// Ferulic and p-coumaric acid in the mash: the free part dissolves, the bound part is set free by grain enzymes that
// work best at 45 C and die above 55 C. Absolute values are good to about 35 % (one standard deviation).
#pragma once

#include "brewing/mash_schedule.h"

namespace staveline {

/// Per minute; rows in resources/data/brewing_constants.csv.
struct PhenolConstants {
    double release45 = .0091, releaseEnergy = 39e3;     ///< bound acid, at 45 C, pH 5.7, esterase of Pilsner malt
    double esteraseDeath60 = .140, deathEnergy = 187e3; ///< at 60 C
    double dissolve45 = .15, dissolveEnergy = 20e3;     ///< free acid, at 45 C
    double releasePka = 5.4, releasePh = 5.7;           ///< release rises with pH; 1 at `releasePh`
};
inline constexpr PhenolConstants phenolConstants;

/// Precursors that enter the mash together [mg per kg of the whole grist; esterase relative to Pilsner malt].
struct PhenolPortion {
    double ferulicFree = 0, ferulicBound = 0, coumaricFree = 0, coumaricBound = 0, esterase = 0;
};

/// Needs no differential equation: all grains that enter together share one extent of release and one of dissolution,
/// and both are integrals of known functions.
class PhenolRelease {
public:
    PhenolRelease(const PhenolPortion& first, Ph ph, double rateFactor);

    void add(const PhenolPortion& late);
    void advance(const MashSegment& segment);
    [[nodiscard]] double ferulic() const { return dissolvedFerulic_; }   ///< mg per kg of grist
    [[nodiscard]] double coumaric() const { return dissolvedCoumaric_; } ///< mg per kg of grist

private:
    void settle(double released, double dissolved);

    double factor_;    ///< of the release rate: pH and the brewer's multiplier
    PhenolPortion in_; ///< not yet dissolved, and the esterase still active
    double dissolvedFerulic_ = 0, dissolvedCoumaric_ = 0;
};

} // namespace staveline
