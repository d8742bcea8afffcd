// SPDX-License-Identifier: GPL-3.0-or-later
#include "estimate/carried_states.h"

#include <algorithm>

namespace staveline::estimate {

CarriedStates::CarriedStates(std::vector<forward::BlendEvent> events, brewing::RefillBeer usual,
                             culture::AgeConditions cellaring, forward::Parameters parameters)
    : events_(std::move(events)), usual_(std::move(usual)), cellaring_(cellaring), parameters_(parameters) {}

std::size_t CarriedStates::countUntil(Day day, bool beforeFillings) const {
    const auto end = std::find_if(events_.begin(), events_.end(), [&](const forward::BlendEvent& event) {
        return event.on > day || (beforeFillings && event.on == day && event.share.of1 > 0);
    });
    return static_cast<std::size_t>(end - events_.begin());
}

CarriedStates::From CarriedStates::nearest(Day day, std::size_t count) const {
    const auto later = known_.upper_bound({day, count});
    const auto& [when, state] = later == known_.begin() ? *later : *std::prev(later);
    return {when.first, when.second, state};
}

/// With what was told of the culture last among the first `count` events.
forward::Parameters CarriedStates::parametersAfter(std::size_t count) const {
    forward::Parameters parameters = parameters_;
    for (std::size_t i = 0; i < count; ++i)
        parameters.culture = events_[i].culture.value_or(parameters.culture);
    return parameters;
}

culture::VesselState CarriedStates::carry(const From& from, Day day, std::size_t count, const Beers& beers) {
    const auto between = std::span<const forward::BlendEvent>(events_).subspan(from.count, count - from.count);
    const culture::VesselState state =
        carryForward(from.state, from.on, between, beers, usual_, day, cellaring_.temperature, cellaring_.oxygenPerYear,
                     parametersAfter(from.count));
    known_.emplace(std::pair{day, count}, state);
    return state;
}

} // namespace staveline::estimate
