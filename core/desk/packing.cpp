// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/packing.h"

#include "desk/estimates.h"
#include "desk/inside.h"
#include "desk/packing_words.h"
#include "desk/rooms.h"
#include "finishing/cautions.h"
#include "quantity/acid_base.h"

#include <algorithm>

namespace staveline::desk {

using facts::CultureFact;
using facts::EventFact;
using facts::Happening;
using finishing::BeerKnown;
using finishing::Priming;

namespace {

Result<void> isThere(const PackingRequest& request, const CurrentVessel& vessel) {
    const Litres held = vessel.now().volume;
    if (request.litres.l > 0 && request.litres <= held)
        return {};
    return badInput(
        "/litres",
        say("finishing.pack.holds").with("vessel", request.vessel).with("wanted", request.litres).with("held", held),
        say("finishing.pack.holds.remedy"));
}

Result<void> asksOneThing(const PackingRequest& request) {
    if (request.volumes.has_value() != request.sugarWeight.has_value())
        return {};
    return badInput("/volumes", say("finishing.pack.which"), say("finishing.pack.which.remedy"));
}

/// A keg may have stood under pressure; by its warmth alone its CO2 cannot be told.
Result<void> tellsItsCo2(const PackingRequest& request, const facts::VesselFact& vessel) {
    if (request.residual || vessel.shape != facts::VesselForm::keg)
        return {};
    return badInput("/residual_vol", say("finishing.pack.under_head").with("vessel", vessel.name),
                    say("finishing.pack.under_head.remedy"));
}

bool broughtIn(const vessel::LedgerEntry& entry) {
    return !entry.outOfThisVessel &&
           (entry.kind == vessel::EntryKind::refill || entry.kind == vessel::EntryKind::topUp);
}

/// The last time beer went in: it ferments again from then on.
std::optional<Day> lastFilled(const CurrentVessel& vessel) {
    std::optional<Day> last;
    for (const vessel::LedgerEntry& entry : vessel.entries)
        if (broughtIn(entry) && entry.on <= vessel.today)
            last = std::max(last, std::optional(entry.on));
    return last;
}

/// The last time the beer was woken up.
std::optional<Day> lastMoved(const VesselRecord& record, Day today) {
    std::optional<Day> last;
    for (const auto& [id, event] : record.of<EventFact>())
        if (event.on <= today && wakesBeer(event.what))
            last = std::max(last, std::optional(event.on));
    return last;
}

/// Its ingredients are those of that day.
struct RecipeOfDay {
    const brewing::Recipe* recipe;
    Day on;
};

/// What went in by brews, and what the vessel is run on.
std::vector<RecipeOfDay> recipesOf(const CurrentVessel& vessel, const SharedFacts& shared) {
    std::vector<RecipeOfDay> recipes = {{&vessel.inUse.recipe, vessel.today}};
    const auto add = [&](const auto& list) {
        for (const auto& stored : list)
            if (const facts::BrewFact* brew = shared.brew(stored.fact.brew); brew && stored.fact.on <= vessel.today)
                recipes.push_back({&brew->recipe, brew->on});
    };
    add(vessel.record.of<facts::RefillFact>());
    add(vessel.record.of<facts::TopUpFact>());
    return recipes;
}

bool isDiastatic(const CurrentVessel& vessel, const SharedFacts& shared) {
    const CultureFact* culture = vessel.record.latest<CultureFact>(vessel.today);
    const auto recipes = recipesOf(vessel, shared);
    return (culture && culture->diastatic) || std::any_of(recipes.begin(), recipes.end(), [&](const RecipeOfDay& each) {
               const auto yeast = shared.pantryOn(each.on).yeast(each.recipe->yeast);
               return yeast && yeast->diastatic();
           });
}

Share mostSugar(const CurrentVessel& vessel, const SharedFacts& shared) {
    Share most{0};
    for (const RecipeOfDay& each : recipesOf(vessel, shared))
        most = std::max(most, each.recipe->sugarShare);
    return most;
}

BeerKnown beerOf(const PackingRequest& request, const CurrentVessel& vessel, const SharedFacts& shared) {
    BeerKnown beer;
    beer.today = vessel.today;
    for (const auto& [on, values] : measuredUpTo(vessel.record, vessel.today))
        if (values->gravity)
            beer.readings.push_back({on, *values->gravity});
    if (request.gravity)
        beer.readings.push_back({vessel.today, *request.gravity});
    if (request.forced)
        beer.forced = {request.forcedOn.value_or(vessel.today), *request.forced};
    beer.lastRefill = lastFilled(vessel);
    beer.lastMove = lastMoved(vessel.record, vessel.today);
    beer.diastatic = isDiastatic(vessel, shared);
    beer.simpleSugar = mostSugar(vessel, shared);
    return beer;
}

/// By a wish for volumes, or the other way round by a weight of sugar.
Result<Priming> primingOf(const PackingRequest& request, PackingAnswer& answer) {
    answer.wanted = request.volumes.value_or(Co2Volumes{0});
    if (request.sugarWeight) {
        if (answer.sugar.isLiquid())
            return badInput("/sugar_g_l", say("finishing.pack.liquid").with("sugar", answer.sugar.name),
                            say("finishing.pack.liquid.remedy"));
        const auto volumes = volumesWith(*request.sugarWeight, answer.residual.value, answer.sugar);
        if (!volumes)
            return fail(volumes.error());
        answer.wanted = *volumes;
    }
    return finishing::prime(
        {request.litres, answer.wanted, answer.residual.value, answer.sugar, request.extract, request.package.size});
}

Result<void> addFruit(const PackingRequest& request, PackingAnswer& answer, const Composition& beer, Celsius warmth) {
    if (request.fruit.empty())
        return {};
    const auto kind = finishing::fruit(request.fruit);
    if (!kind)
        return fail(kind.error());
    const Kilograms mass{request.fruitKgPerLitre * request.litres.l};
    const auto effect = finishing::withFruit({*kind, mass, request.litres, beer.alcohol(), warmth, Litres{0}});
    if (!effect)
        return fail(effect.error());
    answer.fruit = *effect;
    return {};
}

/// In the order a brewer would find out.
Result<void> work(const PackingRequest& request, const CurrentVessel& vessel, const Composition& beer, Cellar& cellar,
                  PackingAnswer& answer) {
    const Celsius warmth = warmthOn(vessel.record, vessel.today, cellar, vessel.today);
    const auto residual = residualCo2(request.residual.value_or(finishing::ResidualKnown(finishing::UnderAir{warmth})));
    if (!residual)
        return fail(residual.error());
    answer.residual = *residual;
    const auto priming = primingOf(request, answer);
    if (!priming)
        return fail(priming.error());
    answer.priming = *priming;
    if (auto ok = addFruit(request, answer, beer, warmth); !ok)
        return ok;
    finishing::GuardQuestion question{beerOf(request, vessel, cellar.shared()), request.package, priming->most,
                                      request.override};
    question.beer.residual = residual->value;
    if (answer.fruit)
        question.beer.fruitSugar = answer.fruit->sugar;
    if (!request.make.empty()) {
        auto make = finishing::bottleMake(request.make);
        if (!make)
            return fail(make.error());
        question.package.make = *make;
    }
    auto verdict = guard(question);
    if (!verdict)
        return fail(verdict.error());
    answer.verdict = std::move(*verdict);
    return {};
}

} // namespace

Result<PackingAnswer> Desk::pack(const PackingRequest& request) const {
    const auto found = inside_->current(request.vessel);
    if (!found)
        return fail(found.error());
    const CurrentVessel& vessel = **found;
    const auto sugar = finishing::primingSugar(request.sugar);
    for (auto ok : {isThere(request, vessel), asksOneThing(request), tellsItsCo2(request, vessel.record.facts),
                    sugar.map([](const auto&) {})})
        if (!ok)
            return fail(ok.error());
    const auto known = knownOf(vessel, *inside_->cellar);
    if (!known)
        return fail(known.error());
    const Composition& beer = known->state.beer;
    PackingAnswer answer;
    answer.vessel = vessel.record.facts.name;
    answer.litres = request.litres;
    answer.sugar = *sugar;
    answer.size = request.package.size;
    answer.warmest = request.package.warmest;
    if (auto done = work(request, vessel, beer, *inside_->cellar, answer); !done)
        return fail(done.error());
    if (request.keg)
        answer.keg = finishing::setPoint(answer.wanted, *request.keg);
    const estimate::Estimates estimates = estimatesFrom(*known);
    answer.words = packingWords(answer, request);
    answer.cautions =
        finishing::packingCautions({estimates.ph.value_or(ph(beer)), estimates.ta.value_or(titratableAcidity(beer)),
                                    beer.alcohol(), answer.priming.gives.vol > 0, answer.fruit.has_value()});
    return answer;
}

} // namespace staveline::desk
