// SPDX-License-Identifier: GPL-3.0-or-later
// Ingredients of the brewer's own: what speaks against one, and that none changes what was brewed.
#pragma once

#include "desk/cellar.h"

namespace staveline::desk {

/// Beyond fields and ranges: its id and name are free, and it is like one there is. Faults at its fields.
[[nodiscard]] Result<void> canBeOwn(const facts::OwnGrainFact& fact, const SharedFacts& shared);
[[nodiscard]] Result<void> canBeOwn(const facts::OwnYeastFact& fact, const SharedFacts& shared);
[[nodiscard]] Result<void> canBeOwn(const facts::OwnHopFact& fact, const SharedFacts& shared);

/// No brew on record is made of anything else `after` than `before`: fault at "/on" that says from when on it can be.
[[nodiscard]] Result<void> keepsBrews(const SharedFacts& before, const SharedFacts& after);
/// No recipe names what `after` has no longer; fault at "/ingredient" with who is brewed with it.
[[nodiscard]] Result<void> keepsRecipes(const SharedFacts& before, Cellar& after);

} // namespace staveline::desk
