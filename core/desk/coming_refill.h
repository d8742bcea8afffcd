// SPDX-License-Identifier: GPL-3.0-or-later
// The coming refill: its brew, its litres, and what the vessel holds when it goes in.
#pragma once

#include "brewing/brew_plan.h"
#include "desk/cellar.h"
#include "vessel/ledger.h"

namespace staveline::advice {
struct Setting;
} // namespace staveline::advice

namespace staveline::desk {

struct CurrentVessel;

/// The brew made for the coming refill: for this vessel, since its last refill or its opening, in no vessel yet; the
/// latest.
[[nodiscard]] const facts::BrewFact* brewForRefill(const VesselRecord& record, const Cellar& cellar,
                                                   const vessel::LedgerState& now, Day today);
/// Refuses, with the name of the brew, to change the recipe of a refill that is brewed already.
[[nodiscard]] Result<void> notBrewedYet(const VesselRecord& record, const Cellar& cellar, Day day);
/// What the vessel holds on the draw day, evaporation taken off; what is drawn already counts as still in it.
[[nodiscard]] Litres volumeOnDraw(const CurrentVessel& vessel, Day draw);
/// Filled to what it held after the last refill, as far as it takes that now; before the first, to its capacity. An
/// empty vessel keeps room for what ferments again.
[[nodiscard]] Litres usualFill(const CurrentVessel& vessel);
/// Litres the next refill must bring, for this setting.
[[nodiscard]] Litres refillWanted(const advice::Setting& setting, const CurrentVessel& vessel);
[[nodiscard]] Result<brewing::BrewPlan> sizedFor(const brewing::BrewInput& input, const brewing::RefillBeer& beer,
                                                 const facts::EquipmentFact& kit, Litres intoVessel);

} // namespace staveline::desk
