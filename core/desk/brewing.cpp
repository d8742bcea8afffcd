// SPDX-License-Identifier: GPL-3.0-or-later
// The coming brew: where its recipe comes from, drafts of it, and what the beer as brewed means.
#include "advice/forecaster.h"
#include "brewing/as_brewed.h"
#include "desk/inside.h"
#include "forward/parameters.h"
#include "quantity/density.h"

#include <algorithm>
#include <cmath>

namespace staveline {
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
        words.push_back(say(stem + (willBeTasted(change) ? "" : ".untasted")).with("points", SignedPoints{change}));
    }
    if (!any)
        words.push_back(say("desk.brewed.as_planned"));
}

/// The recipe with its measured original gravity.
Recipe measuredRecipe(const BrewFact& brew) {
    Recipe recipe = brew.recipe;
    if (brew.originalGravity)
        recipe.originalGravity = toPlato(*brew.originalGravity);
    return recipe;
}

/// Its effect is in the vessel's history by now: where it went, and what came out against its own recipe.
Result<BrewMeaning> meaningOfPoured(const BrewFact& fact, const Poured& poured, const SharedFacts& shared) {
    auto input = resolve(fact.recipe, shared.pantry, shared.kit(fact.on).equipment.heatingRate);
    if (!input)
        return fail(input.error());
    BrewMeaning meaning;
    meaning.wentIn = poured.on;
    meaning.words.push_back(say("desk.brewed.went_in").with("vessel", poured.into).with("on", poured.on));
    sayGravities(fact, fact.recipe.originalGravity, brew(*input, builtInParameters().brew).finalGravity, meaning.words);
    if (meaning.words.size() == 1 && (fact.originalGravity || fact.finalGravity))
        meaning.words.push_back(say("desk.brewed.as_its_recipe"));
    return meaning;
}

PerDimension<Band> moved(PerDimension<Band> bands, const Scores& from, const Scores& to) {
    for (Dimension d : allDimensions)
        for (double* value : {&bands[d].value, &bands[d].low, &bands[d].high})
            *value += to[d] - from[d];
    return bands;
}

} // namespace

