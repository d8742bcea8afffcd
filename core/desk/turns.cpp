// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/turns.h"

#include <algorithm>

namespace staveline::desk {
namespace {

/// The last turn of a day in a list by day; none: nothing is on record of it.
template <class F> void takeLast(const Facts<F>& list, Day on, std::optional<int>& last) {
    const auto earlier = [](const Stored<F>& stored, Day day) { return stored.fact.on < day; };
    for (auto at = std::lower_bound(list.begin(), list.end(), on, earlier); at != list.end() && at->fact.on == on; ++at)
        last = std::max(last, std::optional(at->fact.turn.value_or(0)));
}

std::optional<int> lastTurn(const VesselRecord& record, Day on) {
    std::optional<int> last;
    facts::forEachFact([&]<class F>(std::type_identity<F>) {
        if constexpr (facts::factTraits<F>.entry)
            takeLast(record.of<F>(), on, last);
    });
    takeLast(record.refillsElsewhere, on, last);
    takeLast(record.topUpsElsewhere, on, last);
    return last;
}

} // namespace

Result<std::optional<int>> Turns::next(const facts::VesselName& vessel, Day on) {
    auto record = cellar_.vessel(vessel);
    if (!record)
        return fail(record.error());
    const std::pair day((*record)->id, on);
    auto known = given_.find(day);
    if (known == given_.end()) {
        const auto last = lastTurn(**record, on);
        // The last turn there is can be given: what comes after it shares it.
        constexpr int most = static_cast<int>(facts::turnField.high);
        known = given_.emplace(day, last ? std::optional(std::min(*last + 1, most)) : std::nullopt).first;
    }
    return known->second;
}

} // namespace staveline::desk
