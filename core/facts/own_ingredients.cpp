// SPDX-License-Identifier: GPL-3.0-or-later
#include "facts/own_ingredients.h"

#include <cmath>

namespace staveline::facts {
namespace {

/// Where the numbers of one's own come from, in the place of a key into sources.csv.
constexpr const char* ownSource = "own";

template <class F, class Item> void begin(F& fact, std::string_view like, Item item) {
    fact.like = like;
    item.id = std::move(fact.item.id);
    item.name = std::move(fact.item.name);
    item.source.clear();
    fact.item = std::move(item);
}

template <class Item> Item sourced(Item item) {
    item.source = ownSource;
    return item;
}

} // namespace

void startLike(OwnGrainFact& fact, std::string_view like) {
    auto grain = ingredient::builtInPantry().grain(like);
    if (!grain)
        return;
    if (grain->ownRdf >= 0)
        fact.fermentable = Share{grain->ownRdf};
    grain->ownRdf = -1; // said once, by the fact
    begin(fact, like, *std::move(grain));
}

void startLike(OwnYeastFact& fact, std::string_view like) {
    auto yeast = ingredient::builtInPantry().yeast(like);
    if (!yeast)
        return;
    fact.primary = Days{static_cast<double>(yeast->primaryDays)};
    yeast->primaryDays = ingredient::Yeast().primaryDays;
    yeast->note.clear();
    begin(fact, like, *std::move(yeast));
}

void startLike(OwnHopFact& fact, std::string_view like) {
    if (auto hop = ingredient::builtInPantry().hop(like))
        begin(fact, like, *std::move(hop));
}

ingredient::Grain ingredientOf(const OwnGrainFact& fact) {
    ingredient::Grain grain = sourced(fact.item);
    grain.ownRdf = fact.fermentable ? fact.fermentable->of1 : -1;
    return grain;
}

ingredient::Yeast ingredientOf(const OwnYeastFact& fact) {
    ingredient::Yeast yeast = sourced(fact.item);
    yeast.primaryDays = static_cast<int>(std::lround(fact.primary.d));
    return yeast;
}

ingredient::Hop ingredientOf(const OwnHopFact& fact) {
    return sourced(fact.item);
}

} // namespace staveline::facts
