// SPDX-License-Identifier: GPL-3.0-or-later
#include "vessel/ledger.h"

#include <algorithm>
#include <cmath>

namespace staveline {
namespace {

/// Whole days, at least 0 and at most a century: a rule cannot push dates out of the calendar.
std::chrono::days whole(Days days) {
    const double d = std::isfinite(days.d) ? std::clamp(days.d, 0.0, 36525.0) : 0;
    return std::chrono::days(std::lround(d));
}

} // namespace

Schedule schedule(const LedgerState& now, const ScheduleRule& rule, Day today) {
    const Day from = now.lastRefill.value_or(now.opened.value_or(today));
    Schedule dates{};
    dates.drawDue = from + whole(rule.interval);
    dates.sampleDue = std::max(from, dates.drawDue - whole(rule.sampleBefore));
    dates.sample = rule.sampled.value_or(std::max(dates.sampleDue, today));
    dates.brew = rule.brewed.value_or(std::max(dates.drawDue - whole(rule.primary), today));
    dates.draw = std::max({dates.drawDue, dates.brew + whole(rule.primary), today});
    dates.nextDraw = dates.draw + whole(rule.nextInterval.value_or(rule.interval));
    dates.nextSample = std::max(dates.draw, dates.nextDraw - whole(rule.sampleBefore));
    return dates;
}

} // namespace staveline
