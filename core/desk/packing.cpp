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
#include "finishing/yeast.h"
#include "quantity/acid_base.h"
#include "quantity/parse.h"
#include "quantity/text.h"
#include "tasting/verdict.h"

#include <algorithm>

namespace staveline::desk {

using finishing::BeerKnown;
using finishing::Priming;
using finishing::PrimingSugar;
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

Result<void> datesATest(const PackingRequest& request) {
    if (request.forced || !request.forcedOn)
        return {};
    return badInput("/forced_on", say("finishing.pack.no_test").with("on", *request.forcedOn),
                    say("finishing.pack.no_test.remedy"));
}

Result<void> isAlcohol(const std::optional<PercentVol>& measured) {
    const Range beer{0, constants::finishing::strongest};
    if (!measured || beer.holds(measured->pct))
        return {};
    return fail(outOfRange(show(shortest(measured->pct)), measured->pct, beer, "/alcohol"));
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
    beer.lastExchange = lastExchanged(vessel, vessel.today);
    if (const Litres held = vessel.now().volume; held.l > 0)
        beer.freshSugar = GramsPerLitre{sugarFromLots(vessel.record, cellar, vessel.today).g / held.l};
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
    if (!request.forced)
        return;
    if (beer.forced)
        beer.warm.push_back(*beer.forced);
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
    beer.generations = vessel.now().generations;
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
    const auto passed = beers.through(lot);
    for (const auto& [id, reading] : beers.facts().readings)
        if (passed.contains(reading.lot) && !reading.keptWarm && reading.on <= beers.today() &&
            reading.measured.temperature)
            take(*reading.measured.temperature);
    beer.warmth = coldest.value_or(beer.warmth);
}

/// What its draws were made of, newest first; what was added has none.
std::vector<vessel::Generation> generationsOf(const std::string& lot, LotBeers& beers) {
    const finishing::LotState& state = beers.replay().lots.find(lot)->second;
    std::vector<vessel::Generation> all;
    for (const finishing::LotPart& part : state.parts)
        if (const Drawn* drawn = beers.drawn(part.entry))
            for (vessel::Generation generation : drawn->then.generations) {
                generation.share.of1 *= part.litres / state.volume();
                all.push_back(generation);
            }
    std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.on > b.on; });
    return all;
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
    beer.generations = generationsOf(name, *beers);
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
    return finishing::prime({request.litres, answer.wanted, answer.residual.value, answer.sugar, request.extract,
                             request.package.size, answer.lost});
}

Result<void> addFruit(const PackingRequest& request, PackingAnswer& answer, const PackedBeer& beer) {
    if (request.fruit.empty())
        return {};
    const auto kind = finishing::fruit(request.fruit);
    if (!kind)
        return fail(kind.error());
    const Kilograms mass{request.fruitKgPerLitre * request.litres.l};
    const auto effect =
        finishing::withFruit({*kind, mass, request.litres, beer.alcohol, beer.warmth, request.fruitVessel});
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
    if (!request.make.empty()) {
        auto make = finishing::bottleMake(request.make);
        if (!make)
            return fail(make.error());
        answer.package.make = *make;
    }
    finishing::GuardQuestion question{beer.known, answer.package, priming->most, request.override};
    addTold(request, question.beer);
    question.beer.residual = residual->value;
    if (answer.fruit)
        question.beer.fruitSugar += answer.fruit->sugar;
    auto verdict = guard(question);
    if (!verdict)
        return fail(verdict.error());
    answer.verdict = std::move(*verdict);
    return {};
}

BottledAlcohol alcoholOf(const PackingRequest& request, const PackingAnswer& answer, const PackedBeer& beer) {
    namespace error = constants::finishing;
    const PercentVol before = request.alcohol.value_or(answer.fruit ? answer.fruit->alcohol : beer.alcohol);
    const double sd = request.alcohol ? error::measuredAlcoholSd : error::estimatedAlcoholSd;
    return {alcoholWith(answer.priming, request.litres, before), {sd * tasting::z80}, request.alcohol.has_value()};
}

/// What the request says and the beer is, before anything is worked out.
PackingAnswer begun(const PackingRequest& request, const PackedBeer& beer, const PrimingSugar& sugar) {
    PackingAnswer answer;
    answer.vessel = beer.name;
    answer.name = request.name.empty() ? beer.name : request.name;
    answer.litres = request.litres;
    answer.sugar = sugar;
    answer.extract = request.extract;
    answer.package = request.package;
    answer.lost = request.lost.value_or(finishing::usualLoss(request.litres));
    answer.kegAt = request.keg;
    answer.generations = beer.generations;
    return answer;
}

} // namespace

Result<PackedBeer> packedBeer(const PackingRequest& request, Cellar& cellar, Day today) {
    if (request.lot.empty() == request.vessel.empty())
        return badInput("/vessel", say("finishing.pack.which_beer"), say("finishing.pack.which_beer.remedy"));
    return request.lot.empty() ? beerOfVessel(request.vessel, cellar, today) : beerOfLot(request.lot, cellar, today);
}

Result<PackingAnswer> packed(const PackingRequest& request, const PackedBeer& beer) {
    const auto sugar = finishing::primingSugar(request.sugar);
    for (auto ok : {asksOneThing(request), datesATest(request), isAlcohol(request.alcohol), keepsBeer(request.keg),
                    tellsItsCo2(request, beer), sugar.map([](const auto&) {})})
        if (!ok)
            return fail(ok.error());
    PackingAnswer answer = begun(request, beer, *sugar);
    if (auto done = work(request, beer, answer); !done)
        return fail(done.error());
    if (request.keg)
        answer.keg = finishing::setPoint(answer.wanted, *request.keg);
    const finishing::PackedBeer told{beer.ph,
                                     beer.ta,
                                     request.alcohol.value_or(beer.alcohol),
                                     answer.priming.gives.vol > 0,
                                     answer.fruit.has_value() || beer.known.freshSugar.gPerL > 0,
                                     request.keg.has_value(),
                                     answer.sugar.isLiquid()};
    answer.alcohol = alcoholOf(request, answer, beer);
    answer.yeast = finishing::yeastAdvice(told, request.litres);
    answer.words = packingWords(answer);
    answer.cautions = finishing::packingCautions(told);
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
