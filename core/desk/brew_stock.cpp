// SPDX-License-Identifier: GPL-3.0-or-later
// The litres of a brew: what it gives, what the vessels took of it, what is left.
#include "desk/brewed.h"
#include "desk/inside.h"

#include <algorithm>

namespace staveline {
namespace {

// Fermenter and vessel are read apart, by two gauges: they agree to some 3 %, and never to less than a litre (common
// practice, no source). Less than that is no lack of beer.
constexpr double gaugesOfVolume = .03;
constexpr Litres gaugesAtLeast{1};

using Taken = std::map<std::string, Litres, std::less<>>;

Taken takenOf(const std::vector<Poured>& pourings) {
    Taken taken;
    for (const auto& each : pourings)
        taken.try_emplace(each.brew, Litres{0}).first->second.l += each.volume.l;
    return taken;
}

std::optional<Litres> leftOf(const BrewFact& brew, const SharedFacts& shared, const Taken& taken) {
    const auto gives = givesOf(brew, shared);
    const auto at = taken.find(brew.name);
    if (!gives || at == taken.end())
        return gives;
    return std::max(Litres{0}, *gives - at->second);
}

Result<void> tooShort(const BrewFact& brew, Litres volume, Litres left) {
    if (left.l < .05) // shown as 0.0 L
        return badInput("/volume_l", say("desk.brew_used_up").with("brew", brew.name), say("desk.brew_used_up.remedy"));
    return badInput("/volume_l",
                    say("desk.brew_too_short").with("volume", volume).with("brew", brew.name).with("left", left),
                    say("desk.brew_too_short.remedy").with("left", left));
}

} // namespace

std::optional<Litres> givesOf(const BrewFact& brew, const SharedFacts& shared) {
    if (!brew.intoFermenter)
        return {};
    return intoVesselFrom(*brew.intoFermenter, shared.kit(brew.on).equipment);
}

Result<void> checkPouring(const std::string& name, Day on, Litres volume, const Cellar& cellar) {
    const BrewFact* brew = cellar.shared().brew(name);
    if (!brew)
        return {};
    if (on < brew->on)
        return badInput("/brew",
                        say("desk.poured_before_brewed").with("brew", name).with("brewed", brew->on).with("on", on),
                        say("desk.poured_before_brewed.remedy"));
    const auto pourings = cellar.pourings(name);
    if (!pourings)
        return fail(pourings.error());
    const auto left = leftOf(*brew, cellar.shared(), takenOf(*pourings));
    if (!left)
        return {};
    const Litres gauged = std::max(gaugesAtLeast, *givesOf(*brew, cellar.shared()) * gaugesOfVolume);
    return volume > *left + gauged ? tooShort(*brew, volume, *left) : Result<void>{};
}

Result<std::vector<BrewStock>> Desk::brewsToPour(const VesselName& vessel) const {
    Cellar& cellar = *inside_->cellar;
    auto record = cellar.vessel(vessel);
    if (!record)
        return fail(record.error());
    const auto pourings = cellar.pourings();
    if (!pourings)
        return fail(pourings.error());
    const SharedFacts& shared = cellar.shared();
    const LedgerState now = replayOf(**record, shared, today()).now;
    const BrewFact* made = brewForRefill(**record, cellar, now, today());
    const Taken taken = takenOf(*pourings);
    std::vector<BrewStock> stock;
    stock.reserve(shared.brews.size());
    for (const auto& stored : shared.brews)
        stock.push_back({stored.id, stored.fact, leftOf(stored.fact, shared, taken), &stored.fact == made});
    std::sort(stock.begin(), stock.end(), [](const BrewStock& a, const BrewStock& b) {
        return std::tuple(a.forThisRefill, a.brew.on, a.id) > std::tuple(b.forThisRefill, b.brew.on, b.id);
    });
    return stock;
}

} // namespace staveline
