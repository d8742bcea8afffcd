// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/evidence.h"

#include <algorithm>

namespace staveline::desk {

std::vector<const facts::EventFact*> eventsUpTo(const VesselRecord& record, Day until) {
    std::vector<const facts::EventFact*> events;
    for (const auto& stored : record.of<facts::EventFact>())
        if (stored.fact.on <= until)
            events.push_back(&stored.fact);
    return events;
}

std::vector<const facts::SittingFact*> sittingsToLearnFrom(const VesselRecord& record, Day until) {
    std::vector<const facts::SittingFact*> sittings;
    for (const auto& stored : record.of<facts::SittingFact>())
        if (stored.fact.learn && stored.fact.sitting.on <= until)
            sittings.push_back(&stored.fact);
    return sittings;
}

const facts::SittingFact* lastToLearnFrom(const VesselRecord& record, Day until) {
    const auto& sittings = record.of<facts::SittingFact>();
    const auto last = std::find_if(sittings.rbegin(), sittings.rend(), [&](const auto& stored) {
        return stored.fact.learn && stored.fact.sitting.on <= until;
    });
    return last == sittings.rend() ? nullptr : &last->fact;
}

} // namespace staveline::desk
