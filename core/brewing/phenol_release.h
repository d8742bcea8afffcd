// SPDX-License-Identifier: GPL-3.0-or-later
// Ferulic and p-coumaric acid in the mash: the free part dissolves, the bound part is set free by grain enzymes that
// work best at 45 C and die above 55 C. Absolute values are good to about 35 % (one standard deviation). Constants:
// rows "phenol." of resources/data/brewing_constants.csv.
#pragma once

#include "brewing/mash_schedule.h"

namespace staveline::brewing {

/// Precursors that enter the mash together, by the mass of the whole grist.
struct PhenolPortion {
    double ferulicFree = 0;   ///< [mg/kg]
    double ferulicBound = 0;  ///< [mg/kg]
    double coumaricFree = 0;  ///< [mg/kg]
    double coumaricBound = 0; ///< [mg/kg]
    double esterase = 0;      ///< relative to Pilsner malt
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

} // namespace staveline::brewing
