// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/packing.h"

#include "desk/beer_past.h"
#include "desk/entry_checks.h"
#include "desk/estimates.h"
#include "desk/inside.h"
#include "desk/lot_beer.h"
#include "desk/packed_beer.h"
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

Result<void> isThere(const PackingRequest& request, const PackedBeer& beer) {
    if (request.litres.l > 0 && request.litres <= beer.held)
        return {};
    return badInput(
        "/litres",
        say("finishing.pack.holds").with("vessel", beer.name).with("wanted", request.litres).with("held", beer.held),
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

bool holdsPressure(const facts::VesselFact& vessel) {
    return vessel.shape == facts::VesselForm::keg || vessel.shape == facts::VesselForm::tank;
}

/// A keg or a tank may have stood under pressure; by its warmth alone its CO2 cannot be told.
Result<void> tellsItsCo2(const PackingRequest& request, const PackedBeer& beer) {
    if (request.residual || !beer.underPressure)
        return {};
    return badInput("/residual_vol", say("finishing.pack.under_head").with("vessel", beer.name),
                    say("finishing.pack.under_head.remedy"));
}

BeerKnown knownOfVessel(const CurrentVessel& vessel, Cellar& cellar) {
    BeerKnown beer;
    beer.today = vessel.today;
    for (const auto& [on, values] : measuredUpTo(vessel.record, vessel.today))
        if (values->gravity)
            beer.readings.push_back({on, *values->gravity});
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

/// With what is told on the day of packing.
void addTold(const PackingRequest& request, BeerKnown& beer) {
    if (request.gravity)
        beer.readings.push_back({beer.today, *request.gravity});
    if (request.forced)
        beer.forced = {request.forcedOn.value_or(beer.today), *request.forced};
}

Result<PackedBeer> beerOfVessel(const facts::VesselName& name, Cellar& cellar, Day today) {
    const auto found = currentVessel(cellar, name, today);
    if (!found)
        return fail(found.error());
    const CurrentVessel& vessel = **found;
    if (auto ok = inUseOn(vessel.record.facts, today, "/vessel"); !ok)
        return fail(ok.error());
    const auto known = knownOf(vessel, cellar);
    if (!known)
        return fail(known.error());
    const estimate::Estimates estimates = estimatesFrom(*known);
    PackedBeer beer;
    beer.name = vessel.record.facts.name;
    beer.held = vessel.now().volume;
    beer.alcohol = known->state.beer.alcohol();
    beer.ph = estimates.ph.value_or(ph(known->state.beer));
    beer.ta = estimates.ta.value_or(titratableAcidity(known->state.beer));
    beer.warmth = warmthOn(vessel.record, today, cellar, today);
    beer.underPressure = holdsPressure(vessel.record.facts);
    beer.known = knownOfVessel(vessel, cellar);
    if (vessel.fault && vessel.fault->rule)
        beer.caution = faultWords(*vessel.fault->rule, vessel.fault->until);
    return beer;
}

/// It may hold as much CO2 as it could when it was drawn, or when it was last seen at a temperature.
void addWarmth(PackedBeer& beer, const std::string& lot, LotBeers& beers, Cellar& cellar) {
    std::optional<Celsius> coldest;
    const auto take = [&](Celsius warmth) { coldest = std::min(coldest.value_or(warmth), warmth); };
    for (const finishing::LotPart& part : beers.replay().lots.find(lot)->second.parts)
        if (const Drawn* drawn = beers.drawn(part.entry)) {
            const VesselRecord& record = drawn->vessel->record;
            take(warmthOn(record, drawn->fact->on, cellar, beers.today()));
            beer.underPressure = beer.underPressure || holdsPressure(record.facts);
        }
    for (const auto& [id, reading] : beers.facts().readings)
        if (reading.lot == lot && !reading.keptWarm && reading.on <= beers.today() && reading.measured.temperature)
            take(*reading.measured.temperature);
    beer.warmth = coldest.value_or(beer.warmth);
}

Result<PackedBeer> beerOfLot(const std::string& name, Cellar& cellar, Day today) {
    auto beers = LotBeers::on(cellar, today);
    if (!beers)
        return fail(beers.error());
    const auto source = beers->lot(name);
    if (!source)
        return fail(source.error());
    PackedBeer beer;
    beer.name = name;
    beer.held = source->atHand;
    beer.alcohol = source->beer.alcohol();
    beer.ph = ph(source->beer);
    beer.ta = titratableAcidity(source->beer);
    beer.known = beers->known(name);
    addWarmth(beer, name, *beers, cellar);
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

Result<void> addFruit(const PackingRequest& request, PackingAnswer& answer, const PackedBeer& beer) {
    if (request.fruit.empty())
        return {};
    const auto kind = finishing::fruit(request.fruit);
    if (!kind)
        return fail(kind.error());
    const Kilograms mass{request.fruitKgPerLitre * request.litres.l};
    const auto effect = finishing::withFruit({*kind, mass, request.litres, beer.alcohol, beer.warmth, Litres{0}});
    if (!effect)
        return fail(effect.error());
    answer.fruit = *effect;
    return {};
}

/// In the order a brewer would find out.
Result<void> work(const PackingRequest& request, const PackedBeer& beer, PackingAnswer& answer) {
    const auto residual =
        residualCo2(request.residual.value_or(finishing::ResidualKnown(finishing::UnderAir{beer.warmth})));
    if (!residual)
        return fail(residual.error());
    answer.residual = *residual;
    const auto priming = primingOf(request, answer);
    if (!priming)
        return fail(priming.error());
    answer.priming = *priming;
    if (auto ok = addFruit(request, answer, beer); !ok)
        return ok;
    finishing::GuardQuestion question{beer.known, request.package, priming->most, request.override};
    addTold(request, question.beer);
    question.beer.residual = residual->value;
    if (answer.fruit)
        question.beer.fruitSugar += answer.fruit->sugar;
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

Result<PackedBeer> packedBeer(const PackingRequest& request, Cellar& cellar, Day today) {
    if (request.lot.empty() == request.vessel.empty())
        return badInput("/vessel", say("finishing.pack.which_beer"), say("finishing.pack.which_beer.remedy"));
    return request.lot.empty() ? beerOfVessel(request.vessel, cellar, today) : beerOfLot(request.lot, cellar, today);
}

Result<PackingAnswer> packed(const PackingRequest& request, const PackedBeer& beer) {
    const auto sugar = finishing::primingSugar(request.sugar);
    for (auto ok :
         {asksOneThing(request), keepsBeer(request.keg), tellsItsCo2(request, beer), sugar.map([](const auto&) {})})
        if (!ok)
            return fail(ok.error());
    PackingAnswer answer;
    answer.vessel = beer.name;
    answer.litres = request.litres;
    answer.sugar = *sugar;
    answer.size = request.package.size;
    if (auto done = work(request, beer, answer); !done)
        return fail(done.error());
    if (request.keg)
        answer.keg = finishing::setPoint(answer.wanted, *request.keg);
    answer.words = packingWords(answer, request);
    const bool fruity = answer.fruit.has_value() || beer.known.fruitSugar.gPerL > 0;
    answer.cautions =
        finishing::packingCautions({beer.ph, beer.ta, beer.alcohol, answer.priming.gives.vol > 0, fruity});
    if (beer.caution)
        answer.cautions.insert(answer.cautions.begin(), *beer.caution);
    return answer;
}

Result<PackingAnswer> Desk::pack(const PackingRequest& request) const {
    const auto beer = packedBeer(request, *inside_->cellar, today());
    if (!beer)
        return fail(beer.error());
    if (auto ok = isThere(request, *beer); !ok)
        return fail(ok.error());
    return packed(request, *beer);
}

} // namespace staveline::desk
