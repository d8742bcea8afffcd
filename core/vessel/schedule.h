// SPDX-License-Identifier: GPL-3.0-or-later
// The days of a cycle: when to taste, brew and draw, and which of them is next. Days and habits only, no facts.
#pragma once

#include "vessel/age_plan.h"

namespace staveline::vessel {

struct ScheduleRule {
    Days interval{240};                 ///< of the cycle that runs
    std::optional<Days> nextInterval{}; ///< of the one after the draw; none: the same
    Days sampleBefore{30};
    Days primary{14};
    std::optional<Day> sampled{}; ///< in this cycle, if it was
    std::optional<Day> brewed{};  ///< the beer for this draw, if it was
    std::optional<Day> drawn{};   ///< for the coming refill already: it is due since then
    // Days the brewer set for this cycle, whatever the interval says.
    std::optional<Day> fixed{}; ///< of the draw
    std::optional<Day> sampleFixed{}, brewFixed{};
    std::optional<Day> fault{};  ///< until when a fault keeps the beer: tasted again then, and brewed for no sooner
    bool empty = false;          ///< nothing to taste or draw: brewed for now, filled when that beer is ready
    std::optional<AgeAim> aim{}; ///< drawn at an age: the intervals follow from it while what goes in is younger
};
struct Schedule {
    Day sample, brew, draw, nextSample, nextDraw; ///< the refill goes in on the draw day; the first fill too
    Day sampleDue, brewDue, drawDue;              ///< by what is known, whatever today is; before it when overdue
};
/// The aim counts: by what goes in, its age can be reached.
[[nodiscard]] bool byAge(const ScheduleRule& rule);
/// Of the cycle that runs.
[[nodiscard]] Days intervalOf(const LedgerState& now, const ScheduleRule& rule);
/// From the last refill (or opening). Nothing is planned before `today`; what was done keeps its day. A draw waits
/// for its refill: not before `primary` after the brew, and for a fault to clear. An empty vessel is filled as soon as
/// its beer is ready; its first tasting and its first draw follow by the interval, or when it is as old as wanted.
[[nodiscard]] Schedule schedule(const LedgerState& now, const ScheduleRule& rule, Day today);

/// Whether a tasting looks at the coming draw: one in the first half of a cycle looks at the refill.
[[nodiscard]] bool looksAtDraw(Day tasted, const LedgerState& now, Days interval);

enum class DueKind { taste, brew, draw, refill, nothing };
struct NextJob {
    DueKind kind = DueKind::nothing;
    Day on{};
};
/// The first that is not done: when drawn brew, then refill, else taste, brew, draw; of an empty vessel brew, then
/// refill.
/// Nothing in an unopened one that is not said to be empty.
[[nodiscard]] NextJob nextJob(const LedgerState& now, const ScheduleRule& rule, const Schedule& dates);

} // namespace staveline::vessel
