// SPDX-License-Identifier: GPL-3.0-or-later
// Starch in the mash: gelatinisation in two granule classes, then alpha-amylase, beta-amylase and limit dextrinase,
// each with its own activity and its own death. Seven rates are fitted to published attenuation data (help text);
// good to about 2 points of attenuation limit between 62 and 72 C, 5 outside. Constants: rows "mash." of
// resources/data/brewing_constants.csv, per second at 65 C and full activity unless said otherwise.
#pragma once

#include "brewing/mash_schedule.h"

#include <array>

namespace staveline::brewing {

/// Mass fractions of malt starch, as anhydroglucose; they sum to 1.
struct StarchPools {
    double granules = 1; ///< not yet gelatinised
    double polymer = 0;  ///< gelatinised and uncut
    double open = 0;     ///< dextrin that beta-amylase can work on
    double branched = 0; ///< dextrin that only limit dextrinase opens
    double maltose = 0;
    double maltotriose = 0;
    double glucose = 0;
};
/// Dry extract won, as shares of what full conversion would give.
struct MaltExtract {
    double sugar = 0; ///< in the malt before the mash
    double glucose = 0;
    double maltose = 0;
    double maltotriose = 0;
    double dextrin = 0; ///< uncut starch included
    double other = 0;   ///< no carbohydrate
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
    using State = std::array<double, 11>;
    [[nodiscard]] Rates ratesAt(double celsius) const;
    [[nodiscard]] State change(const Rates& rates, const State& y) const;

    State state_{};
    double large_ = 0, small_ = 0; ///< starch put in so far, by granule class
    double alphaBell_, betaBell_, limitBell_, thickness_, shift_, betaHalfLife_, betaStableShare_, betaStableHalfLife_,
        limitRate_;
};

} // namespace staveline::brewing
