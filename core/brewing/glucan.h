// SPDX-License-Identifier: GPL-3.0-or-later
// Beta-glucan in the mash: it comes loose as the mash gets hotter, and is cut up by an enzyme that dies above 50 C.
// Raw and flaked grain opens later and is attacked less than malt. Constants: rows "glucan." of
// resources/data/brewing_constants.csv.
#pragma once

#include "brewing/mash_schedule.h"

#include <array>

namespace staveline::brewing {

/// Glucan that enters the mash together, by the mass of the whole grist.
struct GlucanPortion {
    double malt = 0;      ///< [g/kg]
    double raw = 0;       ///< of raw and flaked grain [g/kg]
    double glucanase = 0; ///< relative to Pilsner malt
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

} // namespace staveline::brewing
