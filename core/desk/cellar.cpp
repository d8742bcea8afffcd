// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/cellar.h"

#include "desk/current_vessel.h"
#include "desk/refits.h"
#include "desk/rooms.h"
#include "quantity/parse.h"

#include <algorithm>

namespace staveline::desk {

using facts::tableOf;

namespace {

template <class F> Result<Facts<F>> decode(Result<std::vector<book::Row>> rows, const facts::Names& names) {
    if (!rows)
        return fail(rows.error());
    Facts<F> facts;
    facts.reserve(rows->size());
    for (const auto& row : *rows)
        facts.push_back({row.id, facts::fromRow<F>(row, names)});
    return facts;
}

/// A built-in kept with the book has the name of its kind in the language spoken, not of the day it was kept.
template <class Known> void tellAsToday(std::string& name, const Known& known) {
    if (known)
        name = known->name;
}

/// Ingredients copied into the book stand in the place of the built-in ones.
void takeKept(Facts<ingredient::Grain> grains, Facts<ingredient::Yeast> yeasts, SharedFacts& shared) {
    for (auto& stored : grains) {
        shared.kept.insert(stored.fact.id);
        if (const auto known = shared.builtIn.grain(stored.fact.id); known && stored.fact.lactic <= 0)
            stored.fact.lactic = known->lactic; // kept before it was reckoned with
        tellAsToday(stored.fact.name, shared.builtIn.grain(stored.fact.id));
        shared.builtIn.put(std::move(stored.fact));
    }
    for (auto& stored : yeasts) {
        shared.kept.insert(stored.fact.id);
        tellAsToday(stored.fact.name, shared.builtIn.yeast(stored.fact.id));
        shared.builtIn.put(std::move(stored.fact));
    }
}

template <class F> void sortByDay(Facts<F>& facts) {
    std::stable_sort(facts.begin(), facts.end(),
                     [](const auto& a, const auto& b) { return dayOf(a.fact) < dayOf(b.fact); });
}

template <class F> Result<void> loadList(const book::Book& book, const facts::Names& names, VesselRecord& record) {
    auto facts = decode<F>(book.rowsWhere(std::string(tableOf<F>), "vessel", record.id, {"on"}), names);
    if (!facts)
        return fail(facts.error());
    sortByDay(*facts);
    record.of<F>() = std::move(*facts);
    return {};
}

template <class F>
Result<void> loadElsewhere(const book::Book& book, const facts::Names& names, book::RowId id, Facts<F>& to) {
    auto facts = decode<F>(book.rowsWhere(std::string(tableOf<F>), "from", id, {"on"}), names);
    if (!facts)
        return fail(facts.error());
    to = std::move(*facts);
    return {};
}

template <class F> Result<void> loadOwn(const book::Book& book, SharedFacts& shared, Facts<F>& to) {
    auto facts = decode<F>(book.rows(std::string(tableOf<F>)), shared.names);
    if (!facts)
        return fail(facts.error());
    to = std::move(*facts);
    sortByDay(to);
    return {};
}

Result<void> loadOwn(const book::Book& book, SharedFacts& shared) {
    auto done = loadOwn(book, shared, shared.own.grains);
    if (done)
        done = loadOwn(book, shared, shared.own.yeasts);
    if (done)
        done = loadOwn(book, shared, shared.own.hops);
    shared.mixPantries();
    return done;
}

} // namespace

const facts::BrewFact* SharedFacts::brew(std::string_view name) const {
    const auto id = names.brews.find(name);
    if (id == names.brews.end())
        return nullptr;
    const auto at =
        std::lower_bound(brews.begin(), brews.end(), id->second,
                         [](const Stored<facts::BrewFact>& stored, book::RowId row) { return stored.id < row; });
    return at != brews.end() && at->id == id->second ? &at->fact : nullptr;
}

facts::EquipmentFact SharedFacts::kit(Day day, std::string_view vessel) const {
    const facts::EquipmentFact *its = nullptr, *all = nullptr;
    for (const auto& [id, kit] : equipment)
        if (kit.vessel.empty())
            all = kit.on <= day || !all ? &kit : all;
        else if (kit.vessel == vessel && kit.on <= day)
            its = &kit;
    if (its)
        return *its;
    return all ? *all : facts::EquipmentFact{};
}

bool SharedFacts::kitKnown(Day day, std::string_view vessel) const {
    return std::any_of(equipment.begin(), equipment.end(), [&](const auto& stored) {
        const facts::EquipmentFact& kit = stored.fact;
        return kit.on <= day && (kit.vessel.empty() || kit.vessel == vessel);
    });
}

Cellar::Cellar(const Cellar& other)
    : book_(other.book_), shared_(other.shared_), records_(other.records_), copied_(true), ownShared_(false),
      lots_(other.lots_), ownLots_(false) {}

void Cellar::forgetWorkedOut() {
    current_.reset();
    roomOffsets_.clear();
}

const vessel::RoomOffset* Cellar::roomOffset(const std::string& room, Day today) const {
    const auto known = roomOffsets_.find({room, today});
    return known == roomOffsets_.end() ? nullptr : &known->second;
}

void Cellar::keepRoomOffset(const std::string& room, Day today, const vessel::RoomOffset& offset) {
    if (!copied_)
        roomOffsets_.insert_or_assign({room, today}, offset);
}

void Cellar::changeRooms(Facts<facts::RoomFact> rooms) {
    changeShared().rooms = std::make_shared<const Facts<facts::RoomFact>>(std::move(rooms));
    for (auto& stored : changeShared().vessels)
        takeRoom(stored.fact, *shared_->rooms, Day::max());
    records_.clear();
    own_.clear();
}

SharedFacts& Cellar::changeShared() {
    forgetWorkedOut();
    if (!ownShared_) {
        shared_ = std::make_shared<SharedFacts>(*shared_);
        ownShared_ = true;
    }
    return *shared_;
}

Result<void> Cellar::loadShared() {
    if (shared_)
        return {};
    SharedFacts shared;
    shared.builtIn = ingredient::builtInPantry();
    auto vessels = decode<facts::VesselFact>(book_->rows("vessel"), shared.names);
    if (!vessels)
        return fail(vessels.error());
    for (const auto& stored : *vessels)
        shared.names.addVessel(stored.id, stored.fact.name);
    auto refits = decode<facts::RefitFact>(book_->rows("refit"), shared.names);
    if (!refits)
        return fail(refits.error());
    sortByDay(*refits);
    for (const auto& refit : *refits)
        for (auto& stored : *vessels)
            if (stored.fact.name == refit.fact.vessel)
                apply(refit.fact, stored.fact);
    auto rooms = decode<facts::RoomFact>(book_->rows("room"), shared.names);
    if (!rooms)
        return fail(rooms.error());
    sortByDay(*rooms);
    for (auto& stored : *vessels)
        takeRoom(stored.fact, *rooms, Day::max());
    shared.rooms = std::make_shared<const Facts<facts::RoomFact>>(std::move(*rooms));
    shared.vessels = std::move(*vessels);
    auto brews = decode<facts::BrewFact>(book_->rows("brew"), shared.names);
    auto equipment = decode<facts::EquipmentFact>(book_->rows("equipment"), shared.names);
    auto availability = decode<facts::AvailabilityFact>(book_->rows("availability"), shared.names);
    auto grains = decode<ingredient::Grain>(book_->rows("grain"), shared.names);
    auto yeasts = decode<ingredient::Yeast>(book_->rows("yeast"), shared.names);
    if (!brews || !equipment || !availability || !grains || !yeasts)
        return fail(!brews          ? brews.error()
                    : !equipment    ? equipment.error()
                    : !availability ? availability.error()
                    : !grains       ? grains.error()
                                    : yeasts.error());
    for (const auto& stored : *brews)
        shared.names.addBrew(stored.id, stored.fact.name);
    takeKept(std::move(*grains), std::move(*yeasts), shared);
    shared.brews = std::move(*brews);
    shared.equipment = std::move(*equipment);
    shared.availability = std::move(*availability);
    sortByDay(shared.equipment);
    sortByDay(shared.availability);
    if (auto own = loadOwn(*book_, shared); !own)
        return own;
    shared_ = std::make_shared<SharedFacts>(std::move(shared));
    ownShared_ = true;
    return {};
}

Result<VesselRecord> Cellar::load(book::RowId id) const {
    VesselRecord record;
    record.id = id;
    record.rooms = shared_->rooms;
    auto row = book_->row("vessel", id);
    if (!row)
        return fail(row.error());
    record.made = facts::fromRow<facts::VesselFact>(*row, shared_->names);
    Result<void> done;
    const auto each = [&]<class F>(const Facts<F>*) {
        if (done)
            done = loadList<F>(*book_, shared_->names, record);
    };
    std::apply([&](const auto&... lists) { (each(&lists), ...); }, record.lists);
    if (done)
        done = loadElsewhere(*book_, shared_->names, id, record.refillsElsewhere);
    if (done)
        done = loadElsewhere(*book_, shared_->names, id, record.topUpsElsewhere);
    if (!done)
        return fail(done.error());
    record.facts = vesselOn(record);
    return record;
}

Result<VesselRecord*> Cellar::vesselById(book::RowId id) {
    if (auto shared = loadShared(); !shared)
        return fail(shared.error());
    auto at = records_.find(id);
    if (at == records_.end()) {
        auto record = load(id);
        if (!record)
            return fail(record.error());
        at = records_.emplace(id, std::make_shared<VesselRecord>(std::move(*record))).first;
        own_.insert(id);
    } else if (copied_ && own_.insert(id).second) {
        at->second = std::make_shared<VesselRecord>(*at->second);
    }
    return at->second.get();
}

Result<VesselRecord*> Cellar::vessel(const facts::VesselName& name) {
    if (auto shared = loadShared(); !shared)
        return fail(shared.error());
    const auto at = shared_->names.vessels.find(name);
    if (at != shared_->names.vessels.end())
        return vesselById(at->second);
    std::vector<std::string> known;
    for (const auto& [other, unused] : shared_->names.vessels)
        known.push_back(other);
    return badInput("/vessel", say("desk.unknown_vessel").with("name", excerpt(name)),
                    known.empty() ? say("desk.unknown_vessel.none") : facts::offerName(name, known));
}

Result<void> Cellar::loadAll() {
    if (auto shared = loadShared(); !shared)
        return shared;
    for (const auto& stored : shared_->vessels)
        if (auto record = vesselById(stored.id); !record)
            return fail(record.error());
    return {};
}

Result<std::vector<Poured>> Cellar::pourings(const std::optional<std::string>& brew) const {
    std::vector<Poured> all;
    const auto id = brew ? shared_->names.brews.find(*brew) : shared_->names.brews.end();
    if (brew && id == shared_->names.brews.end())
        return all;
    const auto add = [&]<class F>(std::type_identity<F>) -> Result<void> {
        const std::string table(tableOf<F>);
        auto fillings =
            decode<F>(brew ? book_->rowsWhere(table, "brew", id->second, {"on"}) : book_->rows(table), shared_->names);
        if (!fillings)
            return fail(fillings.error());
        for (const auto& stored : *fillings)
            if (!stored.fact.brew.empty() && !takenOut_.contains({tableOf<F>, stored.id}))
                all.push_back({stored.fact.brew, stored.fact.vessel, stored.fact.on, stored.fact.volume});
        return {};
    };
    if (auto done = add(std::type_identity<facts::RefillFact>{}); !done)
        return fail(done.error());
    if (auto done = add(std::type_identity<facts::TopUpFact>{}); !done)
        return fail(done.error());
    return all;
}

std::optional<facts::BrewFact> Cellar::brewOnRecord(const std::string& name) const {
    for (const auto& [id, each] : shared_->names.brewNames)
        if (each == name)
            if (const auto row = book_->row("brew", id))
                return facts::fromRow<facts::BrewFact>(*row, shared_->names);
    return {};
}

std::optional<Poured> Cellar::poured(const std::string& brew) const {
    const auto all = pourings(brew);
    if (!all || all->empty())
        return {};
    return *std::min_element(all->begin(), all->end(), [](const Poured& a, const Poured& b) { return a.on < b.on; });
}

void Cellar::drop(book::RowId id) {
    records_.erase(id);
    forgetWorkedOut();
}

void Cellar::dropShared() {
    shared_.reset();
    forgetWorkedOut();
}

void Cellar::adopt() {
    takenOut_.clear();
    copied_ = false;
    own_.clear();
    ownShared_ = true;
    ownLots_ = true;
    forgetWorkedOut();
}

void Cellar::clear() {
    records_.clear();
    own_.clear();
    shared_.reset();
    lots_.reset();
    forgetWorkedOut();
}

} // namespace staveline::desk
