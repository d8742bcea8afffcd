// SPDX-License-Identifier: GPL-3.0-or-later
// Which recipe and handling count: of the refill in the vessel, of the coming one, and what the two differ by.
#pragma once

#include "advice/advise.h"
#include "desk/cellar.h"
#include "quantity/text.h"
#include "vessel/ledger.h"

namespace staveline::desk {

/// What was drawn for the refill that is still to come; none: the draw is still to come too.
[[nodiscard]] std::optional<Litres> drawnForRefill(const VesselRecord& record, const vessel::LedgerState& now);
[[nodiscard]] brewing::Recipe defaultRecipe(); ///< until one is recorded

// A choice belongs to its refill: its draw is the one that makes room for it, its recipe, interval and temperature act
// from that refill on, until a later choice's. Of a recipe the later one counts, base recipe or choice; a base recipe
// says nothing about the rest. Once it is drawn, the draw is what was drawn.

/// Whether a refill spent a choice: it went in on a later day, or on the same one and not before it.
[[nodiscard]] bool wentInAfter(const facts::RefillFact& refill, const facts::ChoiceFact& choice);
/// The choice made for the refill that is due; none after that refill went in.
[[nodiscard]] const facts::ChoiceFact* openChoice(const VesselRecord& record, const vessel::LedgerState& now);
/// The choice that the refill in the vessel went in by; none: the vessel's own interval, draw and temperature.
[[nodiscard]] const facts::ChoiceFact* choiceInForce(const VesselRecord& record, const vessel::LedgerState& now);
/// For the coming refill: what is chosen for it, or what goes on if nothing is.
[[nodiscard]] advice::Setting settingInUse(const VesselRecord& record, const ingredient::Pantry& pantry,
                                           const vessel::LedgerState& now);
/// What a refill without a brew on record was brewed by: the plan made for it, else what went on. `before`: the vessel
/// before it went in.
[[nodiscard]] brewing::Recipe recipeGoneInBy(const facts::RefillFact& refill, const VesselRecord& record,
                                             const ingredient::Pantry& pantry, vessel::LedgerState before);
/// The usual recipe and handling: the base recipe in force, and the vessel's own draw, interval and temperature.
[[nodiscard]] advice::Setting settingUsual(const VesselRecord& record, const vessel::LedgerState& now);
/// The last refill as it was brewed, without its one-cycle aids; before the first, what goes on without a choice. The
/// cycle that runs has this interval.
[[nodiscard]] advice::Setting settingLeftAlone(const VesselRecord& record, const SharedFacts& shared,
                                               const vessel::LedgerState& now);
/// The usual recipe was written anew since the last refill: without a choice the coming one is brewed by it.
[[nodiscard]] bool usualIsNew(const VesselRecord& record, const vessel::LedgerState& now);
/// What the plan for the coming refill changes against that of the last one, named with old and new values; what was
/// drawn is no part of a plan. Kept words (facts/kept_words.h).
[[nodiscard]] std::vector<std::string>
changesSinceLastRefill(const VesselRecord& record, const ingredient::Pantry& pantry, const vessel::LedgerState& now);
/// The same for a setting that may come into use.
[[nodiscard]] std::vector<std::string> changesSinceLastRefill(const VesselRecord& record,
                                                              const ingredient::Pantry& pantry,
                                                              const vessel::LedgerState& now,
                                                              const advice::Setting& to);

} // namespace staveline::desk
