// SPDX-License-Identifier: GPL-3.0-or-later
// Days and numbers as people write them, read in one of several ways. Private to facts.
#pragma once

#include "facts/notes.h"

namespace staveline::facts {

/// "2026-03-02" in any order that is meant; "2 Mar 2026" and "Mar 2 2026" in all. Years of two digits are 1970 to 2069.
/// A time after it ("2026-03-02T14:30:00Z", "2 Mar 2026 2:30 pm") is passed over. None: it is no such day.
[[nodiscard]] std::optional<Day> readDay(std::string_view text, DateOrder order);
/// A number with this decimal mark; groups of three by the other one, by spaces or by nothing.
[[nodiscard]] std::optional<double> readNumber(std::string_view text, char decimal);
/// "35 %" and "0.35", whatever the mark.
[[nodiscard]] std::optional<double> readShare(std::string_view text, char decimal);

} // namespace staveline::facts
