// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/habit.h"

#include "desk/refits.h"
#include "vessel/routine.h"
#include "vessel/schedule.h"

namespace staveline::desk {

std::vector<Message> habitWords(const facts::VesselFact& vessel) {
    vessel::Routine habit;
    habit.filled = vessel.capacity;
    habit.draw = vessel.capacity * vessel.drawShare.of1;
    habit.interval = vessel.interval;
    habit.evaporationPerYear = shapeOf(vessel).evaporationPerYear;
    habit.refillAge = vessel::ScheduleRule{}.primary;
    if (habit.draw.l <= 0 || habit.interval.d <= 0)
        return {};
    const auto settled = vessel::settledAge(habit);
    const int draws = vessel::drawsToSettle(habit);
    return {say("desk.habit.settles")
                .with("draw", habit.draw)
                .with("interval", Age{habit.interval.d})
                .with("age", Age{settled.beforeDraw.d})
                .with("sd", Age{settled.sd.d}),
            say("desk.habit.way")
                .with("first", Age{habit.refillAge.d + habit.interval.d})
                .with("draws", std::int64_t{draws})
                .with("years", Age{draws * habit.interval.d}),
            say("desk.habit.litres")
                .with("draw", vessel::drawnPerYear(habit))
                .with("lost", habit.filled * habit.evaporationPerYear.of1)};
}

} // namespace staveline::desk
