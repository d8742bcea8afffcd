// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "advice/advise.h"
#include "quantity/text.h"

namespace staveline::desk {

/// What `to` changes against `from`, each with its old and new value: lever by lever, then what no lever speaks of.
[[nodiscard]] std::vector<std::string> changesBetween(const advice::Setting& from, const advice::Setting& to,
                                                      const ingredient::Pantry& pantry, const DisplayUnits& units);

} // namespace staveline::desk
