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

/// With what was told of the culture last among the first `count` events.
forward::Parameters CarriedStates::parametersAfter(std::size_t count) const {
    forward::Parameters parameters = parameters_;
    for (std::size_t i = 0; i < count; ++i)
        parameters.culture = events_[i].culture.value_or(parameters.culture);
    return parameters;
}

culture::AgeConditions CarriedStates::cellaringAfter(std::size_t count) const {
    culture::AgeConditions cellaring = cellaring_;
    for (std::size_t i = 0; i < count; ++i)
        cellaring = events_[i].cellaring.value_or(cellaring);
    return cellaring;
}

/// Over `events` events after the first `count`, and on to `day`.
CarriedStates::Stood CarriedStates::carried(const Stood& from, std::size_t count, std::size_t events, Day day,
                                            const Beers& beers) const {
    const Day until = std::max(from.on, day);
    const culture::AgeConditions cellaring = cellaringAfter(count);
    return {until,
            carryForward(from.state, from.on, std::span<const forward::BlendEvent>(events_).subspan(count, events),
                         beers, usual_, until, cellaring, parametersAfter(count))};
}

culture::VesselState CarriedStates::on(Day day, std::size_t count, const Beers& beers) {
    if (const auto again = asked_.find({day, count}); again != asked_.end())
        return again->second;
    for (std::size_t next = after_.size() - 1; next < count; ++next)
        after_.push_back(carried(after_.back(), next, 1, events_[next].on, beers));
    return asked_.emplace(std::pair{day, count}, carried(after_[count], count, 0, day, beers).state).first->second;
}

} // namespace staveline::estimate
