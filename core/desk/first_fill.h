// SPDX-License-Identifier: GPL-3.0-or-later
// The first fill of an empty vessel: what to brew now and what to know before.
#pragma once

#include "brewing/brew_plan.h"
#include "desk/cellar.h"

namespace staveline::desk {

struct CurrentVessel;

/// What the plan counts on where no kit is described, and of a first fill: its litres and days, what lives in the
/// vessel, and where kit and vessel do not fit each other.
[[nodiscard]] std::vector<Message> firstFillNotes(const CurrentVessel& vessel, const SharedFacts& shared,
                                                  const facts::EquipmentFact& kit, const brewing::BrewPlan& plan);
/// Refuses what needs beer in the vessel (notPossible, "/vessel"): says what to brew now, when it is filled, and what
/// to do where it holds beer already.
[[nodiscard]] Result<void> holdsBeer(const CurrentVessel& vessel);

} // namespace staveline::desk
