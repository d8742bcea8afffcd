// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/packing.h"

#include "desk/beer_past.h"
#include "desk/entry_checks.h"
#include "desk/estimates.h"
#include "desk/inside.h"
#include "desk/packing_words.h"
#include "desk/rooms.h"
#include "finishing/cautions.h"
#include "quantity/acid_base.h"
#include "quantity/parse.h"
#include "quantity/text.h"
#include "tasting/verdict.h"

#include <algorithm>

namespace staveline::desk {

using finishing::BeerKnown;
using finishing::Priming;
using tasting::faultWords;

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

Result<void> keepsBeer(const std::optional<Celsius>& keg) {
    const Range beer{constants::finishing::coldest, constants::finishing::hottest};
    if (!keg || beer.holds(keg->c))
        return {};
    return fail(outOfRange(show(shortest(keg->c)), keg->c, beer, "/keg_c"));
}

/// A keg or a tank may have stood under pressure; by its warmth alone its CO2 cannot be told.
Result<void> tellsItsCo2(const PackingRequest& request, const facts::VesselFact& vessel) {
    if (request.residual || (vessel.shape != facts::VesselForm::keg && vessel.shape != facts::VesselForm::tank))
        return {};
    return badInput("/residual_vol", say("finishing.pack.under_head").with("vessel", vessel.name),
                    say("finishing.pack.under_head.remedy"));
}

BeerKnown beerOf(const PackingRequest& request, const CurrentVessel& vessel, Cellar& cellar) {
    BeerKnown beer;
    beer.today = vessel.today;
    for (const auto& [on, values] : measuredUpTo(vessel.record, vessel.today))
        if (values->gravity)
            beer.readings.push_back({on, *values->gravity});
    if (request.gravity)
        beer.readings.push_back({vessel.today, *request.gravity});
    if (request.forced)
        beer.forced = {request.forcedOn.value_or(vessel.today), *request.forced};
    beer.lastRefill = lastFilled(vessel, vessel.today);
    beer.lastMove = lastMoved(vessel.record, vessel.today);
    beer.takenOver = takenOver(vessel.record);
    Ancestry ancestry(cellar);
    ancestry.add(vessel.record, vessel.today);
    ancestry.add(vessel.inUse.recipe, vessel.today);
    beer.diastatic = ancestry.diastatic;
    beer.simpleSugar = ancestry.mostSugar;
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
    finishing::GuardQuestion question{beerOf(request, vessel, cellar), request.package, priming->most,
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
    answer.warmest = verdict->warmest;
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
    for (auto ok :
         {inUseOn(vessel.record.facts, vessel.today, "/vessel"), isThere(request, vessel), asksOneThing(request),
          keepsBeer(request.keg), tellsItsCo2(request, vessel.record.facts), sugar.map([](const auto&) {})})
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
    if (auto done = work(request, vessel, beer, *inside_->cellar, answer); !done)
        return fail(done.error());
    if (request.keg)
        answer.keg = finishing::setPoint(answer.wanted, *request.keg);
    const estimate::Estimates estimates = estimatesFrom(*known);
    answer.words = packingWords(answer, request);
    answer.cautions =
        finishing::packingCautions({estimates.ph.value_or(ph(beer)), estimates.ta.value_or(titratableAcidity(beer)),
                                    beer.alcohol(), answer.priming.gives.vol > 0, answer.fruit.has_value()});
    if (vessel.fault && vessel.fault->rule)
        answer.cautions.insert(answer.cautions.begin(), faultWords(*vessel.fault->rule, vessel.fault->until));
    return answer;
}

} // namespace staveline::desk
