// SPDX-License-Identifier: GPL-3.0-or-later
// The brew sheet: what changed and why, volumes, grist, mash, hops, yeast, targets, dates, cautions at their step.
#pragma once

#include "advice/advise.h"
#include "quantity/constants.h"
#include "sheet/document.h"
#include "vessel/schedule.h"

namespace staveline::sheet {

// Rows "sheet." of resources/data/rules.csv.
inline constexpr double oxygenInAir = constants::sheet::oxygenInAir; ///< g/L

/// What less is at hand of than this brew takes. Without amounts: a yeast.
struct ToBuy {
    std::string name;
    std::optional<Amount> needed, atHand, missing;
};

struct BrewSheetInput {
    std::string vessel, brewery;
    std::string brew;        ///< the name it is recorded under; empty: not brewed yet, named by what it is for
    std::string vesselShape; ///< "keg" holds pressure, other shapes are vented; empty: not known, both cautions print
    bool killerSensitive = true; ///< what lives in the vessel
    Day on{};
    brewing::BrewPlan plan;
    brewing::Recipe recipe;
    std::optional<Message> fault;             ///< of the beer in the vessel: what to do before this is brewed for it
    bool notYet = false;                      ///< by that fault: this is not to be brewed before it is gone
    std::optional<Day> lookAgain{};           ///< at the fault; none: waiting is no cure
    const advice::Proposal* chosen = nullptr; ///< none, or without moves: nothing changes against the last refill
    vessel::Schedule dates;
    std::vector<ToBuy> toBuy;
    std::vector<std::string> uncounted; ///< goes in, and nobody said how much of it there is
    bool firstFill = false;             ///< of an empty vessel: nothing is tasted or drawn before
    Litres draw{0};
    PerDimension<std::optional<advice::Band>> expected; ///< at the next draw
    std::string forecastNote;
};
[[nodiscard]] Document brewSheet(const BrewSheetInput& input, const DisplayUnits& units,
                                 const Catalogue& texts = builtInTexts());

} // namespace staveline::sheet
