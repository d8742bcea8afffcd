// SPDX-License-Identifier: GPL-3.0-or-later
// The coming brew: its recipe and where that comes from, drafts of it, and what the beer as brewed means.
#pragma once

#include "advice/advise.h"
#include "brewing/as_brewed.h"
#include "brewing/brew_plan.h"
#include "facts/facts.h"

#include <optional>
#include <string>
#include <vector>

namespace staveline::desk {

/// The recipe for the coming refill and where it comes from.
struct PlannedRecipe {
    advice::Setting setting;
    /// `lastRefill`: nothing is decided for this refill, the choice made for an earlier one goes on.
    enum class From { habit, baseRecipe, choice, lastRefill } from = From::habit;
    std::optional<Day> since;              ///< of the base recipe or the choice
    int proposal = 0;                      ///< of the choice
    bool usual = false;                    ///< the recipe is the base recipe
    std::optional<facts::BrewFact> brewed; ///< the brew made for this refill: the plan is locked
    std::vector<std::string> moves;        ///< what changes against the last refill, with old and new values
    bool firstFill = false;                ///< the vessel is empty: nothing is drawn for it
};
/// A brew as the refill form offers it.
struct BrewStock {
    std::int64_t id = 0;
    facts::BrewFact brew;
    std::optional<Litres> left; ///< for a vessel; none: what went into the fermenter is not recorded
    bool forThisRefill = false;
    bool poured = false; ///< some of it is in a vessel
};
/// A draft recalculated; nothing is written.
struct BrewDraft {
    brewing::BrewPlan plan;
    brewing::MashTrace mash;
    brewing::RefillBeer beer;
};
struct BrewMeaning {
    bool coming = true;                           ///< it is for the coming refill; else only `words` count
    bool firstFill = false;                       ///< nothing is promised of an empty vessel: only `words` count
    PerDimension<advice::Band> planned, asBrewed; ///< at the next draw
    std::vector<Message> words;                   ///< what the difference means
};
inline constexpr Share leastEfficiency{.3}; ///< that a kit can have, as facts/fields.h says
struct DayEfficiency {
    brewing::WonExtract won;
    facts::EquipmentFact kit;   ///< in use today for the brew's vessel
    std::optional<Share> offer; ///< for the kit, in whole percents; none: it has that already, or it cannot be
    Message words;
};

} // namespace staveline::desk
