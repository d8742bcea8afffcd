// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/evidence.h"

#include <algorithm>

namespace staveline::desk {

const facts::SittingFact* lastToLearnFrom(const VesselRecord& record, Day until, Day after) {
    const auto& sittings = record.of<facts::SittingFact>();
    const auto last = std::find_if(sittings.rbegin(), sittings.rend(), [&](const auto& stored) {
        return stored.fact.learn && stored.fact.sitting.on <= until;
    });
    return last == sittings.rend() || last->fact.sitting.on <= after ? nullptr : &last->fact;
}

} // namespace staveline::desk
