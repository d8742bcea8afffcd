// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/settings.h"

#include "brewing/as_brewed.h"
#include "desk/changes.h"

#include <algorithm>

namespace staveline::desk {

using advice::Setting;
using facts::BaseRecipeFact;
using facts::ChoiceFact;
using vessel::LedgerState;

namespace {

bool belongsToComing(const ChoiceFact& choice, const VesselRecord& record, const LedgerState& now) {
    const auto& refills = record.of<facts::RefillFact>();
    return !now.lastRefill || std::none_of(refills.begin(), refills.end(), [&](const auto& stored) {
        return stored.fact.on <= *now.lastRefill && wentInAfter(stored.fact, choice);
    });
}

/// `by`: of those that it may have gone in by.
const ChoiceFact* latestChoice(const VesselRecord& record, const LedgerState& now, bool forComing,
                               const facts::RefillFact* by = nullptr) {
    const ChoiceFact* found = nullptr;
    for (const auto& stored : record.of<ChoiceFact>())
        if (stored.fact.forecast && stored.fact.on <= now.on && (!by || wentInAfter(*by, stored.fact)) &&
            belongsToComing(stored.fact, record, now) == forComing)
            found = &stored.fact;
    return found;
}

/// The base recipe of a day; before it was written down, the first one: the vessel ran on that.
const BaseRecipeFact* baseOn(const VesselRecord& record, Day day) {
    const auto& recipes = record.of<BaseRecipeFact>();
    const BaseRecipeFact* then = record.latest<BaseRecipeFact>(day);
    return then || recipes.empty() ? then : &recipes.front().fact;
}

const BaseRecipeFact* baseOfLastRefill(const VesselRecord& record, const LedgerState& now) {
    return baseOn(record, now.lastRefill.value_or(now.opened.value_or(Day::min())));
}

Setting settingBy(const VesselRecord& record, const BaseRecipeFact* base, const ChoiceFact* choice) {
    const facts::VesselFact& vessel = record.facts;
    Setting setting{base ? base->recipe : defaultRecipe(), vessel.capacity * vessel.drawShare.of1, vessel.interval,
                    vessel.temperature};
    if (!choice)
        return setting;
    if (!base || choice->on >= base->on)
        setting.recipe = choice->forecast->recipe;
    if (!choice->drawOverruled)
        setting.draw = choice->forecast->draw;
    if (!choice->intervalOverruled)
        setting.interval = choice->forecast->interval;
    const bool byRoom = !vessel.room.empty() && !vessel.canChangeTemperature;
    if (!choice->temperatureOverruled && !byRoom)
        setting.temperature = choice->forecast->temperature;
    return setting;
}

Setting usualSetting(const VesselRecord& record, const LedgerState& now) {
    return settingBy(record, record.latest<BaseRecipeFact>(now.on), nullptr);
}

/// What was chosen for one refill only is in the plan for that refill, and in none after it.
Setting plannedSetting(const VesselRecord& record, const ingredient::Pantry& pantry, const LedgerState& now) {
    const BaseRecipeFact* base = record.latest<BaseRecipeFact>(now.on);
    if (const ChoiceFact* open = openChoice(record, now))
        return settingBy(record, base, open);
    return withoutAids(settingBy(record, base, choiceInForce(record, now)), usualSetting(record, now), pantry);
}

/// The recipe that the last refill was brewed by, where its brew is on record.
const brewing::Recipe* lastBrewed(const VesselRecord& record, const SharedFacts& shared, const LedgerState& now) {
    const brewing::Recipe* found = nullptr;
    for (const auto& stored : record.of<facts::RefillFact>())
        if (now.lastRefill && stored.fact.on == *now.lastRefill)
            if (const facts::BrewFact* brew = shared.brew(stored.fact.brew))
                found = &brew->recipe;
    return found;
}

Setting asDrawn(Setting setting, const VesselRecord& record, const LedgerState& now) {
    setting.draw = drawnForRefill(record, now).value_or(setting.draw);
    return setting;
}

} // namespace

bool wentInAfter(const facts::RefillFact& refill, const ChoiceFact& choice) {
    return std::pair(refill.on, refill.turn.value_or(0)) >= std::pair(choice.on, choice.turn.value_or(0));
}

std::optional<Litres> drawnForRefill(const VesselRecord& record, const LedgerState& now) {
    if (!now.opened || !now.lastDraw || (now.lastRefill && *now.lastDraw <= *now.lastRefill))
        return {};
    Litres drawn{0};
    const auto add = [&](const auto& list) {
        for (const auto& stored : list)
            if (stored.fact.on <= now.on && stored.fact.on >= *now.opened &&
                (!now.lastRefill || stored.fact.on > *now.lastRefill))
                drawn = drawn + stored.fact.volume;
    };
    add(record.of<facts::DrawOffFact>());
    add(record.refillsElsewhere);
    return drawn;
}

brewing::Recipe defaultRecipe() {
    brewing::Recipe recipe;
    recipe.grist = {{"pilsner", Share{.75}, false}, {"wheat_malt", Share{.25}, false}};
    recipe.mash = {{Celsius{66}, Minutes{60}}};
    return recipe;
}

const ChoiceFact* openChoice(const VesselRecord& record, const LedgerState& now) {
    return latestChoice(record, now, true);
}

const ChoiceFact* choiceInForce(const VesselRecord& record, const LedgerState& now) {
    return latestChoice(record, now, false);
}

Setting settingInUse(const VesselRecord& record, const ingredient::Pantry& pantry, const LedgerState& now) {
    return asDrawn(plannedSetting(record, pantry, now), record, now);
}

brewing::Recipe recipeGoneInBy(const facts::RefillFact& refill, const VesselRecord& record,
                               const ingredient::Pantry& pantry, LedgerState before) {
    before.on = refill.on;
    const BaseRecipeFact* base = baseOn(record, refill.on);
    if (const ChoiceFact* made = latestChoice(record, before, true, &refill))
        return settingBy(record, base, made).recipe;
    const ChoiceFact* earlier = latestChoice(record, before, false, &refill);
    return withoutAids(settingBy(record, base, earlier), settingBy(record, base, nullptr), pantry).recipe;
}

Setting settingUsual(const VesselRecord& record, const LedgerState& now) {
    return asDrawn(usualSetting(record, now), record, now);
}

bool usualIsNew(const VesselRecord& record, const LedgerState& now) {
    return record.latest<BaseRecipeFact>(now.on) != baseOfLastRefill(record, now);
}

Setting settingLeftAlone(const VesselRecord& record, const SharedFacts& shared, const LedgerState& now) {
    Setting last = settingBy(record, baseOfLastRefill(record, now), choiceInForce(record, now));
    if (const brewing::Recipe* brewed = lastBrewed(record, shared, now))
        last.recipe = withoutWeights(*brewed);
    return asDrawn(withoutAids(last, usualSetting(record, now), shared.pantry), record, now);
}

std::vector<std::string> changesSinceLastRefill(const VesselRecord& record, const ingredient::Pantry& pantry,
                                                const LedgerState& now, const Setting& to) {
    Setting last = settingBy(record, baseOfLastRefill(record, now), choiceInForce(record, now));
    if (drawnForRefill(record, now) == to.draw)
        last.draw = to.draw;
    if (record.facts.wantedAgeYears) // nobody changed the interval: it follows from the age
        last.interval = to.interval;
    return changesBetween(last, to, pantry);
}

std::vector<std::string> changesSinceLastRefill(const VesselRecord& record, const ingredient::Pantry& pantry,
                                                const LedgerState& now) {
    return changesSinceLastRefill(record, pantry, now, plannedSetting(record, pantry, now));
}

} // namespace staveline::desk
