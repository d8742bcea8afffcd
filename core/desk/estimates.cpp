// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/estimates.h"

#include "desk/evidence.h"
#include "desk/inside.h"
#include "desk/rooms.h"
#include "desk/vessel_story.h"

#include <algorithm>

namespace staveline::desk {
namespace {

std::vector<estimate::Measurement> measurements(const VesselRecord& record, Day today) {
    std::vector<estimate::Measurement> all;
    for (const auto& [on, values] : measuredUpTo(record, today))
        all.push_back({on, values->gravity});
    return all;
}

const tasting::Sitting* tastedLast(const CurrentVessel& vessel) {
    const facts::SittingFact* fact = lastToLearnFrom(vessel.record, vessel.today);
    return fact && estimate::ofThisCycle(fact->sitting.on, vessel.now().lastRefill) ? &fact->sitting : nullptr;
}

} // namespace

std::vector<MeasuredOn> measuredUpTo(const VesselRecord& record, Day until) {
    std::vector<MeasuredOn> all;
    const auto add = [&](const auto& list) {
        for (const auto& stored : list)
            if (stored.fact.on <= until)
                all.push_back({stored.fact.on, &stored.fact.measured});
    };
    add(record.of<facts::ReadingFact>());
    add(record.of<facts::SampleFact>());
    add(record.of<facts::DrawOffFact>());
    add(record.of<facts::OpeningFact>());
    std::stable_sort(all.begin(), all.end(), [](const MeasuredOn& a, const MeasuredOn& b) { return a.on < b.on; });
    return all;
}

Result<estimate::KnownOfVessel> knownOf(const CurrentVessel& vessel, Cellar& cellar) {
    const VesselRecord& record = vessel.record;
    Chemistry chemistry(cellar, vessel);
    auto state = chemistry.on(record, vessel.today);
    if (!state)
        return fail(state.error());
    estimate::KnownOfVessel known;
    known.today = vessel.today;
    known.lastRefill = vessel.now().lastRefill;
    known.state = *state;
    known.cellaring = cellaringOn(record, vessel.today, cellar, vessel.today);
    known.measured = measurements(record, vessel.today);
    known.tasted = tastedLast(vessel);
    if (const facts::TargetFact* target = record.latest<facts::TargetFact>(vessel.today))
        known.target = target->target;
    else
        known.targetSet = false;
    known.parameters = parametersFor(record, vessel.today);
    StoryTeller teller(cellar, chemistry, vessel.today);
    const estimate::Story& story = teller.storyOf(record);
    known.learned = learnFrom(story, {vessel.today}, known.parameters.score, teller.others());
    known.earlier = learnFrom(beforeThisCycle(story), {vessel.today}, known.parameters.score, teller.others());
    return known;
}

Result<EstimatesView> Desk::estimates(const facts::VesselName& name) const {
    auto vessel = inside_->current(name);
    if (!vessel)
        return fail(vessel.error());
    auto known = knownOf(**vessel, *inside_->cellar);
    if (!known)
        return fail(known.error());
    return estimatesFrom(*known);
}

} // namespace staveline::desk
