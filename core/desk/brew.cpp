// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/brew.h"

#include "advice/forecaster.h"
#include "brewing/as_brewed.h"
#include "desk/advice.h"
#include "desk/chemistry.h"
#include "desk/first_fill.h"
#include "desk/house.h"
#include "desk/inside.h"
#include "facts/kept_words.h"
#include "quantity/density.h"

#include <algorithm>
#include <cmath>

namespace staveline::desk {

using facts::BrewFact;
using facts::VesselName;

namespace {

constexpr double gravityOff = .0015; ///< SG: the reading error of a brewing hydrometer (common practice, no source)

void sayGravities(const BrewFact& brew, Plato original, Plato final, std::vector<Message>& words) {
    const auto compare = [&](const char* key, const std::optional<SpecificGravity>& measured, Plato planned) {
        if (measured && std::abs(measured->sg - toGravity(planned).sg) > gravityOff)
            words.push_back(say(key).with("measured", *measured).with("planned", planned));
    };
    compare("desk.brewed.original", brew.originalGravity, original);
    compare("desk.brewed.final", brew.finalGravity, final);
}

void sayScores(const BrewMeaning& meaning, std::vector<Message>& words) {
    bool any = false;
    for (Dimension d : allDimensions) {
        const double change = meaning.asBrewed[d].value - meaning.planned[d].value;
        if (std::abs(change) < .05)
            continue;
        any = true;
        const std::string stem = "desk.brewed." + std::string(name(d));
        words.push_back(
            say(stem + (advice::willBeTasted(change) ? "" : ".untasted")).with("points", SignedPoints{change}));
    }
    if (!any)
        words.push_back(say("desk.brewed.as_planned"));
}

/// The recipe with its measured original gravity.
brewing::Recipe measuredRecipe(const BrewFact& brew) {
    brewing::Recipe recipe = brew.recipe;
    if (brew.originalGravity)
        recipe.originalGravity = toPlato(*brew.originalGravity);
    return recipe;
}

/// Nothing is promised of it: what came out against the plan, and whether it fills the vessel.
BrewMeaning meaningOfFirstFill(const BrewFact& fact, const brewing::BrewPlan& plan, const SharedFacts& shared) {
    BrewMeaning meaning;
    meaning.coming = false;
    meaning.firstFill = true;
    sayGravities(fact, plan.originalGravity, plan.finalGravity, meaning.words);
    const auto gives = givesOf(fact, shared);
    if (gives && *gives < plan.intoVessel)
        meaning.words.push_back(say("desk.brewed.short.first").with("gives", *gives).with("wanted", plan.intoVessel));
    if (meaning.words.empty())
        meaning.words.push_back(say("desk.brewed.first_as_planned"));
    return meaning;
}

/// The coming draw is not its own: where it went, and what came out against its own recipe.
Result<BrewMeaning> meaningOfPast(const BrewFact& fact, Message where, const SharedFacts& shared) {
    auto input = resolve(fact.recipe, shared.pantryOn(fact.on), shared.kit(fact.on, fact.vessel).equipment.heatingRate);
    if (!input)
        return fail(input.error());
    BrewMeaning meaning;
    meaning.coming = false;
    meaning.words.push_back(std::move(where));
    sayGravities(fact, fact.recipe.originalGravity, brew(*input, forward::builtInParameters().brew).finalGravity,
                 meaning.words);
    if (meaning.words.size() == 1 && (fact.originalGravity || fact.finalGravity))
        meaning.words.push_back(say("desk.brewed.as_its_recipe"));
    return meaning;
}

/// None: it is for the coming refill.
std::optional<Message> whereItWent(const BrewFact& fact, Cellar& cellar, const CurrentVessel* vessel) {
    if (const auto poured = cellar.poured(fact.name))
        return say("desk.brewed.went_in").with("vessel", poured->into).with("on", poured->on);
    const auto refilled = vessel ? vessel->now().lastRefill : std::nullopt;
    if (refilled && fact.on <= *refilled)
        return say("desk.brewed.not_poured").with("on", *refilled);
    return {};
}

PerDimension<advice::Band> moved(PerDimension<advice::Band> bands, const Scores& from, const Scores& to) {
    for (Dimension d : allDimensions)
        for (double* value : {&bands[d].value, &bands[d].low, &bands[d].high})
            *value += to[d] - from[d];
    return bands;
}

/// Where the recipe in use comes from, and since when.
void takeOrigin(PlannedRecipe& planned, const VesselRecord& record, const vessel::LedgerState& now) {
    using From = PlannedRecipe::From;
    const auto take = [&](From from, const auto& fact) {
        planned.from = from;
        planned.since = fact.on;
    };
    const facts::BaseRecipeFact* base = record.latest<facts::BaseRecipeFact>(now.on);
    const facts::ChoiceFact *open = openChoice(record, now), *before = choiceInForce(record, now);
    planned.usual = base && base->recipe == planned.setting.recipe;
    if (open && open->forecast->recipe == planned.setting.recipe) {
        take(From::choice, *open);
        planned.proposal = open->proposal;
    } else if (planned.usual) {
        take(From::baseRecipe, *base);
    } else if (before) {
        take(From::lastRefill, *before);
    }
}

/// Sized with the efficiency that the house's brews have shown; the plan says so.
Result<brewing::BrewPlan> sizedByHouse(const brewing::BrewInput& input, const brewing::RefillBeer& beer,
                                       facts::EquipmentFact kit, const brewing::House& house, Litres intoVessel) {
    const Share own = kit.equipment.efficiency;
    kit.equipment.efficiency = house.efficiency(own);
    auto plan = sizedFor(input, beer, kit, intoVessel);
    if (plan)
        plan->assumptions = houseNotes(house, own);
    return plan;
}

/// The vessel's own part in what there is to say.
void sayStrongVessel(const CurrentVessel& vessel, Cellar& cellar, std::vector<Message>& cautions) {
    const auto state = Chemistry(cellar, vessel).on(vessel.record, vessel.today);
    const PercentVol limit{constants::alcoholBrakes};
    if (state && state->beer.alcohol() > limit)
        cautions.push_back(
            say("caution.refill.strongVessel").with("alcohol", state->beer.alcohol()).with("limit", limit));
}

/// What is lacking is told with what can still be done: nothing of beer that is made, not less drawn of what is drawn.
void tellShortage(const CurrentVessel& vessel, std::vector<Message>& findings) {
    const auto isShortage = [](const Message& finding) { return finding.key == "brewing.brew_short"; };
    if (vessel.brewed)
        std::erase_if(findings, isShortage);
    else if (vessel.drawn || vessel.toFill)
        for (Message& finding : findings)
            if (isShortage(finding))
                finding.key = "brewing.brew_short.drawn";
}

/// What is said of a plan for this vessel beside what the kit and the model say.
void sayOfVessel(const CurrentVessel& vessel, Cellar& cellar, const facts::EquipmentFact& kit,
                 brewing::BrewPlan& plan) {
    const auto notes = firstFillNotes(vessel, cellar.shared(), kit, plan);
    plan.assumptions.insert(plan.assumptions.begin(), notes.begin(), notes.end());
    sayStrongVessel(vessel, cellar, plan.cautions);
    tellShortage(vessel, plan.findings);
}

Result<brewing::BrewPlan> sized(const CurrentVessel& vessel, Cellar& cellar) {
    const SharedFacts& shared = cellar.shared();
    const facts::EquipmentFact kit = shared.kit(vessel.today, vessel.record.facts.name);
    auto input = resolve(vessel.inUse.recipe, shared.pantry, kit.equipment.heatingRate);
    if (!input)
        return fail(input.error());
    const brewing::House house = houseOn(shared, vessel.today, &kit);
    const brewing::RefillBeer beer = brew(*input, house.parameters(parametersFor(vessel.record, vessel.today).brew));
    auto plan = sizedByHouse(*input, beer, kit, house, refillWanted(vessel.inUse, vessel));
    if (plan)
        sayOfVessel(vessel, cellar, kit, *plan);
    return plan;
}

} // namespace

Result<PlannedRecipe> Desk::planned(const VesselName& name) const {
    auto found = inside_->current(name);
    if (!found)
        return fail(found.error());
    const CurrentVessel& vessel = **found;
    PlannedRecipe planned;
    planned.setting = vessel.inUse;
    planned.firstFill = vessel.toFill;
    takeOrigin(planned, vessel.record, vessel.now());
    for (const auto& move : changesSinceLastRefill(vessel.record, inside_->cellar->shared().pantry, vessel.now()))
        planned.moves.push_back(facts::toldWords(move, inside_->units));
    if (vessel.brewed)
        planned.brewed = *vessel.brewed;
    return planned;
}

Result<brewing::BrewPlan> Desk::brewPlan(const VesselName& name) const {
    auto vessel = inside_->current(name);
    if (!vessel)
        return fail(vessel.error());
    return sized(**vessel, *inside_->cellar);
}

Result<BrewDraft> Desk::draft(const VesselName& name, const advice::Setting& setting,
                              const facts::EquipmentFact& kit) const {
    auto found = inside_->current(name);
    if (!found)
        return fail(found.error());
    const CurrentVessel& vessel = **found;
    const SharedFacts& shared = inside_->cellar->shared();
    if (auto ok = facts::checkFields(facts::BaseRecipeFact{name, today(), setting.recipe}); !ok)
        return fail(ok.error());
    if (auto ok = facts::checkFields(kit); !ok)
        return fail(under("/equipment", ok.error()));
    auto input = resolve(setting.recipe, shared.pantry, kit.equipment.heatingRate);
    if (!input)
        return fail(input.error());
    const facts::EquipmentFact inUse = shared.kit(vessel.today, name);
    const brewing::House house = houseOn(shared, vessel.today, &inUse);
    const brewing::BrewParameters parameters = house.parameters(parametersFor(vessel.record, vessel.today).brew);
    BrewDraft draft;
    draft.beer = brew(*input, parameters);
    draft.mash = traceMash(*input, parameters);
    auto plan = sizedByHouse(*input, draft.beer, kit, house, refillWanted(setting, vessel));
    if (!plan)
        return fail(plan.error());
    draft.plan = std::move(*plan);
    sayOfVessel(vessel, *inside_->cellar, kit, draft.plan);
    return draft;
}

Result<BrewMeaning> Desk::meaning(const BrewFact& fact) const {
    if (auto shared = inside_->cellar->loadShared(); !shared)
        return fail(shared.error());
    const auto vessel = inside_->current(fact.vessel);
    if (auto where = whereItWent(fact, *inside_->cellar, vessel ? vessel->get() : nullptr))
        return meaningOfPast(fact, *std::move(where), inside_->cellar->shared());
    if (vessel && (*vessel)->toFill) {
        auto plan = sized(**vessel, *inside_->cellar);
        return plan ? meaningOfFirstFill(fact, *plan, inside_->cellar->shared())
                    : Result<BrewMeaning>(fail(plan.error()));
    }
    auto job = adviceJob({fact.vessel, {}, {}, false, true});
    if (!job)
        return fail(job.error());
    const advice::AdviceInput& in = job->input;
    const advice::Setting& use = job->inUse;
    auto planned = advice::TryBoard(in).trial(use, advice::TrialDepth::next);
    auto plan = brewPlan(fact.vessel);
    auto input = resolve(measuredRecipe(fact), *in.pantry, in.equipment.heatingRate);
    if (!planned || !plan || !input)
        return fail(!planned ? planned.error() : !plan ? plan.error() : input.error());
    auto asPlanned = resolve(use.recipe, *in.pantry, in.equipment.heatingRate);
    if (!asPlanned)
        return fail(asPlanned.error());
    brewing::RefillBeer beer = brew(*input, in.parameters.brew);
    if (fact.finalGravity)
        beer = withFinalGravity(beer, input->recipe.originalGravity, toPlato(*fact.finalGravity), in.parameters.brew);
    const forward::Plan conditions{in.toThisDraw,    shareOf(in, use), use.interval, use.temperature,
                                   in.oxygenPerYear, in.apart,         in.today};
    const forward::Prediction before = staveline::forward::predict(in.parameters, in.state, *asPlanned, conditions);
    const forward::Prediction after = staveline::forward::predict(in.parameters, in.state, beer, conditions);
    BrewMeaning meaning;
    meaning.planned = planned->next;
    meaning.asBrewed = moved(planned->next, before.nextDraw.scores, after.nextDraw.scores);
    sayGravities(fact, plan->originalGravity, plan->finalGravity, meaning.words);
    if (fact.intoFermenter) {
        const Litres gives = *givesOf(fact, inside_->cellar->shared());
        if (const Litres wanted = refillOf(in, use); gives < wanted)
            meaning.words.push_back(say(in.drawn ? "desk.brewed.short.drawn" : "desk.brewed.short")
                                        .with("gives", gives)
                                        .with("wanted", wanted));
    }
    sayScores(meaning, meaning.words);
    return meaning;
}

std::optional<DayEfficiency> Desk::efficiency(const BrewFact& fact) const {
    if (!inside_->cellar->loadShared())
        return {};
    const SharedFacts& shared = inside_->cellar->shared();
    const auto won = wonOn(fact, shared);
    if (!won)
        return {};
    DayEfficiency day{*won, shared.kit(today(), fact.vessel), {}, {}};
    const Share whole{std::round(100 * won->efficiency.of1) / 100}, counted = day.kit.equipment.efficiency;
    const bool possible = won->efficiency <= Share{1};
    if (possible && whole >= leastEfficiency && std::abs(whole.of1 - counted.of1) >= .005)
        day.offer = whole;
    day.words = say(possible ? "desk.brewed.efficiency" : "desk.brewed.efficiency.impossible")
                    .with("won", won->efficiency)
                    .with("error", won->error * tasting::z80)
                    .with("kit", counted);
    return day;
}

Result<advice::Trial> Desk::predict(const VesselName& name, const advice::Setting& setting) const {
    auto job = adviceJob({name, {}, {}, true});
    if (!job)
        return fail(job.error());
    const advice::AdviceInput& in = job->input;
    if (auto input = resolve(setting.recipe, *in.pantry, in.equipment.heatingRate); !input)
        return fail(input.error());
    if (auto possible = checkDraw(in, setting.draw, "/draw_l"); !possible)
        return fail(possible.error());
    return advice::TryBoard(in).trial(setting, advice::TrialDepth::settled);
}

Result<advice::Setting> Desk::leftAlone(const VesselName& name) const {
    auto job = adviceJob({name, {}, {}, false});
    if (!job)
        return fail(job.error());
    return leaveAloneSetting(job->input);
}

} // namespace staveline::desk
