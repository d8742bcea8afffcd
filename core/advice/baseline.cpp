// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/baseline.h"

#include "advice/forecaster.h"
#include "advice/grist.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

namespace staveline::advice {
namespace {

/// The id at hand with the smallest distance; empty: none has a finite one.
template <class Item, class Distance>
std::string nearest(const std::vector<Item>& items, const Stock& stock, Distance distance) {
    std::string found;
    double best = std::numeric_limits<double>::infinity();
    for (const auto& item : items)
        if (const double d = distance(item); stock.has(item.id) && d < best) {
            best = d;
            found = item.id;
        }
    return found;
}

/// Of the same kind, else a base malt; enzyme power decides.
std::string substitute(const ingredient::Grain& missing, const Stock& stock) {
    return nearest(stock.pantry.grains(), stock, [&](const ingredient::Grain& grain) {
        const bool fits = grain.kind == missing.kind || grain.kind == ingredient::GrainKind::base;
        const double apart =
            std::abs(grain.diastaticPowerWk - missing.diastaticPowerWk) / 100 + (grain.kind == missing.kind ? 0 : 100);
        return fits && !missing.isSugar() ? apart : std::numeric_limits<double>::infinity();
    });
}

/// What cannot be taken back weighs most, then clove notes, then attenuation and glycerol.
std::string substitute(const ingredient::Yeast& missing, const Stock& stock) {
    return nearest(stock.pantry.yeasts(), stock, [&](const ingredient::Yeast& yeast) {
        return 100 * (yeast.diastatic() && !missing.diastatic()) +
               50 * (yeast.killerPositive > missing.killerPositive) + 10 * (yeast.pof != missing.pof) +
               std::abs(yeast.takesMaltotriose - missing.takesMaltotriose) +
               std::abs(yeast.glycerolAt12P - missing.glycerolAt12P) / 5;
    });
}

Fault nothingInstead(std::string path, const std::string& name) {
    return {FaultKind::notPossible, std::move(path), say("advice.fault.nothingInstead").with("item", name),
            say("advice.fault.nothingInstead.remedy").with("item", name)};
}

Message replaced(const std::string& missing, const std::string& by) {
    return say("advice.note.replaced").with("missing", missing).with("by", by);
}

Result<void> replaceGrain(Baseline& baseline, std::size_t at, const Stock& stock) {
    auto& part = baseline.before.recipe.grist[at];
    const auto path = fmt::format("/recipe/grist/{}/grain", at);
    const auto missing = stock.pantry.grain(part.grain, path);
    if (!missing)
        return fail(missing.error());
    const auto other = substitute(*missing, stock);
    if (other.empty())
        return fail(nothingInstead(path, missing->name));
    baseline.notes.push_back(replaced(missing->name, stock.pantry.grain(other)->name));
    part.grain = other;
    return {};
}

Result<void> replaceMissingGrain(Baseline& baseline, const Stock& stock) {
    for (std::size_t i = 0; i < baseline.before.recipe.grist.size(); ++i)
        if (!stock.has(baseline.before.recipe.grist[i].grain))
            if (auto done = replaceGrain(baseline, i, stock); !done)
                return done;
    auto& recipe = baseline.before.recipe;
    if (recipe.sugarShare.of1 <= 0 || stock.has(recipe.sugar))
        return {};
    const auto other = firstAtHand({"sucrose", "dextrose", "honey"}, stock);
    if (other.empty())
        return fail(nothingInstead("/recipe/sugar", recipe.sugar));
    const auto missing = stock.pantry.grain(recipe.sugar, "/recipe/sugar");
    if (!missing)
        return fail(missing.error());
    baseline.notes.push_back(replaced(missing->name, stock.pantry.grain(other)->name));
    recipe.sugar = other;
    return {};
}

/// A yeast that is not at hand is replaced as a move, because it is a lever.
Result<void> replaceMissingYeast(Baseline& baseline, const AdviceInput& input, const Stock& stock) {
    const auto& id = baseline.start.recipe.yeast;
    if (stock.has(id))
        return {};
    const auto missing = stock.pantry.yeast(id, "/recipe/yeast");
    if (!missing)
        return fail(missing.error());
    const auto other = substitute(*missing, stock);
    if (other.empty() || baseline.locked.contains("yeast"))
        return fail(
            nothingInstead(baseline.locked.contains("yeast") ? "/locks/yeast" : "/recipe/yeast", missing->name));
    const auto* lever = findLever("yeast");
    baseline.forced.push_back({lever, id, other});
    baseline.notes.push_back(replaced(missing->name, stock.pantry.yeast(other)->name));
    baseline.start = applied(baseline.before, baseline.forced, {*input.pantry, input.unavailable});
    return {};
}

/// A later lock replaces an earlier one on the same lever.
std::vector<LeverLock> lastOfEach(const std::vector<LeverLock>& locks) {
    std::vector<LeverLock> kept;
    for (const auto& lock : locks) {
        std::erase_if(kept, [&](const LeverLock& earlier) { return earlier.lever == lock.lever; });
        kept.push_back(lock);
    }
    return kept;
}

/// The lock's value, checked against the vessel's own bounds where they are shares of its volume.
Result<void> checkLock(const LeverLock& lock, const Baseline& baseline, const AdviceInput& input) {
    const auto fits = withLever(baseline.before, lock.lever, lock.value, *input.pantry);
    if (!fits)
        return fail(under("/locks", fits.error()));
    const auto* lever = findLever(lock.lever);
    const auto row = narrowedRow(*lever, baseline.before, input);
    const bool present = sameValue(lock.value, lever->read(baseline.before, {*input.pantry, input.unavailable}));
    if (!lever->byVolume || present)
        return {};
    if (auto possible = checkDraw(input, {number(lock.value)}, "/locks/" + lock.lever); !possible)
        return possible;
    // Half a step of grace: the adviser itself draws whole litres.
    if (number(lock.value) >= row.low - row.step / 2 && number(lock.value) <= row.high + row.step / 2)
        return {};
    return badInput("/locks/" + lock.lever, say("advice.fault.drawLock").with("value", Litres{number(lock.value)}),
                    say("advice.fault.drawLock.remedy").with("low", Litres{row.low}).with("high", Litres{row.high}));
}

} // namespace

Setting applied(const Setting& setting, std::vector<LeverMove> moves, const Stock& stock) {
    std::stable_sort(moves.begin(), moves.end(),
                     [](const LeverMove& a, const LeverMove& b) { return a.lever->order < b.lever->order; });
    auto changed = setting;
    for (const auto& move : moves)
        move.lever->apply(changed, move.to, stock);
    return changed;
}

Result<Setting> leaveAloneSetting(const AdviceInput& input) {
    auto baseline = prepare(input);
    if (!baseline)
        return fail(std::move(baseline).error());
    return std::move(baseline->start);
}

Result<Baseline> prepare(const AdviceInput& input) {
    const Stock stock{*input.pantry, input.unavailable};
    Baseline baseline{.before = input.base, .start = {}, .forced = {}, .locked = {}, .notes = {}};
    if (auto done = replaceMissingGrain(baseline, stock); !done)
        return fail(std::move(done).error());
    for (const auto& lock : lastOfEach(input.locks)) {
        if (auto sound = checkLock(lock, baseline, input); !sound)
            return fail(std::move(sound).error());
        const auto* lever = findLever(lock.lever);
        const auto present = lever->read(baseline.before, stock);
        baseline.locked.insert(lock.lever);
        if (!sameValue(lock.value, present))
            baseline.forced.push_back({lever, present, lock.value});
    }
    baseline.start = applied(baseline.before, baseline.forced, stock);
    if (auto done = replaceMissingYeast(baseline, input, stock); !done)
        return fail(std::move(done).error());
    return baseline;
}

} // namespace staveline::advice
