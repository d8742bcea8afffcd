// SPDX-License-Identifier: GPL-3.0-or-later
// What brews measured before say about the house: how much extract it wins and how far its beer ferments, against kit
// and model. Few brews say little: the mean is shrunk towards none. The spreads are the rows "brew." of
// resources/data/rules.csv.
#pragma once

#include "brewing/refill_beer.h"

#include <optional>
#include <span>

namespace staveline::brewing {

/// One brew that was measured; its litres count as planned.
struct PastBrew {
    Plato plannedOriginal{12};
    Plato plannedFinal{2};                    ///< of the model without a house, from the measured original gravity
    std::optional<Plato> original{}, final{}; ///< as measured
    std::optional<double> won{};              ///< extract against that of the kit; of a brew that was weighed
};

struct HouseOffset {
    int brews = 0;     ///< that speak for it
    double points = 0; ///< mean of measured less planned [0.001 SG]
    double shift = 0;  ///< to plan with: logarithm of the extract won, or logit of the fermentability
    double error = 0;  ///< of the shift, one standard deviation
    double weight = 0; ///< of the brews against "as the kit and the model say", 0..1
};

struct House {
    HouseOffset extract, fermentability;
    /// What to plan with in place of the kit's own; 0.05..1.
    [[nodiscard]] Share efficiency(Share kit) const;
    [[nodiscard]] BrewParameters parameters(BrewParameters model) const;
};
/// In the order of brewing: each is taken to have been planned with what the ones before it said of the extract.
[[nodiscard]] House houseFrom(std::span<const PastBrew> brews);

/// What a plan says of the house it counts on; `kit`: the efficiency without it.
[[nodiscard]] std::vector<Message> houseNotes(const House& house, Share kit);

} // namespace staveline::brewing
