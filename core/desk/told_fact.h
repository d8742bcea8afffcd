// SPDX-License-Identifier: GPL-3.0-or-later
// A fact as a brewer reads it on paper: made from its description, so that a new field needs nothing here. Private to
// the desk.
#pragma once

#include "facts/fact_list.h"
#include "ingredient/pantry.h"
#include "sheet/document.h"

namespace staveline::desk {

/// What is said of it beside its vessel and day: one table of fields, then one of each list.
[[nodiscard]] std::vector<sheet::Block> toldFact(const facts::Fact& fact, const ingredient::Pantry& pantry,
                                                 const DisplayUnits& units);

} // namespace staveline::desk
