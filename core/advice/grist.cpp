// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/grist.h"

#include <algorithm>

namespace staveline::advice {

using brewing::Recipe;
using ingredient::Pantry;

namespace {

constexpr double nothing = 1e-9;

/// Unknown grain passes no test; resolve() reports it.
bool passes(const brewing::GristPart& part, const Pantry& pantry, GrainTest test) {
    const auto grain = pantry.grain(part.grain);
    return grain && test(*grain);
}

void scale(Recipe& recipe, const Pantry& pantry, GrainTest test, double factor) {
    for (auto& part : recipe.grist)
        if (passes(part, pantry, test))
            part.share.of1 *= factor;
}

/// Scales what passes to `share`, or brings in `filler`.
void setShare(Recipe& recipe, const Pantry& pantry, GrainTest test, double share, const brewing::GristPart& filler) {
    const double present = percentOf(recipe, pantry, test) / 100;
    if (present > nothing)
        scale(recipe, pantry, test, share / present);
    else if (share > nothing && !filler.grain.empty())
        recipe.grist.push_back({filler.grain, {share}, filler.late});
}

} // namespace

bool isBaseMalt(const ingredient::Grain& grain) {
    return grain.kind == ingredient::GrainKind::base;
}

double percentOf(const Recipe& recipe, const Pantry& pantry, GrainTest test) {
    double share = 0;
    for (const auto& part : recipe.grist)
        if (passes(part, pantry, test))
            share += part.share.of1;
    return 100 * share;
}

std::string firstAtHand(const std::vector<std::string>& wanted, const Stock& stock) {
    const auto found = std::find_if(wanted.begin(), wanted.end(), [&](const std::string& id) {
        return stock.has(id) && (stock.pantry.grain(id) || stock.pantry.yeast(id));
    });
    return found == wanted.end() ? std::string() : *found;
}

void exchange(Recipe& recipe, const Exchange& change, const Stock& stock) {
    const double before = percentOf(recipe, stock.pantry, change.test) / 100;
    const double base = percentOf(recipe, stock.pantry, isBaseMalt) / 100;
    const double wanted = std::min(change.percent / 100, before + base);
    setShare(recipe, stock.pantry, change.test, wanted, {change.filler, {0}, change.fillerLate});
    const double moved = percentOf(recipe, stock.pantry, change.test) / 100 - before;
    setShare(recipe, stock.pantry, isBaseMalt, base - moved,
             {firstAtHand({"pilsner", "pale", "high_enzyme"}, stock), {0}, false});
    std::erase_if(recipe.grist, [](const brewing::GristPart& part) { return part.share.of1 <= nothing; });
}

void narrowByGrist(LeverRow& row, const Recipe& recipe, GrainTest test, const std::string& filler,
                   const Pantry& pantry) {
    const double present = percentOf(recipe, pantry, test);
    row.high = std::min(row.high, present + percentOf(recipe, pantry, isBaseMalt));
    if (present > nothing)
        return;
    const auto grain = pantry.grain(filler);
    row.high = grain ? std::min(row.high, 100 * grain->maxShare) : row.low;
}

std::string namesOf(const Recipe& recipe, const Pantry& pantry, GrainTest test) {
    std::string names;
    for (const auto& part : recipe.grist)
        if (passes(part, pantry, test))
            names += (names.empty() ? "" : ", ") + pantry.grain(part.grain)->name;
    return names;
}

bool hasLowRest(const Recipe& recipe) {
    return recipe.mash.size() > 1 && recipe.mash.front().temperature.c < 55;
}

bool hasRawGrain(const Recipe& recipe, const Pantry& pantry) {
    return percentOf(recipe, pantry, [](const ingredient::Grain& grain) { return grain.isRaw(); }) > nothing;
}

} // namespace staveline::advice
