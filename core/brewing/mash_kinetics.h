// SPDX-License-Identifier: GPL-3.0-or-later
// Starch in the mash: gelatinisation in two granule classes, then alpha-amylase, beta-amylase and limit dextrinase,
// each with its own activity and its own death. Seven rates are fitted to published attenuation data (help text);
// good to about 2 points of attenuation limit between 62 and 72 C, 5 outside.
#pragma once

#include "brewing/mash_schedule.h"

#include <array>

namespace staveline {

/// Rates are per second at 65 C and full activity unless said otherwise; rows in resources/data/brewing_constants.csv.
struct MashConstants {
    // Gelatinisation: normal distributions of granules over temperature.
    double smallGranules = .10;                 ///< share of the starch
    double largeMean = 58.0, largeSpread = 1.6; ///< C
    double smallMean = 63.0, smallSpread = 2.5; ///< C
    double gelatinise60 = 3.2e-3;               ///< 1/s at 60 C
    double gelatiniseEnergy = 108.3e3;          ///< J/mol
    double gelatiniseSlope = .4;                ///< C per % extract in the mash liquor
    // Death of the enzymes at 65 C in a mash of 2.5 L/kg.
    double alphaHalfLife = 75, limitHalfLife = 12; ///< min; that of beta-amylase is a brew parameter
    double alphaDeathEnergy = 224.2e3, betaDeathEnergy = 410.7e3, limitDeathEnergy = 380e3; ///< J/mol
    double thicknessExponent = .30; ///< a thin mash protects beta-amylase and limit dextrinase less
    // Activity.
    double alphaEnergy = 55e3, betaEnergy = 45e3, limitEnergy = 45e3; ///< J/mol
    double alphaPolymer = 3.977e-3, alphaOpen = 1.13e-3, betaPolymer = 1.062e-3, betaOpen = 5e-2, limit = 1.351e-4;
    double alphaPh = 5.6, alphaPhWidth = .9, betaPh = 5.4, betaPhWidth = .8, limitPh = 5.1, limitPhWidth = .7;
    // What each reaction makes, mass shares.
    double branched = .316, maltose = .06322, maltotriose = .03557, glucose = .02; ///< alpha on polymer
    double openMaltotriose = .22, openGlucose = .06;                               ///< beta on open dextrin
    double lateMaltotriose = .33, lateGlucose = .22, lateBranched = .10;           ///< alpha on open dextrin
    double starchShare = .79, sugarShare = .09, starchHydration = 1.045;           ///< of the extract of malt
};
inline constexpr MashConstants mashConstants;

/// Mass fractions of malt starch, as anhydroglucose; they sum to 1.
struct StarchPools {
    double granules = 1, polymer = 0, open = 0, branched = 0, maltose = 0, maltotriose = 0, glucose = 0;
};
/// Dry extract won, as shares of what full conversion would give.
struct MaltExtract {
    double sugar = 0, glucose = 0, maltose = 0, maltotriose = 0, dextrin = 0, other = 0;
    [[nodiscard]] double fermentable() const { return sugar + glucose + maltose + maltotriose; }
    [[nodiscard]] double total() const { return fermentable() + dextrin + other; }
};
[[nodiscard]] MaltExtract extractOf(const StarchPools& pools);

/// One mash, walked segment by segment.
class MashKinetics {
public:
    struct Portion {
        double starch = 1; ///< share of the mash's starch; first and late portion sum to 1
        double enzyme = 1; ///< activity per unit of the whole mash; 1: a pale malt of 250 WK
    };
    MashKinetics(Portion first, Ph ph, LitresPerKilogram liquor, const BrewParameters& parameters);

    void add(Portion late);
    void advance(const MashSegment& segment);
    [[nodiscard]] StarchPools pools() const;
    /// Active share of the first portion's enzymes [alpha, beta, limit dextrinase], times its activity.
    [[nodiscard]] std::array<double, 3> enzymes() const;

private:
    struct Rates;
    using State = std::array<double, 10>;
    [[nodiscard]] Rates ratesAt(double celsius) const;
    [[nodiscard]] State change(const Rates& rates, const State& y) const;

    State state_{};
    double large_ = 0, small_ = 0; ///< starch put in so far, by granule class
    double alphaBell_, betaBell_, limitBell_, thickness_, shift_, betaHalfLife_, limitRate_;
};

} // namespace staveline
