// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/stock.h"

#include "desk/in_force.h"
#include "quantity/words.h"

#include <algorithm>
#include <utility>

namespace staveline::desk {
namespace {

/// Weighed out of it by a day, after it was counted. A brew that was not weighed says nothing.
Kilograms takenBy(const SharedFacts& shared, const AtHand& stock, Day day) {
    Kilograms taken{0};
    for (const auto& [id, brew] : shared.brews)
        if (brew.on > stock.countedOn && brew.on <= day)
            for (const auto& part : brew.recipe.grist)
                if (part.grain == stock.counted.item && part.mass)
                    taken += *part.mass;
    return taken;
}

bool inPantry(const SharedFacts& shared, const std::string& id) {
    return shared.pantry.grain(id) || shared.pantry.yeast(id) || shared.pantry.hop(id);
}

bool isCount(const facts::AvailabilityFact& said) {
    return said.mass || said.packs || said.bestBefore;
}

void reckonLeft(const SharedFacts& shared, AtHand& stock, Day day) {
    stock.left = stock.counted.mass;
    if (stock.left)
        stock.left = std::max(Kilograms{0}, *stock.left - takenBy(shared, stock, day));
}

/// A word without an amount leaves the count as it is, but for one that was used up or too old: that it is there again
/// is another lot of it.
void hear(const SharedFacts& shared, AtHand& stock, const facts::AvailabilityFact& said) {
    reckonLeft(shared, stock, said.on);
    const facts::AvailabilityFact count = std::exchange(stock.counted, said);
    AtHand before{count, stock.countedOn, stock.left};
    before.counted.available = true;
    const bool keeps = !isCount(said) && isCount(count) && (!said.available || before.on(said.on));
    if (!keeps) {
        stock.countedOn = said.on;
        return;
    }
    stock.counted.mass = count.mass;
    stock.counted.packs = count.packs;
    stock.counted.bestBefore = count.bestBefore;
}

class ShoppingList {
public:
    ShoppingList(const SharedFacts& shared, Day today, Day brewDay) : shared_(shared), brewDay_(brewDay) {
        for (auto& each : stockOn(shared, today))
            stock_.emplace(each.counted.item, std::move(each));
    }
    Shopping all;

    void need(const std::string& id, const std::string& name, Kilograms mass) {
        const auto at = stock_.find(id);
        if (at == stock_.end() || (at->second.on(brewDay_) && !at->second.left))
            return all.uncounted.push_back(name);
        const Kilograms there = at->second.on(brewDay_) ? *at->second.left : Kilograms{0};
        if (there < mass)
            add(name, mass, there);
    }
    void needHops(const std::string& name, Kilograms mass) {
        for (const auto& hop : shared_.pantry.hops())
            if (nameKey(hop.name) == nameKey(name) || hop.id == name)
                return need(hop.id, name, mass);
        all.uncounted.push_back(name);
    }
    void needYeast(const std::string& id, const std::string& name) {
        const auto at = stock_.find(id);
        if (at == stock_.end())
            all.uncounted.push_back(name);
        else if (!at->second.on(brewDay_))
            all.toBuy.push_back({name, {}, {}, {}});
    }

private:
    void add(const std::string& name, Kilograms needed, Kilograms there) {
        constexpr Kilograms inGrams{1};
        if (needed < inGrams)
            all.toBuy.push_back({name, asGrams(needed), asGrams(there), asGrams(needed - there)});
        else
            all.toBuy.push_back({name, Amount{needed}, Amount{there}, Amount{needed - there}});
    }
    static Amount asGrams(Kilograms mass) { return Amount{Grams{mass.kg * 1000}}; }

    const SharedFacts& shared_;
    Day brewDay_;
    std::map<std::string, AtHand> stock_;
};

} // namespace

bool AtHand::on(Day day) const {
    if (!counted.available)
        return counted.readyOn && *counted.readyOn <= day;
    const bool some = (!left || left->kg > 0) && (!counted.packs || *counted.packs > 0);
    return some && (!counted.bestBefore || day <= *counted.bestBefore);
}

std::vector<AtHand> stockOn(const SharedFacts& shared, Day day) {
    std::map<std::string, AtHand> items;
    for (const auto& stored : shared.availability)
        if (stored.fact.on <= day && inPantry(shared, stored.fact.item)) // one's own may be gone
            hear(shared, items[stored.fact.item], stored.fact);
    std::vector<AtHand> all;
    for (auto& [id, stock] : items) {
        reckonLeft(shared, stock, day);
        all.push_back(std::move(stock));
    }
    return all;
}

std::vector<HopOffer> hopsOn(const SharedFacts& shared, Day day) {
    std::map<std::string_view, Day> since; // one's own lose from the day they were as recorded
    for (const auto& stored : shared.own.hops)
        since[stored.fact.item.id] = stored.fact.on;
    std::vector<HopOffer> offers;
    for (const auto& hop : shared.pantry.hops()) {
        const auto at = since.find(hop.id);
        const int kept = at == since.end() ? 0 : std::max(0, daysBetween(at->second, day));
        offers.push_back({hop.name, alphaAfter(hop, Days{static_cast<double>(kept)})});
    }
    return offers;
}

Shopping shoppingFor(const brewing::BrewPlan& plan, const brewing::Recipe& recipe, const SharedFacts& shared, Day today,
                     Day brewDay) {
    ShoppingList list(shared, today, brewDay);
    std::map<std::string, Kilograms> grist; // one that goes in twice is bought once
    for (const auto& grain : plan.grist)
        grist[grain.id] += grain.mass;
    for (const auto& grain : plan.grist)
        if (auto mass = grist.extract(grain.id))
            list.need(grain.id, grain.name, mass.mapped());
    if (plan.sugar.kg > 0)
        list.need(recipe.sugar, plan.sugarName, plan.sugar);
    std::map<std::string, Grams> hops;
    for (const auto& hop : plan.hops)
        hops[hop.name] += hop.mass;
    for (const auto& [name, mass] : hops)
        list.needHops(name, Kilograms{mass.g / 1000});
    list.needYeast(recipe.yeast, plan.yeastName);
    return std::move(list.all);
}

} // namespace staveline::desk
