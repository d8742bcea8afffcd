// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/packing.h"

#include "desk/entry_checks.h"
#include "desk/estimates.h"
#include "desk/inside.h"
#include "desk/packing_words.h"
#include "desk/rooms.h"
#include "finishing/yeast.h"
#include "quantity/acid_base.h"
#include "quantity/parse.h"
#include "quantity/text.h"
#include "tasting/verdict.h"

#include <algorithm>
#include <map>

namespace staveline::desk {

using facts::CultureFact;
using facts::EventFact;
using finishing::BeerKnown;
using finishing::Priming;
using finishing::PrimingSugar;
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

/// A keg or a tank may have stood under pressure; by its warmth alone its CO2 cannot be told.
Result<void> tellsItsCo2(const PackingRequest& request, const facts::VesselFact& vessel) {
    if (request.residual || (vessel.shape != facts::VesselForm::keg && vessel.shape != facts::VesselForm::tank))
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

/// As young as it was taken over at most; with an age nobody told, of that day.
std::optional<Day> takenOver(const VesselRecord& record) {
    const auto& openings = record.of<facts::OpeningFact>();
    if (openings.empty())
        return {};
    const facts::OpeningFact& opening = openings.front().fact;
    return opening.on - std::chrono::days{static_cast<int>(opening.ageYears.value_or(0) * daysPerYear)};
}

/// The last time the beer was woken up.
std::optional<Day> lastMoved(const VesselRecord& record, Day today) {
    std::optional<Day> last;
    for (const auto& [id, event] : record.of<EventFact>())
        if (event.on <= today && wakesBeer(event.what))
            last = std::max(last, std::optional(event.on));
    return last;
}

/// What ever went into the beer, also by way of other vessels: diastatic yeast that came in stays in.
class Ancestry {
public:
    explicit Ancestry(Cellar& cellar) : cellar_(cellar) {}
    bool diastatic = false;
    Share mostSugar{0};

    void add(const VesselRecord& record, Day until) {
        const auto [seen, first] = upTo_.emplace(record.id, until);
        if (!first && seen->second >= until)
            return;
        seen->second = until;
        for (const auto& [id, culture] : record.of<CultureFact>())
            diastatic = diastatic || (culture.on <= until && culture.diastatic);
        addFillings(record.of<facts::RefillFact>(), until);
        addFillings(record.of<facts::TopUpFact>(), until);
    }
    /// With its ingredients as they were on that day.
    void add(const brewing::Recipe& recipe, Day on) {
        const auto yeast = cellar_.shared().pantryOn(on).yeast(recipe.yeast);
        diastatic = diastatic || (yeast && yeast->diastatic());
        mostSugar = std::max(mostSugar, recipe.sugarShare);
    }

private:
    void addFillings(const auto& list, Day until) {
        for (const auto& [id, filling] : list) {
            if (filling.on > until)
                continue;
            if (const facts::BrewFact* brew = cellar_.shared().brew(filling.brew))
                add(brew->recipe, brew->on);
            if (filling.from.empty())
                continue;
            if (const auto source = cellar_.vessel(filling.from))
                add(**source, filling.on);
        }
    }

    Cellar& cellar_;
    std::map<book::RowId, Day> upTo_;
};

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
    beer.lastRefill = lastFilled(vessel);
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
    return finishing::prime({request.litres, answer.wanted, answer.residual.value, answer.sugar, request.extract,
                             request.package.size, answer.lost});
}

Result<void> addFruit(const PackingRequest& request, PackingAnswer& answer, const Composition& beer, Celsius warmth) {
    if (request.fruit.empty())
        return {};
    const auto kind = finishing::fruit(request.fruit);
    if (!kind)
        return fail(kind.error());
    const Kilograms mass{request.fruitKgPerLitre * request.litres.l};
    const auto effect =
        finishing::withFruit({*kind, mass, request.litres, beer.alcohol(), warmth, request.fruitVessel});
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
    if (!request.make.empty()) {
        auto make = finishing::bottleMake(request.make);
        if (!make)
            return fail(make.error());
        answer.package.make = *make;
    }
    finishing::GuardQuestion question{beerOf(request, vessel, cellar), answer.package, priming->most, request.override};
    question.beer.residual = residual->value;
    if (answer.fruit)
        question.beer.fruitSugar = answer.fruit->sugar;
    auto verdict = guard(question);
    if (!verdict)
        return fail(verdict.error());
    answer.verdict = std::move(*verdict);
    return {};
}

BottledAlcohol alcoholOf(const PackingRequest& request, const PackingAnswer& answer, const Composition& beer) {
    namespace error = constants::finishing;
    const PercentVol before = request.alcohol.value_or(answer.fruit ? answer.fruit->alcohol : beer.alcohol());
    const double sd = request.alcohol ? error::measuredAlcoholSd : error::estimatedAlcoholSd;
    return {alcoholWith(answer.priming, request.litres, before), {sd * tasting::z80}, request.alcohol.has_value()};
}

/// What the request says and the vessel knows, before anything is worked out.
PackingAnswer begun(const PackingRequest& request, const CurrentVessel& vessel, const PrimingSugar& sugar) {
    PackingAnswer answer;
    answer.vessel = vessel.record.facts.name;
    answer.name = request.name.empty() ? answer.vessel : request.name;
    answer.litres = request.litres;
    answer.sugar = sugar;
    answer.extract = request.extract;
    answer.package = request.package;
    answer.lost = request.lost.value_or(finishing::usualLoss(request.litres));
    answer.kegAt = request.keg;
    answer.generations = vessel.now().generations;
    return answer;
}

} // namespace

Result<PackingAnswer> Desk::pack(const PackingRequest& request) const {
    const auto found = inside_->current(request.vessel);
    if (!found)
        return fail(found.error());
    const CurrentVessel& vessel = **found;
    const auto sugar = finishing::primingSugar(request.sugar);
    for (auto ok : {inUseOn(vessel.record.facts, vessel.today, "/vessel"), isThere(request, vessel),
                    asksOneThing(request), datesATest(request), isAlcohol(request.alcohol), keepsBeer(request.keg),
                    tellsItsCo2(request, vessel.record.facts), sugar.map([](const auto&) {})})
        if (!ok)
            return fail(ok.error());
    const auto known = knownOf(vessel, *inside_->cellar);
    if (!known)
        return fail(known.error());
    const Composition& beer = known->state.beer;
    PackingAnswer answer = begun(request, vessel, *sugar);
    if (auto done = work(request, vessel, beer, *inside_->cellar, answer); !done)
        return fail(done.error());
    if (request.keg)
        answer.keg = finishing::setPoint(answer.wanted, *request.keg);
    const estimate::Estimates estimates = estimatesFrom(*known);
    const finishing::PackedBeer packed{estimates.ph.value_or(ph(beer)),
                                       estimates.ta.value_or(titratableAcidity(beer)),
                                       request.alcohol.value_or(beer.alcohol()),
                                       answer.priming.gives.vol > 0,
                                       answer.fruit.has_value(),
                                       request.keg.has_value(),
                                       answer.sugar.isLiquid()};
    answer.alcohol = alcoholOf(request, answer, beer);
    answer.yeast = finishing::yeastAdvice(packed, request.litres);
    answer.words = packingWords(answer);
    answer.cautions = finishing::packingCautions(packed);
    if (vessel.fault && vessel.fault->rule)
        answer.cautions.insert(answer.cautions.begin(), faultWords(*vessel.fault->rule, vessel.fault->until));
    return answer;
}

} // namespace staveline::desk
