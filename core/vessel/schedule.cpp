// SPDX-License-Identifier: GPL-3.0-or-later
#include "vessel/schedule.h"

#include "quantity/day_limits.h"

#include <algorithm>
#include <cmath>

namespace staveline::vessel {
namespace {

/// Whole days, at least 0 and at most a century: a rule cannot push dates out of the calendar.
std::chrono::days whole(Days days) {
    const double d = std::isfinite(days.d) ? std::clamp(days.d, 0.0, 36525.0) : 0;
    return std::chrono::days(std::lround(d));
}

/// The day the cycle began by its interval: of a draw made early or late, an interval before it.
Day cycleStart(const LedgerState& now, const ScheduleRule& rule, Day today) {
    if (rule.drawn)
        return *rule.drawn - std::chrono::days{std::lround(rule.interval.d)};
    return now.lastRefill.value_or(now.opened.value_or(today));
}

/// A draw that is made counts from its day; one to come waits for a fault to clear, before which nothing is brewed for
/// it; either waits for its refill.
Day drawDue(Day from, const ScheduleRule& rule) {
    Day due = rule.drawn.value_or(rule.fixed.value_or(from + whole(rule.interval)));
    if (rule.fault && !rule.drawn)
        due = std::max(due, rule.brewed ? *rule.fault : *rule.fault + whole(rule.primary));
    return rule.brewed ? std::max(due, *rule.brewed + whole(rule.primary)) : due;
}

/// What was tasted before a fault clears is not the last word.
std::optional<Day> sampled(const ScheduleRule& rule) {
    return rule.fault && rule.sampled && *rule.sampled < *rule.fault ? std::nullopt : rule.sampled;
}

void planNext(Schedule& dates, const ScheduleRule& rule) {
    dates.nextDraw = dates.draw + whole(rule.nextInterval.value_or(rule.interval));
    dates.nextSample = std::max(dates.draw, dates.nextDraw - whole(rule.sampleBefore));
}

/// Nothing is tasted before: the fill day stands in for it.
Schedule firstFill(const ScheduleRule& rule, Day today) {
    Schedule dates{};
    dates.brew = dates.brewDue = rule.brewed.value_or(today);
    dates.drawDue = dates.brew + whole(rule.primary);
    dates.draw = std::max(dates.drawDue, today);
    dates.sample = dates.sampleDue = dates.draw;
    planNext(dates, rule);
    return dates;
}

/// Nothing is planned beyond the calendar of the book.
Schedule inCalendar(Schedule dates) {
    for (Day* day : {&dates.sample, &dates.brew, &dates.draw, &dates.nextSample, &dates.nextDraw, &dates.sampleDue,
                     &dates.brewDue, &dates.drawDue})
        *day = std::min(*day, lastDay);
    return dates;
}

} // namespace

Schedule schedule(const LedgerState& now, const ScheduleRule& rule, Day today) {
    if (rule.empty)
        return inCalendar(firstFill(rule, today));
    const Day from = cycleStart(now, rule, today);
    Schedule dates{};
    dates.drawDue = drawDue(from, rule);
    dates.sampleDue = rule.fault.value_or(std::max(from, dates.drawDue - whole(rule.sampleBefore)));
    dates.brewDue = dates.drawDue - whole(rule.primary);
    dates.sample = sampled(rule).value_or(std::max(dates.sampleDue, today));
    dates.brew = rule.brewed.value_or(std::max(dates.brewDue, today));
    dates.draw = std::max({dates.drawDue, dates.brew + whole(rule.primary), today});
    planNext(dates, rule);
    return inCalendar(dates);
}

bool looksAtDraw(Day tasted, const LedgerState& now, Days interval) {
    if (!now.opened)
        return false;
    return tasted >= now.lastRefill.value_or(*now.opened) + std::chrono::days{static_cast<int>(interval.d / 2)};
}

NextJob nextJob(const LedgerState& now, const ScheduleRule& rule, const Schedule& dates) {
    if (rule.empty)
        return rule.brewed ? NextJob{DueKind::refill, dates.drawDue} : NextJob{DueKind::brew, dates.brewDue};
    if (!now.opened)
        return {};
    if (rule.drawn)
        return rule.brewed ? NextJob{DueKind::refill, dates.drawDue} : NextJob{DueKind::brew, dates.brewDue};
    if (!sampled(rule))
        return {DueKind::taste, dates.sampleDue};
    if (!rule.brewed)
        return {DueKind::brew, dates.brewDue};
    return {DueKind::draw, dates.drawDue};
}

} // namespace staveline::vessel
