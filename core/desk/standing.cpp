// SPDX-License-Identifier: GPL-3.0-or-later
// What stands for a vessel today: volumes to come, locks, what is at hand, the brew that waits, the target.
#include "desk/inside.h"

#include <algorithm>
#include <charconv>

namespace staveline {

std::optional<Litres> drawnForRefill(const VesselRecord& record, const LedgerState& now) {
    if (!now.lastDraw || (now.lastRefill && *now.lastDraw <= *now.lastRefill))
        return {};
    Litres drawn{0};
    const auto add = [&](const auto& list) {
        for (const auto& stored : list)
            if (stored.fact.on <= now.on && stored.fact.on >= *now.opened &&
                (!now.lastRefill || stored.fact.on > *now.lastRefill))
                drawn = drawn + stored.fact.volume;
    };
    add(record.of<DrawOffFact>());
    add(record.refillsElsewhere);
    return drawn;
}

Litres volumeOnDraw(const VesselRecord& record, const SharedFacts& shared, const LedgerState& now, Day draw) {
    return replayOf(record, shared, std::max(now.on, draw)).now.volume +
           drawnForRefill(record, now).value_or(Litres{0});
}

Litres usualFill(const VesselRecord& record, const SharedFacts& shared, Day today) {
    auto entries = ledgerEntries(record, shared);
    std::sort(entries.begin(), entries.end(), ledgerOrder);
    const Replay replayed = replay(entries, shapeOf(record.facts), today);
    for (std::size_t i = entries.size(); i-- > 0;)
        if (entries[i].kind == EntryKind::refill && !entries[i].outOfThisVessel)
            return replayed.after[i].volume;
    return record.facts.capacity;
}

std::vector<MeasuredOn> measuredUpTo(const VesselRecord& record, Day until) {
    std::vector<MeasuredOn> all;
    const auto add = [&](const auto& list) {
        for (const auto& stored : list)
            if (stored.fact.on <= until)
                all.push_back({stored.fact.on, &stored.fact.measured});
    };
    add(record.of<ReadingFact>());
    add(record.of<SampleFact>());
    add(record.of<DrawOffFact>());
    std::stable_sort(all.begin(), all.end(), [](const MeasuredOn& a, const MeasuredOn& b) { return a.on < b.on; });
    return all;
}

std::vector<LockFact> locksInForce(const VesselRecord& record, Day today) {
    std::map<std::string, LockFact> latest;
    for (const auto& stored : record.of<LockFact>())
        if (stored.fact.on <= today)
            latest[stored.fact.lever] = stored.fact;
    std::vector<LockFact> locks;
    for (const auto& [lever, lock] : latest)
        if (lock.locked)
            locks.push_back(lock);
    return locks;
}

std::vector<AvailabilityFact> availabilityOn(const SharedFacts& shared, Day today) {
    std::map<std::string, AvailabilityFact> latest;
    for (const auto& stored : shared.availability)
        if (stored.fact.on <= today)
            latest[stored.fact.item] = stored.fact;
    std::vector<AvailabilityFact> items;
    items.reserve(latest.size());
    for (const auto& [item, fact] : latest)
        items.push_back(fact);
    return items;
}

Litres refillWanted(const Setting& setting, const VesselRecord& record, const Cellar& cellar, Day today) {
    const SharedFacts& shared = cellar.shared();
    const LedgerState now = replayOf(record, shared, today).now;
    const Litres held = volumeOnDraw(record, shared, now, datesOf(record, cellar, now, today).draw);
    return usualFill(record, shared, today) - Litres{std::max(0.0, held.l - setting.draw.l)};
}

Result<BrewPlan> sizedFor(const BrewInput& input, const RefillBeer& beer, const EquipmentFact& kit, Litres intoVessel) {
    return planBrew(input, beer, kit.equipment, {intoVessel, kit.margin, kit.brewLength});
}

const BrewFact* brewForRefill(const VesselRecord& record, const Cellar& cellar, const LedgerState& now, Day today) {
    const auto inCycle = [&](Day on) {
        return on <= today && (now.lastRefill ? on > *now.lastRefill : !now.opened || on >= *now.opened);
    };
    const BrewFact* found = nullptr;
    for (const auto& stored : cellar.shared().brews) {
        const BrewFact& brew = stored.fact;
        if (brew.vessel == record.facts.name && inCycle(brew.on) && (!found || brew.on >= found->on) &&
            !cellar.poured(brew.name))
            found = &brew;
    }
    return found;
}

Result<void> notBrewedYet(const VesselRecord& record, const Cellar& cellar, Day day) {
    const BrewFact* brewed = brewForRefill(record, cellar, replayOf(record, cellar.shared(), day).now, day);
    if (!brewed)
        return {};
    return fail({FaultKind::notPossible, "/vessel", say("desk.brewed_already").with("brew", brewed->name),
                 say("desk.brewed_already.remedy")});
}

Result<std::optional<Filed<TargetFact>>> Desk::target(const VesselName& name) const {
    auto record = inside_->cellar->vessel(name);
    if (!record)
        return fail(record.error());
    std::optional<Filed<TargetFact>> target;
    for (const auto& stored : (*record)->of<TargetFact>())
        if (stored.fact.on <= today())
            target = Filed<TargetFact>{stored.id, stored.fact};
    return target;
}

std::optional<CultureFact> Desk::culture(const VesselName& name) const {
    auto record = inside_->cellar->vessel(name);
    const CultureFact* culture = record ? (*record)->latest<CultureFact>(today()) : nullptr;
    return culture ? std::optional(*culture) : std::nullopt;
}

Result<std::vector<LockFact>> Desk::locks(const VesselName& name) const {
    auto record = inside_->cellar->vessel(name);
    if (!record)
        return fail(record.error());
    return locksInForce(**record, today());
}

std::vector<AvailabilityFact> Desk::availability() const {
    if (!inside_->cellar->loadShared())
        return {};
    return availabilityOn(inside_->cellar->shared(), today());
}

EquipmentFact Desk::kit() const {
    return inside_->cellar->loadShared() ? inside_->cellar->shared().kit(today()) : EquipmentFact{};
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

} // namespace staveline
