// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/in_force.h"

#include "desk/filed.h"
#include "desk/inside.h"
#include "desk/stock.h"

#include <map>

namespace staveline::desk {

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

std::vector<AtHand> Desk::stock() const {
    if (!inside_->cellar->loadShared())
        return {};
    return stockOn(inside_->cellar->shared(), today());
}

std::vector<HopOffer> Desk::hops() const {
    if (!inside_->cellar->loadShared())
        return {};
    return hopsOn(inside_->cellar->shared(), today());
}

facts::EquipmentFact Desk::kit(const VesselName& vessel) const {
    return inside_->cellar->loadShared() ? inside_->cellar->shared().kit(today(), vessel) : facts::EquipmentFact{};
}

const ingredient::Pantry& Desk::pantry() const {
    return inside_->cellar->loadShared() ? inside_->cellar->shared().pantry : ingredient::builtInPantry();
}

namespace {

template <class F> void addLatest(const Facts<F>& facts, std::vector<Filed<facts::Fact>>& all) {
    std::map<std::string, const Stored<F>*> latest; // by id
    for (const auto& stored : facts)
        latest[stored.fact.item.id] = &stored;
    std::map<std::string, const Stored<F>*> byName;
    for (const auto& [id, stored] : latest)
        byName[stored->fact.item.name] = stored;
    for (const auto& [name, stored] : byName)
        all.push_back({stored->id, stored->fact});
}

} // namespace

std::vector<Filed<facts::Fact>> Desk::ownIngredients() const {
    std::vector<Filed<facts::Fact>> all;
    if (!inside_->cellar->loadShared())
        return all;
    const OwnIngredients& own = inside_->cellar->shared().own;
    addLatest(own.grains, all);
    addLatest(own.yeasts, all);
    addLatest(own.hops, all);
    return all;
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