namespace {

/// Where the recipe in use comes from, and since when.
void takeOrigin(PlannedRecipe& planned, const VesselRecord& record, const LedgerState& now) {
    using From = PlannedRecipe::From;
    const auto take = [&](From from, const auto& fact) {
        planned.from = from;
        planned.since = fact.on;
    };
    const BaseRecipeFact* base = record.latest<BaseRecipeFact>(now.on);
    const ChoiceFact *open = openChoice(record, now), *before = choiceInForce(record, now);
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

} // namespace

Result<PlannedRecipe> Desk::planned(const VesselName& name) const {
    auto found = inside_->cellar->vessel(name);
    if (!found)
        return fail(found.error());
    const VesselRecord& record = **found;
    const SharedFacts& shared = inside_->cellar->shared();
    const LedgerState now = replayOf(record, shared, today()).now;
    PlannedRecipe planned;
    planned.setting = settingInUse(record, now);
    takeOrigin(planned, record, now);
    planned.moves = changesSinceLastRefill(record, shared.pantry, now, inside_->units);
    if (const BrewFact* brewed = brewForRefill(record, *inside_->cellar, now, today()))
        planned.brewed = *brewed;
    return planned;
}

Result<BrewDraft> Desk::draft(const VesselName& name, const Setting& setting, const EquipmentFact& kit) const {
    auto found = inside_->cellar->vessel(name);
    if (!found)
        return fail(found.error());
    const VesselRecord& record = **found;
    const SharedFacts& shared = inside_->cellar->shared();
    if (auto ok = checkFields(BaseRecipeFact{name, today(), setting.recipe}); !ok)
        return fail(ok.error());
    if (auto ok = checkFields(kit); !ok)
        return fail(under("/equipment", ok.error()));
    auto input = resolve(setting.recipe, shared.pantry, kit.equipment.heatingRate);
    if (!input)
        return fail(input.error());
    const BrewParameters parameters = parametersFor(record, today()).brew;
    BrewDraft draft;
    draft.beer = brew(*input, parameters);
    draft.mash = traceMash(*input, parameters);
    auto plan = sizedFor(*input, draft.beer, kit, refillWanted(setting, record, *inside_->cellar, today()));
    if (!plan)
        return fail(plan.error());
    draft.plan = std::move(*plan);
    return draft;
}

Result<BrewMeaning> Desk::meaning(const BrewFact& fact) const {
    if (auto shared = inside_->cellar->loadShared(); !shared)
        return fail(shared.error());
    if (const auto poured = inside_->cellar->poured(fact.name))
        return meaningOfPoured(fact, *poured, inside_->cellar->shared());
    auto job = adviceJob({fact.vessel, {}, {}, false, true});
    if (!job)
        return fail(job.error());
    const AdviceInput& in = job->input;
    const Setting& use = job->inUse;
    auto planned = TryBoard(in).trial(use, TrialDepth::next);
    auto plan = brewPlan(fact.vessel);
    auto input = resolve(measuredRecipe(fact), *in.pantry, in.equipment.heatingRate);
    if (!planned || !plan || !input)
        return fail(!planned ? planned.error() : !plan ? plan.error() : input.error());
    auto before = predict(fact.vessel, use);
    if (!before)
        return fail(before.error());
    RefillBeer beer = brew(*input, in.parameters.brew);
    if (fact.finalGravity)
        beer = withFinalGravity(beer, input->recipe.originalGravity, toPlato(*fact.finalGravity), in.parameters.brew);
    const Plan conditions{in.toThisDraw, shareOf(in, use), use.interval, use.temperature, in.oxygenPerYear};
    const Prediction after =
        staveline::predict(in.parameters, in.state, beer, input->recipe.originalGravity, conditions);
    BrewMeaning meaning;
    meaning.planned = planned->next;
    meaning.asBrewed = moved(planned->next, before->nextDraw.scores, after.nextDraw.scores);
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

namespace {

const int tasteAgainAfter = EstimateConstants{}.tasteAgain;

void sayTasted(const EstimatesView& estimates, Day today, DrawDayView& view) {
    if (!estimates.tastedOn)
        view.findings.push_back(say("desk.draw_day.not_tasted"));
    else if (daysBetween(*estimates.tastedOn, today) > tasteAgainAfter)
        view.findings.push_back(say("desk.draw_day.taste_again").with("on", *estimates.tastedOn));
}

void sayTitrated(const VesselRecord& record, Day today, DrawDayView& view) {
    const auto measured = measuredUpTo(record, today);
    const bool titrated = std::any_of(measured.begin(), measured.end(), [&](const MeasuredOn& each) {
        return each.values->ta && daysBetween(each.on, today) <= tasteAgainAfter;
    });
    if (!titrated)
        view.findings.push_back(say("desk.draw_day.titrate"));
}

/// Real litres against planned ones, and the draw that would fit.
void sayLitres(const AdviceInput& in, DrawDayView& view) {
    if (!view.drawn && view.plannedDraw > view.held)
        view.findings.push_back(
            say("desk.draw_day.more_than_held").with("draw", view.plannedDraw).with("held", view.held));
    if (!view.brewed) {
        view.findings.push_back(say("desk.draw_day.no_brew"));
        return;
    }
    if (!view.brewGives) {
        view.findings.push_back(say("desk.draw_day.no_litres").with("brew", view.brewed->name));
        return;
    }
    if (view.refill.l - view.brewGives->l <= .005 * in.fillTo.l)
        return;
    if (view.drawn) {
        view.findings.push_back(say("desk.draw_day.short.drawn")
                                    .with("gives", *view.brewGives)
                                    .with("refill", view.refill)
                                    .with("missing", view.refill - *view.brewGives));
        return;
    }
    const Litres fits{std::max(0.0, view.held.l + view.brewGives->l - in.fillTo.l)};
    view.findings.push_back(say("desk.draw_day.short")
                                .with("gives", *view.brewGives)
                                .with("refill", view.refill)
                                .with("fits", fits)
                                .with("planned", view.plannedDraw));
}

void sayPromise(DrawDayView& view) {
    if (!view.choice || !view.choice->forecast)
        return;
    const Forecast& told = *view.choice->forecast;
    for (Dimension d : allDimensions)
        if (view.expected[d] && std::abs(view.expected[d]->value - told.mean[d]) > z80 * told.sd[d])
            view.findings.push_back(say("desk.draw_day.promise." + std::string(name(d)))
                                        .with("told", Points{told.mean[d]})
                                        .with("now", Points{view.expected[d]->value}));
}

void addPlanB(const EstimatesView& estimates, DrawDayView& view) {
    for (Dimension d : allDimensions) {
        const Verdict& verdict = estimates.verdicts[d];
        if (verdict.kind == VerdictKind::faultFirst) {
            view.planB = {verdict.reason, say("desk.plan_b.keep_brew"), say("caution.refill.hold")};
            return;
        }
        if (!view.drawn && verdict.kind == VerdictKind::waitUntil && verdict.until)
            view.planB.push_back(say("desk.plan_b.wait").with("until", *verdict.until));
    }
    if (view.drawn)
        return;
    view.planB.push_back(say("desk.plan_b.smaller"));
    view.planB.push_back(say("desk.plan_b.top_up"));
    view.planB.push_back(say("desk.plan_b.keep_brew"));
    view.planB.push_back(say("caution.refill.hold"));
}

} // namespace

Result<DrawDayView> Desk::drawDay(const VesselName& name) const {
    auto job = adviceJob({name, {}, {}, false, true});
    if (!job)
        return fail(job.error());
    const VesselRecord& record = **inside_->cellar->vessel(name);
    const SharedFacts& shared = inside_->cellar->shared();
    const LedgerState now = replayOf(record, shared, today()).now;
    const AdviceInput& in = job->input;
    DrawDayView view;
    if (const ChoiceFact* choice = openChoice(record, now))
        view.choice = *choice;
    view.brewed = job->brewed;
    view.held = now.volume;
    view.drawn = in.drawn;
    view.plannedDraw = job->inUse.draw;
    const Litres stays = in.drawn ? now.volume : now.volume - job->inUse.draw;
    view.refill = std::max(Litres{0}, in.fillTo - stays);
    view.estimates = job->estimates;
    if (view.brewed) {
        view.brewGives = givesOf(*view.brewed, shared);
        if (const auto meant = meaning(*view.brewed))
            for (Dimension d : allDimensions)
                view.expected[d] = meant->asBrewed[d];
    } else if (const auto trial = TryBoard(in).trial(job->inUse, TrialDepth::next)) {
        for (Dimension d : allDimensions)
            view.expected[d] = trial->next[d];
    }
    if (!view.drawn) // else too late to taste before the draw
        sayTasted(job->estimates, today(), view);
    sayTitrated(record, today(), view);
    sayLitres(in, view);
    sayPromise(view);
    addPlanB(job->estimates, view);
    return view;
}

} // namespace staveline
