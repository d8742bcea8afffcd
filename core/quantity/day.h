// SPDX-License-Identifier: GPL-3.0-or-later
// Civil days. The ledger knows days, not instants; no time zones anywhere.
#pragma once

#include "quantity/fault.h"

#include <chrono>
#include <cmath>
#include <optional>
#include <string>
#include <string_view>

namespace staveline {

using Day = std::chrono::sys_days;

inline constexpr double daysPerYear = 365.25;
inline constexpr double daysPerMonth = 30.4375;

/// "2026-03-02"; anything else, or a day that does not exist, is a fault at `path`.
[[nodiscard]] Result<Day> parseDay(std::string_view text, std::string_view path = "");
[[nodiscard]] std::string isoDay(Day day);
/// "14:30" or "9:05" in minutes since midnight; none: that is no time of day.
[[nodiscard]] std::optional<int> minuteOfDay(std::string_view text);
/// "2 Mar 2026": for people, on every screen and paper the same.
[[nodiscard]] std::string dayInWords(Day day);
[[nodiscard]] constexpr int daysBetween(Day from, Day to) {
    return static_cast<int>((to - from).count());
}
/// So many days on, the last one counted when half of it is over.
[[nodiscard]] inline Day after(Day day, Days days) {
    return day + std::chrono::days{std::lround(days.d)};
}

} // namespace staveline
