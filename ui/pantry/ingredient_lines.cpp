// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pantry/ingredient_lines.h"

#include "facts/own_ingredients.h"
#include "ingredient/pantry.h"

#include <algorithm>
#include <cctype>

namespace staveline::ui {

using facts::OwnGrainFact;
using facts::OwnHopFact;
using facts::OwnYeastFact;

namespace {

bool isOf(IngredientSort sort, const facts::Fact& fact) {
    if (const auto* grain = std::get_if<OwnGrainFact>(&fact))
        return sort == (grain->item.isSugar() ? IngredientSort::sugar : IngredientSort::grain);
    return sort == (std::holds_alternative<OwnYeastFact>(fact) ? IngredientSort::yeast : IngredientSort::hop);
}

/// One's own have an item with id and name.
template <class Then> void withItem(const facts::Fact& fact, Then then) {
    std::visit(
        [&](const auto& each) {
            if constexpr (requires { each.item.id; })
                then(each.item);
        },
        fact);
}

template <class Item>
void addBuiltIn(const std::vector<Item>& items, std::vector<IngredientLine>& lines, bool (*wanted)(const Item&)) {
    for (const Item& item : items)
        if (wanted(item) &&
            std::none_of(lines.begin(), lines.end(), [&](const IngredientLine& line) { return line.id == item.id; }))
            lines.push_back({item.id, qs(item.name), {}});
}

template <class F> facts::Fact like(const IngredientLine& line, Day today) {
    F fact;
    if (line.own)
        fact = std::get<F>(line.own->fact);
    else
        startLike(fact, line.id);
    fact.on = today;
    fact.item.id.clear();
    fact.item.name.clear();
    return fact;
}

} // namespace

std::vector<IngredientLine> linesOf(IngredientSort sort, const desk::Desk& desk) {
    std::vector<IngredientLine> lines;
    for (const auto& filed : desk.ownIngredients())
        if (isOf(sort, filed.fact))
            withItem(filed.fact, [&](const auto& item) { lines.push_back({item.id, qs(item.name), filed}); });
    const ingredient::Pantry& pantry = desk.pantry();
    if (sort == IngredientSort::grain)
        addBuiltIn<ingredient::Grain>(pantry.grains(), lines, [](const auto& grain) { return !grain.isSugar(); });
    else if (sort == IngredientSort::sugar)
        addBuiltIn<ingredient::Grain>(pantry.grains(), lines, [](const auto& grain) { return grain.isSugar(); });
    else if (sort == IngredientSort::yeast)
        addBuiltIn<ingredient::Yeast>(pantry.yeasts(), lines, [](const auto&) { return true; });
    else
        addBuiltIn<ingredient::Hop>(pantry.hops(), lines, [](const auto&) { return true; });
    return lines;
}

facts::Fact startedLike(IngredientSort sort, const IngredientLine& line, Day today) {
    switch (sort) {
    case IngredientSort::yeast:
        return like<OwnYeastFact>(line, today);
    case IngredientSort::hop:
        return like<OwnHopFact>(line, today);
    default:
        return like<OwnGrainFact>(line, today);
    }
}

std::string shortName(const std::string& name, const ingredient::Pantry& pantry) {
    std::string word;
    for (const char c : name)
        if (std::isalnum(static_cast<unsigned char>(c)) != 0 && static_cast<unsigned char>(c) < 128)
            word += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
        else if (!word.empty() && word.back() != '_')
            word += '_';
    if (word.ends_with('_'))
        word.pop_back();
    if (word.empty())
        word = "own";
    const auto taken = [&](const std::string& id) { return pantry.grain(id) || pantry.yeast(id) || pantry.hop(id); };
    if (!taken(word))
        return word;
    int number = 2;
    while (taken(word + "_" + std::to_string(number)))
        ++number;
    return word + "_" + std::to_string(number);
}

} // namespace staveline::ui
