// SPDX-License-Identifier: GPL-3.0-or-later
// The litres of a brew: what it gives, what the vessels took of it, what is left.
#pragma once

#include "desk/cellar.h"

namespace staveline::desk {

/// What a brew gives the vessels it is poured into, by the kit of its day; none: its litres are not recorded.
[[nodiscard]] std::optional<Litres> givesOf(const facts::BrewFact& brew, const SharedFacts& shared);
/// A brew that is corrected gives what was poured of it; one that gave less before may be brought nearer.
[[nodiscard]] Result<void> givesWhatWasPoured(const facts::BrewFact& brew, const Cellar& cellar);
/// Beer is poured after it is brewed, and no more of it than there is left. No brew, or an unknown one: fine.
[[nodiscard]] Result<void> checkPouring(const std::string& brew, Day on, Litres volume, const Cellar& cellar);

} // namespace staveline::desk
