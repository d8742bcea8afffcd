// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/round_entry.h"

namespace staveline::desk {

std::vector<facts::Fact> factsOf(const RoundEntry& entry) {
    const facts::VesselName& vessel = entry.seen.vessel;
    const Day on = entry.seen.on;
    facts::RoundFact nothing;
    nothing.vessel = vessel;
    nothing.on = on;
    nothing.nextLook = entry.seen.nextLook;
    if (entry.seen == nothing && !entry.level && !entry.topped)
        return {};
    std::vector<facts::Fact> facts;
    if (entry.level)
        facts.emplace_back(facts::DipFact{vessel, on, *entry.level, {}});
    if (entry.topped) {
        facts::TopUpFact topUp;
        topUp.vessel = vessel;
        topUp.on = on;
        topUp.volume = *entry.topped;
        topUp.brew = entry.brew;
        facts.emplace_back(topUp);
    }
    facts.emplace_back(entry.seen);
    return facts;
}

} // namespace staveline::desk
