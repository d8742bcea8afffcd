// SPDX-License-Identifier: GPL-3.0-or-later
// Draw day: what is true against what was planned.
#pragma once

#include "advice/advise.h"
#include "facts/facts.h"

#include <optional>
#include <vector>

namespace staveline::desk {

/// What is true on the day of the draw against what was planned: real litres, fresh tasting and titration, and what can
/// still be changed when the beer is brewed.
struct DrawDayView {
    std::optional<facts::ChoiceFact> choice;
    std::optional<facts::BrewFact> brewed;
    bool drawn = false;                        ///< already: plannedDraw is what was drawn
    Litres held{0}, plannedDraw{0}, refill{0}; ///< today; planned; what the vessel takes on the day of the draw
    std::optional<Litres> brewGives;           ///< from the fermenter of the brew, losses off
    estimate::Estimates estimates;
    PerDimension<std::optional<advice::Band>> expected; ///< at the next draw, with what is brewed and today's numbers
    std::vector<Message> findings;                      ///< "the brew is 6 L short: draw 54 L instead of 60 L", ...
    std::vector<Message> planB;                         ///< what to do when the tasting says no
};

/// "Acidity was promised at 5.2 for the next draw; with today's numbers it comes to 5.8.", of each that moved by more
/// than `least` [points].
[[nodiscard]] std::vector<Message> movedPromises(const facts::Forecast& told,
                                                 const PerDimension<std::optional<double>>& now, const Scores& least);

} // namespace staveline::desk
