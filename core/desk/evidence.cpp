// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/evidence.h"

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

} // namespace staveline::desk
