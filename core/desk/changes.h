// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "advice/advise.h"

namespace staveline {

/// What `to` changes against `from`, each with its old and new value: lever by lever, then what no lever speaks of.
[[nodiscard]] std::vector<std::string> changesBetween(const Setting& from, const Setting& to, const Pantry& pantry,
                                                      const DisplayUnits& units);

} // namespace staveline
