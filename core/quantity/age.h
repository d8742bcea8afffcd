// SPDX-License-Identifier: GPL-3.0-or-later
// How an age is told, and how far off a day is: one unit for the same age on every page, paper and line.
#pragma once

#include "quantity/day.h"
#include "quantity/units.h"

#include <string>

namespace staveline {

/// In days below this, then in months, and from the other on in years [d].
inline constexpr double ageInMonthsFrom = 3 * daysPerMonth, ageInYearsFrom = 3 * daysPerYear;

/// "80 days", "27 months", "4.1 years"
[[nodiscard]] std::string ageText(Days age);

} // namespace staveline
