// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/in_force.h"

#include "desk/filed.h"
#include "desk/inside.h"

#include <map>

namespace staveline::desk {

using facts::AvailabilityFact;
using facts::LockFact;
using facts::TargetFact;
using facts::VesselName;

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

std::optional<facts::CultureFact> Desk::culture(const VesselName& name) const {
    auto record = inside_->cellar->vessel(name);
    const facts::CultureFact* culture = record ? (*record)->latest<facts::CultureFact>(today()) : nullptr;
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

facts::EquipmentFact Desk::kit(const VesselName& vessel) const {
    return inside_->cellar->loadShared() ? inside_->cellar->shared().kit(today(), vessel) : facts::EquipmentFact{};
}

const ingredient::Pantry& Desk::pantry() const {
    return inside_->cellar->loadShared() ? inside_->cellar->shared().pantry : ingredient::builtInPantry();
}

Result<advice::Setting> Desk::setting(const VesselName& name) const {
    auto vessel = inside_->current(name);
    if (!vessel)
        return fail(vessel.error());
    return (*vessel)->inUse;
}

std::optional<facts::ChoiceFact> Desk::lastChoice(const VesselName& name) const {
    auto record = inside_->cellar->vessel(name);
    if (!record || (*record)->of<facts::ChoiceFact>().empty())
        return {};
    return (*record)->of<facts::ChoiceFact>().back().fact;
}

} // namespace staveline::desk
