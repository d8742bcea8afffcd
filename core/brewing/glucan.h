// SPDX-License-Identifier: GPL-3.0-or-later
// Beta-glucan in the mash: it comes loose as the mash gets hotter, and is cut up by an enzyme that dies above 50 C.
// Raw and flaked grain opens later and is attacked less than malt.
#pragma once

#include "brewing/mash_schedule.h"

#include <array>

namespace staveline {

/// Per minute; rows in resources/data/brewing_constants.csv.
struct GlucanConstants {
    double release = .06;                                   ///< of what the temperature lets go
    double cut45 = .060, attack45 = .018, cutEnergy = 45e3; ///< dissolved and undissolved glucan, at 45 C
    double rawAttack = .15;                                 ///< attack on raw grain against malt
    double glucanaseDeath60 = .25, deathEnergy = 230e3;     ///< at 60 C
    double maltAt45 = .30, maltPerC = .0175, maltLow = .10, maltHigh = .85; ///< share that can come loose
    double rawAt45 = .10, rawPerC = .025, rawLow = .08, rawHigh = .80;
};
inline constexpr GlucanConstants glucanConstants;

/// Glucan that enters the mash together [g per kg of the whole grist; glucanase relative to Pilsner malt].
struct GlucanPortion {
    double malt = 0, raw = 0, glucanase = 0;
};

class GlucanRelease {
public:
    explicit GlucanRelease(const GlucanPortion& first);

    void add(const GlucanPortion& late);
    void advance(const MashSegment& segment);
    [[nodiscard]] double dissolved() const { return state_[5]; } ///< long-chain, g per kg of grist

private:
    struct Rates;
    using State = std::array<double, 6>;
    [[nodiscard]] static Rates ratesAt(double celsius);
    [[nodiscard]] static State change(const Rates& rates, const State& y);

    State state_{};
};

} // namespace staveline
