// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/own_ingredients.h"

#include "facts/own_ingredients.h"
#include "ingredient/nearest.h"
#include "quantity/parse.h"
#include "quantity/words.h"

#include <algorithm>

namespace staveline::desk {

using brewing::Recipe;
using ingredient::Pantry;

namespace {

/// Each as it is on `day`; one that began later as it began.
template <class F> void putOwn(const Facts<F>& facts, Day day, Pantry& pantry) {
    std::set<std::string_view> begun;
    for (const auto& stored : facts)
        if (begun.insert(stored.fact.item.id).second || stored.fact.on <= day)
            pantry.put(ingredientOf(stored.fact));
}

Pantry mixed(const SharedFacts& shared, Day day) {
    Pantry pantry = shared.builtIn;
    putOwn(shared.own.grains, day, pantry);
    putOwn(shared.own.yeasts, day, pantry);
    putOwn(shared.own.hops, day, pantry);
    return pantry;
}

template <class Then> void forEachOwn(const OwnIngredients& own, Then then) {
    std::for_each(own.grains.begin(), own.grains.end(), then);
    std::for_each(own.yeasts.begin(), own.yeasts.end(), then);
    std::for_each(own.hops.begin(), own.hops.end(), then);
}

template <class Then> void forEachIn(const Pantry& pantry, Then then) {
    std::for_each(pantry.grains().begin(), pantry.grains().end(), then);
    std::for_each(pantry.yeasts().begin(), pantry.yeasts().end(), then);
    std::for_each(pantry.hops().begin(), pantry.hops().end(), then);
}

bool isId(std::string_view id) {
    return !id.empty() && std::all_of(id.begin(), id.end(), [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_';
    });
}

/// `others`: of the same kind, which may be the same ingredient of another day.
template <class F> Result<void> idIsFree(const F& fact, const Facts<F>& others, const SharedFacts& shared) {
    const std::string& id = fact.item.id;
    if (!isId(id))
        return badInput("/ingredient", say("desk.own_id").with("id", excerpt(id)), say("desk.own_id.remedy"));
    bool builtIn = false;
    forEachIn(shared.builtIn, [&](const auto& item) { builtIn = builtIn || item.id == id; });
    const bool mine =
        std::any_of(others.begin(), others.end(), [&](const auto& other) { return other.fact.item.id == id; });
    if (builtIn || (!mine && shared.isOwn(id)))
        return badInput("/ingredient", say(builtIn ? "desk.own_built_in" : "desk.own_id_taken").with("id", id),
                        say("desk.own_id_taken.remedy").with("instead", "my_" + id));
    return {};
}

/// Two that look the same in a list could not be told apart.
template <class F> Result<void> nameIsFree(const F& fact, const SharedFacts& shared) {
    std::string taken;
    forEachIn(shared.pantry, [&](const auto& item) {
        if (item.id != fact.item.id && nameKey(item.name) == nameKey(fact.item.name))
            taken = item.name;
    });
    if (taken.empty())
        return {};
    return badInput("/name", say("desk.own_name_taken").with("name", taken), say("desk.own_name_taken.remedy"));
}

template <class F, class Item>
Result<void> canBe(const F& fact, const Facts<F>& others, const SharedFacts& shared, const Result<Item>& like) {
    if (!like)
        return fail(like.error());
    if (auto free = idIsFree(fact, others, shared); !free)
        return free;
    return nameIsFree(fact, shared);
}

/// The ids a recipe names; hops by what they are called.
std::set<std::string> namedBy(const Recipe& recipe) {
    std::set<std::string> ids{recipe.yeast};
    for (const auto& part : recipe.grist)
        ids.insert(part.grain);
    if (recipe.sugarShare > Share{0})
        ids.insert(recipe.sugar);
    for (const auto& hop : recipe.hops)
        ids.insert(nameKey(hop.name));
    return ids;
}

/// What it is called changes nothing of what was made with it.
template <class Item> Item unnamed(Item item) {
    item.name.clear();
    if constexpr (requires { item.note; })
        item.note.clear();
    return item;
}

/// The name of what is another ingredient in one pantry than in the other; empty: none of these.
std::string otherIn(const std::set<std::string>& ids, const Pantry& before, const Pantry& after) {
    for (const auto& id : ids) {
        const auto grain = before.grain(id), grainNow = after.grain(id);
        if (grain && (!grainNow || unnamed(*grain) != unnamed(*grainNow)))
            return grain->name;
        const auto yeast = before.yeast(id), yeastNow = after.yeast(id);
        if (yeast && (!yeastNow || unnamed(*yeast) != unnamed(*yeastNow)))
            return yeast->name;
    }
    return {};
}

/// Gone: id, and for hops the key of the name, with the name.
std::map<std::string, std::string> goneFrom(const Pantry& before, const Pantry& after) {
    std::map<std::string, std::string> gone;
    forEachIn(before, [&](const auto& item) {
        gone[item.id] = item.name;
        if constexpr (requires { item.alpha; })
            gone[nameKey(item.name)] = item.name;
    });
    forEachIn(after, [&](const auto& item) {
        gone.erase(item.id);
        if constexpr (requires { item.alpha; })
            gone.erase(nameKey(item.name));
    });
    return gone;
}

Result<void> keeps(const Recipe& recipe, const std::map<std::string, std::string>& gone, const std::string& who) {
    for (const auto& id : namedBy(recipe))
        if (const auto at = gone.find(id); at != gone.end())
            return badInput("/ingredient", say("desk.own_in_use").with("name", at->second).with("who", who),
                            say("desk.own_in_use.remedy").with("name", at->second));
    return {};
}

Result<void> keeps(const VesselRecord& record, const std::map<std::string, std::string>& gone) {
    for (const auto& stored : record.of<facts::BaseRecipeFact>())
        if (auto ok = keeps(stored.fact.recipe, gone, record.facts.name); !ok)
            return ok;
    for (const auto& stored : record.of<facts::ChoiceFact>())
        if (stored.fact.forecast)
            if (auto ok = keeps(stored.fact.forecast->recipe, gone, record.facts.name); !ok)
                return ok;
    return {};
}

} // namespace

void SharedFacts::mixPantries() {
    std::set<Day> days;
    forEachOwn(own, [&](const auto& stored) { days.insert(stored.fact.on); });
    pantries_.clear();
    for (const Day day : days)
        pantries_.emplace_back(day, std::make_shared<const Pantry>(mixed(*this, day)));
    pantry = pantries_.empty() ? builtIn : *pantries_.back().second;
}

const Pantry& SharedFacts::pantryOn(Day day) const {
    if (pantries_.empty())
        return pantry;
    const auto later =
        std::find_if(pantries_.begin(), pantries_.end(), [&](const auto& each) { return each.first > day; });
    return later == pantries_.begin() ? *later->second : *std::prev(later)->second;
}

bool SharedFacts::isOwn(std::string_view id) const {
    bool found = false;
    forEachOwn(own, [&](const auto& stored) { found = found || stored.fact.item.id == id; });
    return found;
}

Result<void> canBeOwn(const facts::OwnGrainFact& fact, const SharedFacts& shared) {
    const bool sugar = fact.item.isSugar();
    if (auto ok = canBe(fact, shared.own.grains, shared, ingredient::builtInPantry().grain(fact.like, "/like")); !ok)
        return ok;
    if (sugar && !fact.fermentable)
        return badInput("/fermentable_share", say("desk.own_sugar").with("name", fact.item.name),
                        say("desk.own_sugar.remedy"));
    for (const auto& other : shared.own.grains)
        if (other.fact.item.id == fact.item.id && other.fact.item.isSugar() != sugar)
            return badInput("/type", say("desk.own_type").with("name", fact.item.name), say("desk.own_type.remedy"));
    return {};
}

Result<void> canBeOwn(const facts::OwnYeastFact& fact, const SharedFacts& shared) {
    return canBe(fact, shared.own.yeasts, shared, ingredient::builtInPantry().yeast(fact.like, "/like"));
}

Result<void> canBeOwn(const facts::OwnHopFact& fact, const SharedFacts& shared) {
    return canBe(fact, shared.own.hops, shared, ingredient::builtInPantry().hop(fact.like, "/like"));
}

Result<void> keepsBrews(const SharedFacts& before, const SharedFacts& after) {
    const facts::BrewFact* last = nullptr;
    std::string changed;
    for (const auto& [id, brew] : before.brews)
        if (!last || brew.on > last->on)
            if (const auto name = otherIn(namedBy(brew.recipe), before.pantryOn(brew.on), after.pantryOn(brew.on));
                !name.empty()) {
                last = &brew;
                changed = name;
            }
    if (!last)
        return {};
    return badInput("/on", say("desk.own_rewrites").with("name", changed).with("brew", last->name).with("on", last->on),
                    say("desk.own_rewrites.remedy").with("from", last->on + std::chrono::days{1}));
}

Result<void> keepsRecipes(const SharedFacts& before, Cellar& after) {
    if (auto loaded = after.loadShared(); !loaded)
        return loaded;
    const auto gone = goneFrom(before.pantry, after.shared().pantry);
    if (gone.empty())
        return {};
    for (const auto& [id, brew] : after.shared().brews)
        if (auto ok = keeps(brew.recipe, gone, brew.name); !ok)
            return ok;
    if (auto loaded = after.loadAll(); !loaded)
        return loaded;
    for (const auto& vessel : after.shared().vessels) {
        const auto record = after.vesselById(vessel.id);
        if (!record)
            return fail(record.error());
        if (auto ok = keeps(**record, gone); !ok)
            return ok;
    }
    return {};
}

} // namespace staveline::desk
