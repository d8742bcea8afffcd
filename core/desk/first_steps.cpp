// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/first_steps.h"

#include "desk/inside.h"

#include <algorithm>

namespace staveline::desk {
namespace {

constexpr std::array<std::string_view, firstStepsInOrder.size()> stepNames{"vessel", "beer",      "kit",
                                                                           "recipe", "character", "tasting"};

bool brewedFor(const SharedFacts& shared, std::string_view vessel) {
    return std::any_of(shared.brews.begin(), shared.brews.end(),
                       [&](const auto& brew) { return brew.fact.vessel == vessel; });
}

/// Whether the step was taken, told by what is recorded.
bool taken(FirstStep step, const VesselRecord& record, const SharedFacts& shared, Day today) {
    switch (step) {
    case FirstStep::vessel:
        return true;
    case FirstStep::beer:
        return !record.of<facts::OpeningFact>().empty() || !record.of<facts::RefillFact>().empty();
    case FirstStep::kit:
        return shared.kitKnown(today, record.facts.name);
    case FirstStep::recipe:
        return !record.of<facts::BaseRecipeFact>().empty() || brewedFor(shared, record.facts.name);
    case FirstStep::character:
        return !record.of<facts::TargetFact>().empty();
    case FirstStep::tasting:
        return !record.of<facts::SittingFact>().empty();
    }
    return false;
}

/// Beer was drawn from it: whoever keeps it knows the program, whatever was left out on the way.
bool lived(const VesselRecord& record) {
    return !record.of<facts::DrawOffFact>().empty();
}

FirstSteps stepsOf(const VesselRecord& record, const SharedFacts& shared, Day today) {
    FirstSteps steps;
    for (const FirstStep step : firstStepsInOrder)
        steps.done[static_cast<std::size_t>(step)] = taken(step, record, shared, today);
    return steps;
}

} // namespace

std::string_view name(FirstStep step) {
    return stepNames[static_cast<std::size_t>(step)];
}

std::optional<FirstStep> FirstSteps::next() const {
    const auto found = std::find(done.begin(), done.end(), false);
    if (found == done.end())
        return {};
    return firstStepsInOrder[static_cast<std::size_t>(found - done.begin())];
}

Result<FirstSteps> Desk::firstSteps(const facts::VesselName& name) const {
    Cellar& cellar = *inside_->cellar;
    if (auto shared = cellar.loadShared(); !shared)
        return fail(shared.error());
    FirstSteps asked;
    for (const auto& vessel : cellar.shared().vessels) {
        const auto record = cellar.vessel(vessel.fact.name);
        if (!record)
            return fail(record.error());
        const FirstSteps steps = stepsOf(**record, cellar.shared(), inside_->clock());
        asked.begun = asked.begun || !steps.next() || lived(**record);
        if (vessel.fact.name == name)
            asked.done = steps.done;
    }
    return asked;
}

} // namespace staveline::desk
