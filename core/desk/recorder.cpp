// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/recorder.h"

#include "desk/inside.h"
#include "desk/lot_checks.h"
#include "desk/own_ingredients.h"
#include "desk/packed_beer.h"
#include "desk/refits.h"

#include <algorithm>

namespace staveline::desk {

using facts::Fact;
using facts::tableOf;
using facts::VesselFact;

Result<void> watchLedgersOf(LedgerGuard& guard, const Fact& fact) {
    return std::visit(
        [&]<class F>(const F& f) -> Result<void> {
            if (touchesLots(f))
                if (auto watched = guard.watchLots(); !watched)
                    return watched;
            if constexpr (facts::factTraits<F>.entry || std::is_same_v<F, facts::RefitFact> ||
                          std::is_same_v<F, facts::VesselEditFact>) {
                if (auto watched = guard.watch(f.vessel); !watched)
                    return watched;
                if constexpr (requires { f.from; })
                    if (!f.from.empty())
                        return guard.watch(f.from);
            }
            return {};
        },
        fact);
}

Result<void> Recorder::apply(const Fact& fact) {
    if (auto ok = checkMeaning(fact, cellar_, today_); !ok)
        return ok;
    if (auto watched = watchLedgersOf(guard_, fact); !watched)
        return watched;
    return std::visit([&](const auto& f) { return store(f); }, fact);
}

Result<void> Recorder::store(const facts::VesselEditFact& f) {
    const bool byInterval = std::find(f.clear.begin(), f.clear.end(), facts::factWords::wantedAge) != f.clear.end();
    Overruled overruled{f.drawShare.has_value(), f.interval || f.wantedAgeYears || byInterval, false};
    if (const auto refit = refitIn(f, today_)) {
        if (auto done = addRefit(*refit); !done)
            return fail(done.error());
        overruled.temperature = decidesTemperature(*refit);
    }
    if (auto done = overruleChoices(f.vessel, overruled); !done)
        return done;
    return changeVessel(f.vessel, [&](VesselFact& v) {
        const auto take = [](auto& to, const auto& from) {
            if (from)
                to = *from;
        };
        take(v.name, f.name);
        take(v.shape, f.shape);
        take(v.note, f.note);
        take(v.canChangeTemperature, f.canChangeTemperature);
        take(v.interval, f.interval);
        if (f.wantedAgeYears || byInterval)
            v.wantedAgeYears = f.wantedAgeYears;
        take(v.sampleBefore, f.sampleBefore);
        take(v.drawShare, f.drawShare);
        take(v.drawMayMove, f.drawMayMove);
        take(v.intervalMayMove, f.intervalMayMove);
        take(v.fillsBefore, f.fillsBefore);
    });
}

Result<void> Recorder::store(const facts::RefitFact& f) {
    auto id = addRefit(f);
    if (!id)
        return fail(id.error());
    rows_.push_back({std::string(tableOf<facts::RefitFact>), *id});
    return overruleBy(f);
}

Result<void> Recorder::overruleBy(const facts::RefitFact& f) {
    return overruleChoices(f.vessel, {false, false, decidesTemperature(f)});
}

bool Recorder::decidesTemperature(const facts::RefitFact& f) {
    const auto record = cellar_.vessel(f.vessel);
    if ((!f.temperature && !f.room) || !record)
        return false;
    const auto& refits = (*record)->of<facts::RefitFact>();
    return std::none_of(refits.begin(), refits.end(), [&](const Stored<facts::RefitFact>& stored) {
        return (stored.fact.temperature || stored.fact.room) && stored.fact.on > f.on;
    });
}

Result<book::RowId> Recorder::addRefit(const facts::RefitFact& f) {
    auto id = insertBeside(f);
    if (!id)
        return id;
    if (auto added = addFact(cellar_, *id, f); !added)
        return fail(added.error());
    auto record = cellar_.vessel(f.vessel);
    if (!record)
        return fail(record.error());
    stands(**record);
    return id;
}

/// The vessel as it is now, also in the list of all.
void Recorder::stands(VesselRecord& record) {
    record.facts = vesselOn(record);
    for (auto& stored : cellar_.changeShared().vessels)
        if (stored.id == record.id)
            stored.fact = record.facts;
}

/// What is said of the vessel itself holds from now on, whatever was chosen for a refill before. The mark is kept
/// with the choice, so that taking the edit back takes it off again.
Result<void> Recorder::overruleChoices(const facts::VesselName& vessel, Overruled what) {
    auto record = cellar_.vessel(vessel);
    if (!record)
        return fail(record.error());
    for (Stored<facts::ChoiceFact>& stored : (*record)->of<facts::ChoiceFact>()) {
        facts::ChoiceFact choice = stored.fact;
        choice.drawOverruled |= what.draw;
        choice.intervalOverruled |= what.interval;
        choice.temperatureOverruled |= what.temperature;
        if (choice == stored.fact)
            continue;
        stored.fact = choice;
        auto row = toRow(choice, cellar_.shared().names);
        if (!row)
            return fail(row.error());
        if (auto done = writer_.update(std::string(tableOf<facts::ChoiceFact>), stored.id, *row); !done)
            return done;
    }
    return {};
}

Result<void> Recorder::store(const facts::RetireFact& f) {
    return changeVessel(f.vessel, [&](VesselFact& v) {
        v.retired = f.on;
        v.retiredReason = f.reason;
    });
}

Result<void> Recorder::store(const facts::BringBackFact& f) {
    return changeVessel(f.vessel, [](VesselFact& v) {
        v.retired.reset();
        v.retiredReason.clear();
    });
}

Result<void> Recorder::store(const facts::SittingUseFact& f) {
    auto record = cellar_.vessel(f.vessel);
    if (!record)
        return fail(record.error());
    auto& sittings = (*record)->of<facts::SittingFact>();
    int which = 0;
    const auto at = std::find_if(sittings.begin(), sittings.end(), [&](const auto& stored) {
        return stored.fact.sitting.on == f.sitting && ++which == f.which;
    });
    at->fact.learn = f.learn;
    at->fact.learnReason = f.reason;
    auto row = toRow(at->fact, cellar_.shared().names);
    if (!row)
        return fail(row.error());
    rows_.push_back({std::string(tableOf<facts::SittingFact>), at->id});
    return writer_.update(rows_.back().table, at->id, *row);
}

Result<void> Recorder::store(const VesselFact& f) {
    auto id = insert(f);
    if (!id)
        return fail(id.error());
    cellar_.changeShared().names.addVessel(*id, f.name);
    cellar_.changeShared().vessels.push_back({*id, f});
    return {};
}

Result<void> Recorder::store(const facts::BrewFact& f) {
    if (auto kept = keepIngredientsOf(f); !kept)
        return kept;
    auto id = insert(f);
    if (!id)
        return fail(id.error());
    cellar_.changeShared().names.addBrew(*id, f.name);
    cellar_.changeShared().brews.push_back({*id, f});
    return {};
}

Result<void> Recorder::store(const facts::RoomFact& f) {
    auto id = insert(f);
    if (!id)
        return fail(id.error());
    Facts<facts::RoomFact> rooms = *cellar_.shared().rooms;
    insertByDay(rooms, {*id, f});
    cellar_.changeRooms(std::move(rooms));
    return {};
}
Result<void> Recorder::store(const facts::EquipmentFact& f) {
    return storeShared(f, cellar_.changeShared().equipment);
}
Result<void> Recorder::store(const facts::AvailabilityFact& f) {
    return storeShared(f, cellar_.changeShared().availability);
}

/// What was brewed keeps its numbers: one that would change them is refused.
template <class F>
requires requires(const F& f) {
    f.like;
}
Result<void> Recorder::store(const F& f) {
    const SharedFacts before = cellar_.shared();
    SharedFacts& shared = cellar_.changeShared();
    if (auto done = storeShared(f, shared.own.of<F>()); !done)
        return done;
    shared.mixPantries();
    return keepsBrews(before, shared);
}

template <class F>
requires(mayTouchLots<F> && !facts::perVessel<F>) Result<void> Recorder::store(const F& f) {
    if constexpr (goesIntoLot<F>)
        if (auto ok = canStillGoInto(lotFilledBy(f), f.on, cellar_); !ok)
            return ok;
    return storeOfLot(f);
}

Result<void> Recorder::store(const facts::PackagingFact& f) {
    const auto filling = guarded(f, cellar_);
    return filling ? storeOfLot(*filling) : Result<void>(fail(filling.error()));
}

template <class F> Result<void> Recorder::storeOfLot(const F& f) {
    auto id = insert(f);
    if (!id)
        return fail(id.error());
    addToLots(cellar_, *id, f);
    return {};
}

template <class F> Result<void> Recorder::storeShared(const F& f, Facts<F>& list) {
    auto id = insert(f);
    if (!id)
        return fail(id.error());
    insertByDay(list, {*id, f});
    return {};
}

template <class F>
requires facts::perVessel<F> Result<void> Recorder::store(const F& f) {
    if (auto kept = keepIngredientsOf(f); !kept)
        return kept;
    if (auto record = cellar_.vessel(f.vessel); !record)
        return fail(record.error());
    if constexpr (std::is_same_v<F, facts::DrawOffFact>)
        if (auto ok = f.lot.empty() ? Result<void>() : canStillGoInto(f.lot, f.on, cellar_); !ok)
            return ok;
    F placed = f;
    if (auto given = turns_.give(placed); !given)
        return given;
    auto id = insert(placed);
    return id ? addFact(cellar_, *id, placed) : Result<void>(fail(id.error()));
}

/// The row of the fact in hand.
template <class F> Result<book::RowId> Recorder::insert(const F& f) {
    auto id = insertBeside(f);
    if (id)
        rows_.push_back({std::string(tableOf<F>), *id});
    return id;
}

template <class F> Result<book::RowId> Recorder::insertBeside(const F& f) {
    auto row = toRow(f, cellar_.shared().names);
    if (!row)
        return fail(row.error());
    return writer_.insert(std::string(tableOf<F>), *row);
}

Result<void> Recorder::changeVessel(const facts::VesselName& name, const std::function<void(VesselFact&)>& change) {
    auto record = cellar_.vessel(name);
    if (!record)
        return fail(record.error());
    VesselFact made = (*record)->made;
    change(made);
    auto row = toRow(made, cellar_.shared().names);
    if (!row)
        return fail(row.error());
    if (!(made == (*record)->made))
        if (auto done = writer_.update("vessel", (*record)->id, *row); !done)
            return done;
    rows_.push_back({"vessel", (*record)->id});
    if (made.name != name)
        cellar_.dropLots(); // they name their vessels
    (*record)->made = made;
    stands(**record);
    cellar_.changeShared().names.addVessel((*record)->id, made.name);
    return {};
}

Result<void> Recorder::keepIngredients(const brewing::Recipe& recipe) {
    for (const auto& part : recipe.grist)
        if (auto grain = cellar_.shared().pantry.grain(part.grain))
            if (auto done = keep(*grain); !done)
                return done;
    if (recipe.sugarShare.of1 > 0)
        if (auto sugar = cellar_.shared().pantry.grain(recipe.sugar))
            if (auto done = keep(*sugar); !done)
                return done;
    if (auto yeast = cellar_.shared().pantry.yeast(recipe.yeast))
        return keep(*yeast);
    return {};
}

template <class T> Result<void> Recorder::keep(const T& ingredient) {
    if (cellar_.shared().kept.contains(ingredient.id) || cellar_.shared().isOwn(ingredient.id))
        return {};
    auto id = insertBeside(ingredient);
    if (!id)
        return fail(id.error());
    cellar_.changeShared().kept.insert(ingredient.id);
    return {};
}

} // namespace staveline::desk
