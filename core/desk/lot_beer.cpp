// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/lot_beer.h"

#include "desk/beer_past.h"
#include "desk/blend_source.h"
#include "quantity/parse.h"
#include "quantity/text.h"

#include <algorithm>
#include <cmath>

namespace staveline::desk {

using facts::DrawOffFact;
using facts::LotAdditionFact;
using finishing::BeerKnown;
using finishing::BlendSource;
using finishing::LotPart;
using finishing::LotState;
using finishing::Trait;

namespace {

bool fillsOn(const vessel::LedgerEntry& entry, Day on) {
    return entry.on == on && !entry.outOfThisVessel &&
           (entry.kind == vessel::EntryKind::refill || entry.kind == vessel::EntryKind::topUp);
}

/// The last day on which the vessel held what was drawn and nothing else: the day before, where it was filled again.
Day seenOn(const Drawn& drawn) {
    const auto& entries = drawn.vessel->entries;
    const Day on = drawn.fact->on;
    const bool filled =
        std::any_of(entries.begin(), entries.end(), [&](const auto& entry) { return fillsOn(entry, on); });
    return filled && entries.front().on < on ? on - std::chrono::days{1} : on;
}

/// Nobody tasted or measured what it does to the blend.
BlendSource broughtSource(const LotAdditionFact& fact) {
    BlendSource source;
    source.name = fact.ingredient;
    source.beer = broughtBy(fact).beer;
    source.sd[Trait::ta] = constants::finishing::estimatedTaSd;
    source.sd[Trait::ph] = constants::finishing::estimatedPhSd;
    source.sd[Trait::alcohol] = constants::finishing::estimatedAlcoholSd;
    for (const Trait trait : {Trait::acidity, Trait::funk, Trait::body})
        source.sd[trait] = constants::finishing::untastedSd;
    return source;
}

BlendSource mixed(std::vector<BlendSource> sources, const std::vector<double>& shares) {
    BlendSource mix;
    mix.beer = finishing::blended(sources, shares);
    for (const Trait trait : finishing::allTraits) {
        double variance = 0;
        mix.measured[trait] = true;
        for (std::size_t i = 0; i < sources.size(); ++i) {
            variance += std::pow(shares[i] * sources[i].sd[trait], 2);
            mix.measured[trait] = mix.measured[trait] && sources[i].measured[trait];
        }
        mix.sd[trait] = std::sqrt(variance);
    }
    for (const Dimension d : allDimensions)
        for (std::size_t i = 0; i < sources.size(); ++i)
            mix.offset[d] += shares[i] * sources[i].offset[d];
    return mix;
}

} // namespace

LotBeers::LotBeers(Cellar& cellar, const LotFacts& facts, Day today)
    : cellar_(cellar), facts_(&facts), today_(today), replay_(finishing::replayLots(lotEntries(facts), today)) {}

Result<LotBeers> LotBeers::on(Cellar& cellar, Day today) {
    const auto facts = cellar.lots();
    if (!facts)
        return fail(facts.error());
    return LotBeers(cellar, **facts, today);
}

const Drawn* LotBeers::drawn(std::int64_t entry) {
    if (const auto known = drawn_.find(entry); known != drawn_.end())
        return &known->second;
    Drawn drawn{factOfEntry(facts_->draws, entry), {}, {}, {}};
    if (!drawn.fact)
        return nullptr;
    auto& vessel = vessels_[drawn.fact->vessel];
    if (!vessel)
        vessel = currentVessel(cellar_, drawn.fact->vessel, today_).value_or(nullptr);
    if (!vessel)
        return nullptr;
    drawn.vessel = vessel;
    drawn.entry = entryId(vessel::EntryKind::drawOff, rowOfLotEntry(entry).id);
    const auto& entries = drawn.vessel->entries;
    const auto at =
        std::find_if(entries.begin(), entries.end(), [&](const auto& each) { return each.id == drawn.entry; });
    if (at == entries.end())
        return nullptr;
    drawn.then = drawn.vessel->replayed.after[static_cast<std::size_t>(at - entries.begin())];
    return &drawn_.emplace(entry, std::move(drawn)).first->second;
}

const LotAdditionFact* LotBeers::added(std::int64_t entry) const {
    return factOfEntry(facts_->additions, entry);
}

Days LotBeers::meanAge(const LotState& state) {
    double litres = 0, days = 0;
    for (const LotPart& part : state.parts)
        if (const Drawn* from = drawn(part.entry)) {
            litres += part.litres.l;
            days += part.litres.l * (from->then.meanAge.d + daysBetween(from->fact->on, today_));
        }
    return Days{litres > 0 ? days / litres : 0};
}

Result<BlendSource> LotBeers::beerDrawn(const Drawn& drawn) {
    const auto then = currentVessel(cellar_, drawn.fact->vessel, seenOn(drawn));
    if (!then)
        return fail(then.error());
    const auto known = knownOf(**then, cellar_);
    if (!known)
        return fail(known.error());
    BlendSource source = desk::sourceOf(**then, *known);
    putRight(source, drawn.fact->measured);
    return source;
}

Result<BlendSource> LotBeers::partOf(std::int64_t entry) {
    if (const auto known = parts_.find(entry); known != parts_.end())
        return known->second;
    const Drawn* from = drawn(entry);
    const LotAdditionFact* addition = added(entry);
    if (!from && !addition)
        return fail({FaultKind::notPossible, "/lot", say("desk.lot.unread"), say("desk.lot.unread.remedy")});
    auto source = from ? beerDrawn(*from) : Result<BlendSource>(broughtSource(*addition));
    if (source)
        parts_.emplace(entry, *source);
    return source;
}

Result<BlendSource> LotBeers::beerOf(const LotState& state) {
    std::vector<BlendSource> sources;
    std::vector<double> shares;
    const Litres all = state.volume();
    for (const LotPart& part : state.parts) {
        auto source = partOf(part.entry);
        if (!source)
            return source;
        sources.push_back(*std::move(source));
        shares.push_back(part.litres / all);
    }
    BlendSource mix = mixed(std::move(sources), shares);
    mix.atHand = all;
    return mix;
}

Result<BlendSource> LotBeers::lot(const std::string& name) {
    const auto at = replay_.lots.find(name);
    if (at == replay_.lots.end() || at->second.parts.empty()) {
        const bool known = at != replay_.lots.end();
        const auto names = facts_->names();
        return badInput("/lot",
                        known ? say("desk.lot.empty").with("lot", name).with("on", today_)
                              : say("desk.lot.unknown").with("lot", excerpt(name)),
                        known           ? say("desk.lot.empty.remedy")
                        : names.empty() ? say("desk.lot.unknown.none")
                                        : facts::offerName(name, names));
    }
    auto source = beerOf(at->second);
    if (!source)
        return source;
    source->name = name;
    std::multimap<Day, const facts::Measured*> readings; // by day, however they were recorded
    for (const auto& [id, reading] : facts_->readings)
        if (reading.lot == name && !reading.keptWarm && reading.on >= *at->second.stirred && reading.on <= today_)
            readings.emplace(reading.on, &reading.measured);
    for (const auto& [on, measured] : readings)
        putRight(*source, *measured);
    return source;
}

std::set<std::string> LotBeers::through(const std::string& name) const {
    std::set<std::string> all{name};
    for (bool grown = true; grown;) {
        grown = false;
        for (const auto& [id, move] : facts_->moves)
            if (all.contains(move.to) && move.on <= today_)
                grown = all.insert(move.lot).second || grown;
    }
    return all;
}

void LotBeers::addPast(const Drawn& drawn, BeerKnown& beer, Ancestry& ancestry) const {
    const VesselRecord& record = drawn.vessel->record;
    const Day on = drawn.fact->on;
    for (const auto& [day, values] : measuredUpTo(record, on))
        if (values->gravity)
            beer.readings.push_back({day, *values->gravity});
    beer.lastRefill = std::max(beer.lastRefill, lastFilled(*drawn.vessel, on, drawn.entry));
    beer.lastExchange = std::max(beer.lastExchange, lastExchanged(*drawn.vessel, on, drawn.entry));
    beer.takenOver = std::max(beer.takenOver, takenOver(record));
    ancestry.add(record, on);
    ancestry.add(drawn.vessel->inUse.recipe, on);
}

namespace {

/// The latest of this very lot proves; whatever else ended lower speaks against it.
void addWarmSample(BeerKnown& beer, const finishing::GravityReading& sample, bool own) {
    if (!own || (beer.forced && beer.forced->on > sample.on)) {
        beer.warm.push_back(sample);
        return;
    }
    if (beer.forced)
        beer.warm.push_back(*beer.forced);
    beer.forced = sample;
}

} // namespace

BeerKnown LotBeers::known(const std::string& name) {
    BeerKnown beer;
    beer.today = today_;
    const auto lot = replay_.lots.find(name);
    if (lot == replay_.lots.end())
        return beer;
    const LotState& state = lot->second;
    Ancestry ancestry(cellar_);
    double fresh = 0; // g of sugar
    for (const LotPart& part : state.parts) {
        if (const Drawn* from = drawn(part.entry)) {
            addPast(*from, beer, ancestry);
            const Litres held = from->then.volume + from->fact->volume;
            fresh += sugarFromLots(from->vessel->record, *facts_, replay_, from->fact->on).g * (part.litres / held);
        }
        if (const LotAdditionFact* addition = added(part.entry))
            fresh += sugarOf(*addition, part.litres).g;
    }
    beer.lastMove = state.stirred;
    beer.diastatic = ancestry.diastatic;
    beer.simpleSugar = ancestry.mostSugar;
    const auto passed = through(name);
    for (const auto& [id, addition] : facts_->additions)
        if (passed.contains(addition.lot) && addition.on <= today_ && feeds(addition.what))
            beer.lastRefill = std::max(beer.lastRefill, std::optional(addition.on));
    const auto isOfIt = [&](const facts::LotReadingFact& reading) { // of others before it was parted from them
        return reading.lot == name ? reading.on <= today_ : passed.contains(reading.lot) && reading.on <= state.stirred;
    };
    for (const auto& [id, reading] : facts_->readings)
        if (reading.measured.gravity && !reading.keptWarm && isOfIt(reading))
            beer.readings.push_back({reading.on, *reading.measured.gravity});
        else if (reading.measured.gravity && reading.keptWarm && passed.contains(reading.lot) && reading.on <= today_)
            addWarmSample(beer, {reading.on, *reading.measured.gravity}, reading.lot == name);
    std::stable_sort(beer.readings.begin(), beer.readings.end(),
                     [](const auto& a, const auto& b) { return a.on < b.on; });
    if (const Litres held = state.volume(); held.l > 0)
        beer.freshSugar = GramsPerLitre{fresh / held.l};
    return beer;
}

} // namespace staveline::desk
