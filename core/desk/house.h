// SPDX-License-Identifier: GPL-3.0-or-later
// The house as its recorded brews show it.
#pragma once

#include "brewing/as_brewed.h"
#include "brewing/past_brews.h"
#include "desk/cellar.h"

namespace staveline::desk {

/// From brews measured up to `today`, final gravity of the latest ones. Extract of those on `kit`, the one in use;
/// null: nobody asks for it.
[[nodiscard]] brewing::House houseOn(const SharedFacts& shared, Day today, const facts::EquipmentFact* kit = nullptr);
/// Of a brew that was weighed and measured, by the kit of its day; else none.
[[nodiscard]] std::optional<brewing::WonExtract> wonOn(const facts::BrewFact& brew, const SharedFacts& shared);

} // namespace staveline::desk
