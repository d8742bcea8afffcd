// SPDX-License-Identifier: GPL-3.0-or-later
// Months and days of the week, short, in the language spoken.
#pragma once

#include "quantity/day.h"

namespace staveline {

/// 1 to 12.
[[nodiscard]] std::string monthInWords(unsigned month);
[[nodiscard]] std::string weekdayInWords(Day day);

} // namespace staveline
