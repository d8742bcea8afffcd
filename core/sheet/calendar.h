// SPDX-License-Identifier: GPL-3.0-or-later
// The days of a cellar as an iCalendar file (RFC 5545), for the calendar a brewer already keeps.
#pragma once

#include "quantity/day.h"

#include <string>
#include <vector>

namespace staveline::sheet {

struct CalendarItem {
    enum class Kind { event, task }; ///< a day in the calendar; a job with a day by which it is due
    Kind kind = Kind::event;
    std::string id; ///< its own among all books and always the same: a later file brings the entry up to date
    Day on{};
    std::string title;
};

/// `written`: the day it was made; `revision` grows with every change of the book, so that the later file wins.
[[nodiscard]] std::string writeCalendar(const std::vector<CalendarItem>& items, Day written, std::int64_t revision);

} // namespace staveline::sheet
