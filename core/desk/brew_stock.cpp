// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/brew_stock.h"

#include "desk/brew.h"
#include "desk/filed.h"
#include "desk/inside.h"
#include "desk/measured_brew.h"

#include <algorithm>
#include <charconv>

namespace staveline::desk {

using facts::BrewFact;

namespace {

// Fermenter and vessel are read apart, by two gauges: they agree to some 3 %, and never to less than a litre (common
// practice, no source). Less than that is no lack of beer.
constexpr double gaugesOfVolume = .03;
constexpr Litres gaugesAtLeast{1};

Litres gaugedOf(Litres volume) {
    return std::max(gaugesAtLeast, volume * gaugesOfVolume);
}

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
    return intoVesselFrom(*brew.intoFermenter, shared.kit(brew.on, brew.vessel).equipment);
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
    return volume > *left + gaugedOf(*givesOf(*brew, cellar.shared())) ? tooShort(*brew, volume, *left)
                                                                       : Result<void>{};
}

Result<void> givesWhatWasPoured(const BrewFact& brew, const Cellar& cellar) {
    const auto before = cellar.brewOnRecord(brew.name);
    const auto gives = givesOf(brew, cellar.shared());
    if (!before || !gives || *gives >= givesOf(*before, cellar.shared()).value_or(*gives + Litres{1}))
        return {};
    const auto pourings = cellar.pourings(); // by name: one that is amended has no place among the brews
    if (!pourings)
        return fail(pourings.error());
    const Taken taken = takenOf(*pourings);
    const auto poured = taken.find(brew.name);
    if (poured == taken.end() || poured->second <= *gives + gaugedOf(*gives))
        return {};
    return badInput(
        "/into_fermenter_l",
        say("desk.gives_less_than_poured").with("brew", brew.name).with("poured", poured->second).with("gives", *gives),
        say("desk.gives_less_than_poured.remedy"));
}

Result<std::vector<BrewStock>> Desk::brewsToPour(const facts::VesselName& vessel) const {
    Cellar& cellar = *inside_->cellar;
    auto current = inside_->current(vessel);
    if (!current)
        return fail(current.error());
    const auto pourings = cellar.pourings();
    if (!pourings)
        return fail(pourings.error());
    const SharedFacts& shared = cellar.shared();
    const Taken taken = takenOf(*pourings);
    std::vector<BrewStock> stock;
    stock.reserve(shared.brews.size());
    for (const auto& stored : shared.brews)
        stock.push_back({stored.id, stored.fact, leftOf(stored.fact, shared, taken), &stored.fact == (*current)->brewed,
                         taken.contains(stored.fact.name)});
    std::sort(stock.begin(), stock.end(), [](const BrewStock& a, const BrewStock& b) {
        return std::tuple(a.forThisRefill, a.brew.on, a.id) > std::tuple(b.forThisRefill, b.brew.on, b.id);
    });
    return stock;
}

std::vector<BrewFact> Desk::brews() const {
    std::vector<BrewFact> all;
    if (inside_->cellar->loadShared())
        for (const auto& stored : inside_->cellar->shared().brews)
            all.push_back(stored.fact);
    return all;
}

std::vector<Filed<BrewFact>> Desk::brewsFor(const facts::VesselName& vessel) const {
    std::vector<Filed<BrewFact>> found;
    if (inside_->cellar->loadShared())
        for (const auto& stored : inside_->cellar->shared().brews)
            if (stored.fact.vessel == vessel)
                found.push_back({stored.id, stored.fact});
    std::stable_sort(found.begin(), found.end(), [](const auto& a, const auto& b) { return a.fact.on > b.fact.on; });
    return found;
}

/// One more than the highest number at the end of a brew's name.
std::string Desk::nextBrewName() const {
    int highest = 0;
    for (const auto& brew : brews()) {
        const auto digits = brew.name.find_last_not_of("0123456789") + 1;
        int number = 0;
        std::from_chars(brew.name.data() + digits, brew.name.data() + brew.name.size(), number);
        highest = std::max(highest, number);
    }
    return render(say("desk.brew_name").with("number", std::int64_t{highest + 1}));
}

} // namespace staveline::desk
