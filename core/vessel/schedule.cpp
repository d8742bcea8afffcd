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

std::optional<Day> begun(const LedgerState& now) {
    return now.lastRefill ? now.lastRefill : now.opened;
}

/// The day the cycle began by its interval: of a draw made early or late, an interval before it.
Day cycleStart(const LedgerState& now, const ScheduleRule& rule, Day today) {
    if (rule.drawn)
        return *rule.drawn - whole(intervalOf(now, rule));
    return begun(now).value_or(today);
}

/// A draw that is made counts from its day; one to come waits for a fault to clear, before which nothing is brewed for
/// it; either waits for its refill.
Day drawDue(const LedgerState& now, Day from, const ScheduleRule& rule) {
    Day due = rule.drawn.value_or(rule.fixed.value_or(from + whole(intervalOf(now, rule))));
    if (rule.fault && !rule.drawn)
        due = std::max(due, rule.brewed ? *rule.fault : *rule.fault + whole(rule.primary));
    if (rule.brewFixed && !rule.brewed)
        due = std::max(due, *rule.brewFixed + whole(rule.primary));
    return rule.brewed ? std::max(due, *rule.brewed + whole(rule.primary)) : due;
}

/// What was tasted before a fault clears is not the last word.
std::optional<Day> sampled(const ScheduleRule& rule) {
    return rule.fault && rule.sampled && *rule.sampled < *rule.fault ? std::nullopt : rule.sampled;
}

/// What is tasted before a fault clears is tasted again.
Day sampleDue(Day from, Day draw, const ScheduleRule& rule) {
    const Day wanted = rule.sampleFixed.value_or(std::max(from, draw - whole(rule.sampleBefore)));
    return rule.fault ? std::max(*rule.fault, rule.sampleFixed.value_or(*rule.fault)) : wanted;
}

/// What goes in is as old as the days since its brew. Drawn too little to come below its age, it waits for a brew.
Days nextInterval(const Schedule& dates, const LedgerState& now, const ScheduleRule& rule) {
    if (!byAge(rule))
        return rule.nextInterval.value_or(rule.interval);
    const Days refillAge{static_cast<double>(std::max(0, daysBetween(dates.brew, dates.draw)))};
    const Exchange exchange = exchangeOn(now, *rule.aim, dates.draw, refillAge);
    LedgerState after;
    after.on = dates.draw;
    after.meanAge = ageAfter(exchange, rule.aim->draw);
    const Day reached = std::max(ageReached(after, rule.aim->wanted), dates.draw + whole(rule.primary));
    return {static_cast<double>(daysBetween(dates.draw, reached))};
}

void planNext(Schedule& dates, const LedgerState& now, const ScheduleRule& rule) {
    dates.nextDraw = dates.draw + whole(nextInterval(dates, now, rule));
    dates.nextSample = std::max(dates.draw, dates.nextDraw - whole(rule.sampleBefore));
}

/// Nothing is tasted before: the fill day stands in for it.
Schedule firstFill(const LedgerState& now, const ScheduleRule& rule, Day today) {
    Schedule dates{};
    dates.brewDue = rule.brewed.value_or(rule.brewFixed.value_or(today));
    dates.brew = rule.brewed.value_or(std::max(dates.brewDue, today));
    dates.drawDue = dates.brew + whole(rule.primary);
    dates.draw = std::max(dates.drawDue, today);
    dates.sample = dates.sampleDue = dates.draw;
    planNext(dates, now, rule);
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

bool byAge(const ScheduleRule& rule) {
    return rule.aim && rule.aim->wanted > rule.primary;
}

Days intervalOf(const LedgerState& now, const ScheduleRule& rule) {
    if (!byAge(rule) || !begun(now))
        return rule.interval;
    return {std::max(0.0, static_cast<double>(daysBetween(*begun(now), ageReached(now, rule.aim->wanted))))};
}

Schedule schedule(const LedgerState& now, const ScheduleRule& rule, Day today) {
    if (rule.empty)
        return inCalendar(firstFill(now, rule, today));
    const Day from = cycleStart(now, rule, today);
    Schedule dates{};
    dates.drawDue = drawDue(now, from, rule);
    dates.sampleDue = sampleDue(from, dates.drawDue, rule);
    dates.brewDue = rule.brewFixed.value_or(dates.drawDue - whole(rule.primary));
    dates.sample = sampled(rule).value_or(std::max(dates.sampleDue, today));
    dates.brew = rule.brewed.value_or(std::max(dates.brewDue, today));
    dates.draw = std::max({dates.drawDue, dates.brew + whole(rule.primary), today});
    planNext(dates, now, rule);
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
