// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/moved_work.h"

namespace staveline::desk {

using vessel::DueKind;

std::vector<PlannedWork> movableWork(const VesselSummary& vessel) {
    if (vessel.retired || vessel.due.kind == DueKind::nothing)
        return {};
    std::vector<PlannedWork> works;
    const auto add = [&](DueKind kind, const CycleWork& work, Day on) {
        if (!work.done)
            works.push_back({kind, on, work.set});
    };
    const bool inVessel = !vessel.toFill && !vessel.works.draw.done; // there is beer to taste and to draw
    if (inVessel)
        add(DueKind::taste, vessel.works.sample, vessel.dates.sample);
    add(DueKind::brew, vessel.works.brew, vessel.dates.brew);
    if (inVessel)
        add(DueKind::draw, vessel.works.draw, vessel.dates.draw);
    return works;
}

facts::Fact movedWork(const facts::VesselName& vessel, DueKind kind, Day today, std::optional<Day> to) {
    if (kind == DueKind::draw)
        return facts::DrawDateFact{vessel, today, to, {}};
    return facts::WorkDateFact{vessel, today, kind == DueKind::brew ? facts::Work::brew : facts::Work::taste, to, {}};
}

} // namespace staveline::desk
