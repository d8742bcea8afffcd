// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/chemistry.h"

#include "brewing/as_brewed.h"
#include "quantity/density.h"
#include "vessel/materials.h"

#include <algorithm>

namespace staveline::desk {

using facts::Brettanomyces;
using facts::CultureFact;
using facts::OpeningFact;
using facts::VesselName;
using forward::BlendEvent;
using forward::BrettAtOpening;
using vessel::EntryKind;

namespace {

template <class F>
void transferSources(const Facts<F>& facts, EntryKind kind, std::map<std::int64_t, VesselName>& sources) {
    for (const auto& stored : facts)
        if (!stored.fact.from.empty())
            sources[entryId(kind, stored.id)] = stored.fact.from;
}

/// Acid readings of what was in the vessel, wherever they were taken: in it, of a sample, of what was drawn.
std::map<std::int64_t, const facts::Measured*> measuredByEntry(const VesselRecord& record) {
    std::map<std::int64_t, const facts::Measured*> measured;
    const auto add = [&](EntryKind kind, const auto& facts) {
        for (const auto& stored : facts)
            if (stored.fact.measured.ta || stored.fact.measured.ph)
                measured[entryId(kind, stored.id)] = &stored.fact.measured;
    };
    add(EntryKind::reading, record.of<facts::ReadingFact>());
    add(EntryKind::sample, record.of<facts::SampleFact>());
    add(EntryKind::drawOff, record.of<facts::DrawOffFact>());
    return measured;
}

/// The culture as known on `day`; what was told of it later only when nothing was before.
const CultureFact* cultureOn(const VesselRecord& record, Day day) {
    const auto& all = record.of<CultureFact>();
    const CultureFact* latest = record.latest<CultureFact>(day);
    return latest || all.empty() ? latest : &all.front().fact;
}

/// Without Brettanomyces by the last word on it, there never was any.
BrettAtOpening brettAt(const VesselRecord& record, Day opened, Day asked) {
    const CultureFact *then = cultureOn(record, opened), *now = cultureOn(record, asked);
    if (!then)
        return BrettAtOpening::established;
    if (now->brettanomyces == Brettanomyces::none || then->brettanomyces == Brettanomyces::none)
        return BrettAtOpening::none;
    return then->brettanomyces == Brettanomyces::young ? BrettAtOpening::young : BrettAtOpening::established;
}

/// Days after the first entry on which a vessel without Brettanomyces was said to have some from then on.
std::vector<Day> brettPitchings(const VesselRecord& record, Day first, Day asked) {
    std::vector<Day> days;
    const auto& all = record.of<CultureFact>();
    for (std::size_t i = 1; i < all.size() && all[i].fact.on <= asked; ++i)
        if (all[i].fact.on > first && all[i - 1].fact.brettanomyces == Brettanomyces::none &&
            all[i].fact.brettanomyces != Brettanomyces::none)
            days.push_back(all[i].fact.on);
    return days;
}

forward::OpeningFacts openingFacts(const OpeningFact& f) {
    forward::OpeningFacts o;
    o.on = f.on;
    o.usualInterval = f.usualInterval.value_or(o.usualInterval);
    o.usualShare = f.usualShare.value_or(o.usualShare);
    o.yearsRunning = f.yearsRunning.value_or(o.yearsRunning);
    o.ta = f.measured.ta;
    o.ph = f.measured.ph;
    if (f.measured.gravity)
        o.gravity = toPlato(*f.measured.gravity);
    o.bitterness = f.measured.bitterness;
    return o;
}

bool fills(const vessel::LedgerEntry& entry) {
    return !entry.outOfThisVessel && (entry.kind == EntryKind::refill || entry.kind == EntryKind::topUp);
}

/// What went in and what was measured, in ledger order; `from`: by event, the vessels that transfers came from.
std::vector<BlendEvent> blendEvents(const VesselRecord& record, const std::vector<vessel::LedgerEntry>& entries,
                                    const vessel::Replay& replayed, Day asked,
                                    std::map<std::size_t, VesselName>& from) {
    std::map<std::int64_t, VesselName> sources;
    transferSources(record.of<facts::RefillFact>(), EntryKind::refill, sources);
    transferSources(record.of<facts::TopUpFact>(), EntryKind::topUp, sources);
    const auto measured = measuredByEntry(record);
    std::vector<BlendEvent> events;
    const auto pitchings = entries.empty() ? std::vector<Day>{} : brettPitchings(record, entries.front().on, asked);
    auto pitching = pitchings.begin();
    const auto pitchUntil = [&](Day day) {
        for (; pitching != pitchings.end() && *pitching <= day; ++pitching)
            events.push_back({.on = *pitching, .brettPitched = true});
    };
    for (std::size_t i = 0; i < entries.size() && entries[i].on <= asked; ++i) {
        const vessel::LedgerEntry& entry = entries[i];
        pitchUntil(entry.on);
        BlendEvent event;
        event.on = entry.on;
        if (fills(entry) && replayed.after[i].volume.l > 0) {
            event.share = Share{std::min(1.0, entry.volume / replayed.after[i].volume)};
            event.brew = entry.brew;
            if (const auto source = sources.find(entry.id); source != sources.end())
                from[events.size()] = source->second;
        } else if (const auto m = measured.find(entry.id); m != measured.end()) {
            event.ta = m->second->ta;
            event.ph = m->second->ph;
        } else {
            continue;
        }
        events.push_back(event);
    }
    pitchUntil(asked);
    return events;
}

} // namespace

forward::Parameters parametersFor(const VesselRecord& record, Day day) {
    forward::Parameters p = forward::builtInParameters();
    p.culture.heldBack =
        record.facts.cultureHeldBack
            .value_or(
                vessel::materialFacts(wordOf(record.facts.material)).value_or(vessel::MaterialFacts{}).cultureHeldBack)
            .of1;
    p.culture.evaporation = shapeOf(record.facts).evaporationPerYear.of1;
    if (const CultureFact* culture = cultureOn(record, day)) {
        if (culture->hopTolerance) {
            p.culture.hopTolerance = culture->hopTolerance->ibu;
            p.culture.mostHopTolerance = std::max(p.culture.mostHopTolerance, p.culture.hopTolerance);
        }
        if (culture->diastatic)
            p.culture.enzymeOpening = constants::culture::diastaticOpening;
    }
    return p;
}

double oxygenOf(const facts::VesselFact& facts) {
    return facts.oxygenPerYear.value_or(
        vessel::materialFacts(wordOf(facts.material)).value_or(vessel::MaterialFacts{}).oxygenPerYear);
}

std::vector<BlendEvent> Chemistry::eventsOf(const VesselRecord& record,
                                            std::map<std::size_t, VesselName>& sources) const {
    if (record.id == asked_.record.id)
        return blendEvents(record, asked_.entries, asked_.replayed, asked_.today, sources);
    const auto entries = ledgerEntries(record, cellar_.shared());
    return blendEvents(record, entries, replayOf(entries, record, asked_.today), asked_.today, sources);
}

Result<culture::VesselState> Chemistry::at(const VesselRecord& record, Day day, bool beforeFillings) {
    auto found = historyOf(record);
    if (!found)
        return fail(found.error());
    History& history = **found;
    estimate::CarriedStates& states = history.states;
    const std::size_t count = states.countUntil(day, beforeFillings);
    if (record.of<OpeningFact>().empty() && count == 0)
        return fail({FaultKind::notPossible, "/vessel", say("desk.not_opened").with("vessel", record.facts.name),
                     say("desk.not_opened.remedy")});
    if (!states.started())
        if (auto started = start(history); !started)
            return fail(started.error());
    const auto from = states.nearest(day, count);
    if (auto added = findBeers(history, from.count, count); !added)
        return fail(added.error());
    return states.carry(from, day, count, beers_);
}

Result<Chemistry::History*> Chemistry::historyOf(const VesselRecord& record) {
    if (const auto known = histories_.find(record.id); known != histories_.end())
        return &known->second;
    const SharedFacts& shared = cellar_.shared();
    // The recipe the vessel was run on before: the first one recorded.
    const auto& recipes = record.of<facts::BaseRecipeFact>();
    auto usual = resolve(recipes.empty() ? defaultRecipe() : recipes.front().fact.recipe, shared.pantry,
                         shared.kit(asked_.today).equipment.heatingRate);
    if (!usual)
        return fail(usual.error());
    const forward::Parameters parameters = parametersFor(record, asked_.today);
    const brewing::RefillBeer beer = brew(*usual, parameters.brew);
    const culture::AgeConditions cellaring{{}, record.facts.temperature, oxygenOf(record.facts)};
    std::map<std::size_t, VesselName> sources;
    auto events = eventsOf(record, sources);
    History history{record, std::move(*usual), {std::move(events), beer, cellaring, parameters}, std::move(sources)};
    return &histories_.emplace(record.id, std::move(history)).first->second;
}

/// From the opening; without one, from what went in first.
Result<void> Chemistry::start(History& history) {
    const VesselRecord& record = history.record;
    estimate::CarriedStates& states = history.states;
    if (const auto& openings = record.of<OpeningFact>(); !openings.empty()) {
        const OpeningFact& opening = openings.front().fact;
        forward::OpeningFacts known = openingFacts(opening);
        known.brett = brettAt(record, opening.on, asked_.today);
        states.start(opening.on, openingState(known, history.usualInput, record.facts.temperature,
                                              oxygenOf(record.facts), states.parameters()));
        return {};
    }
    if (auto added = findBeers(history, 0, 1); !added)
        return added;
    const BlendEvent& first = states.events().front();
    const auto beer = first.brew ? beers_.find(*first.brew) : beers_.end();
    culture::VesselState young =
        youngVessel(beer == beers_.end() ? states.usual().beer : beer->second.beer, states.parameters().culture);
    if (brettAt(record, first.on, asked_.today) == BrettAtOpening::none)
        young.brett = 0;
    states.start(first.on, young);
    return {};
}

Result<void> Chemistry::findBeers(History& history, std::size_t from, std::size_t to) {
    for (std::size_t i = from; i < to; ++i) {
        BlendEvent& event = history.states.events()[i];
        if (const auto source = history.sources.find(i); source != history.sources.end()) {
            event.brew = addTransfer(source->second, event.on);
            history.sources.erase(i);
        } else if (event.brew) {
            if (auto added = addBrew(*event.brew); !added)
                return added;
        }
    }
    return {};
}

Result<void> Chemistry::addBrew(std::int64_t id) {
    const SharedFacts& shared = cellar_.shared();
    const auto name = shared.names.brewNames.find(id);
    const facts::BrewFact* fact = name == shared.names.brewNames.end() ? nullptr : shared.brew(name->second);
    if (!fact || beers_.contains(id))
        return {};
    brewing::Recipe recipe = fact->recipe;
    if (fact->originalGravity)
        recipe.originalGravity = toPlato(*fact->originalGravity);
    auto input = resolve(recipe, shared.pantry, shared.kit(fact->on).equipment.heatingRate);
    if (!input)
        return fail(input.error());
    const brewing::BrewParameters parameters = forward::builtInParameters().brew;
    brewing::RefillBeer beer = brew(*input, parameters);
    if (fact->finalGravity)
        beer = withFinalGravity(beer, recipe.originalGravity, toPlato(*fact->finalGravity), parameters);
    beers_.emplace(id, beer);
    return {};
}

/// A pseudo brew for what came out of another vessel; none when that is not known.
std::optional<std::int64_t> Chemistry::addTransfer(const VesselName& from, Day day) {
    auto source = cellar_.vessel(from);
    if (!source)
        return {};
    auto state = at(**source, day, true);
    if (!state)
        return {};
    const std::int64_t id = -1 - static_cast<std::int64_t>(beers_.size());
    brewing::RefillBeer beer;
    beer.beer = state->beer;
    beer.lactics = state->lactics;
    beer.brett = state->brett;
    beers_.emplace(id, beer);
    return id;
}

} // namespace staveline::desk
