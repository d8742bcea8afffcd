// SPDX-License-Identifier: GPL-3.0-or-later
// The days a brewer can mean: a slip in the year is found, and what is computed from a day stays a day.
#pragma once

#include "quantity/day.h"

#include <optional>

namespace staveline {

inline constexpr Day firstDay = std::chrono::year(1900) / 1 / 1;
inline constexpr Day lastDay = std::chrono::year(2200) / 12 / 31;

/// Outside firstDay..lastDay: a fault at `path`.
[[nodiscard]] Result<void> checkDay(Day day, std::string_view path);
/// What isoDay() wrote, of any year: for what is stored already. None: no such day.
[[nodiscard]] std::optional<Day> storedDay(std::string_view text);

} // namespace staveline
