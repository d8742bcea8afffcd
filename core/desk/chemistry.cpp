// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/chemistry.h"

#include "brewing/as_brewed.h"
#include "desk/house.h"
#include "desk/lot_entries.h"
#include "desk/rooms.h"
#include "desk/settings.h"
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

bool fills(const vessel::LedgerEntry& entry) {
    return !entry.outOfThisVessel && (entry.kind == EntryKind::refill || entry.kind == EntryKind::topUp);
}

template <class F>
void transferSources(const Facts<F>& facts, EntryKind kind, std::map<std::int64_t, VesselName>& sources) {
    for (const auto& stored : facts)
        if (!stored.fact.from.empty())
            sources[entryId(kind, stored.id)] = stored.fact.from;
}

template <class F>
void lotSources(const Facts<F>& facts, EntryKind kind, std::map<std::int64_t, std::int64_t>& sources) {
    for (const auto& stored : facts)
        if (!stored.fact.lot.empty())
            sources[entryId(kind, stored.id)] = lotEntryId<F>(stored.id);
}

/// What was measured of the beer in the vessel, wherever: in it, of a sample, of what was drawn; by ledger entry.
std::map<std::int64_t, const facts::Measured*> measuredByEntry(const VesselRecord& record) {
    std::map<std::int64_t, const facts::Measured*> measured;
    const auto add = [&](EntryKind kind, const auto& facts) {
        for (const auto& stored : facts)
            measured[entryId(kind, stored.id)] = &stored.fact.measured;
    };
    add(EntryKind::reading, record.of<facts::ReadingFact>());
    add(EntryKind::sample, record.of<facts::SampleFact>());
    add(EntryKind::drawOff, record.of<facts::DrawOffFact>());
    add(EntryKind::opening, record.of<OpeningFact>());
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

/// What was said of the culture and of the vessel after the first entry, from that day on. A vessel without
/// Brettanomyces that is said to have some has it pitched then.
std::vector<BlendEvent> toldLater(const VesselRecord& record, const std::vector<vessel::LedgerEntry>& entries,
                                  Cellar& cellar, Day asked) {
    std::vector<BlendEvent> told;
    const auto& all = record.of<CultureFact>();
    for (std::size_t i = 1; !entries.empty() && i < all.size() && all[i].fact.on <= asked; ++i) {
        const CultureFact &before = all[i - 1].fact, &now = all[i].fact;
        if (now.on > entries.front().on)
            told.push_back({.on = now.on,
                            .brettPitched =
                                before.brettanomyces == Brettanomyces::none && now.brettanomyces != Brettanomyces::none,
                            .culture = parametersFor(record, now.on).culture});
    }
    for (const auto& [id, refit] : record.of<facts::RefitFact>())
        if (!entries.empty() && refit.on > entries.front().on && refit.on <= asked)
            told.push_back({.on = refit.on,
                            .culture = parametersFor(record, refit.on).culture,
                            .cellaring = cellaringOn(record, refit.on, cellar, asked)});
    for (const auto& [id, room] : *record.rooms)
        if (!entries.empty() && room.on > entries.front().on && room.on <= asked &&
            vesselOn(record, room.on).room == room.name)
            told.push_back({.on = room.on, .cellaring = cellaringOn(record, room.on, cellar, asked)});
    std::stable_sort(told.begin(), told.end(), [](const auto& a, const auto& b) { return a.on < b.on; });
    return told;
}

forward::OpeningFacts openingFacts(const OpeningFact& f) {
    forward::OpeningFacts o;
    o.on = f.on;
    o.usualInterval = f.usualInterval.value_or(o.usualInterval);
    o.usualShare = f.usualShare.value_or(o.usualShare);
    o.yearsRunning = f.yearsRunning.value_or(o.yearsRunning);
    if (f.measured.gravity)
        o.gravity = toPlato(*f.measured.gravity);
    o.bitterness = f.measured.bitterness;
    return o;
}

BlendEvent blendEvent(const Passage& passage) {
    BlendEvent event;
    event.on = passage.entry.on;
    if (passage.fills()) {
        event.share = passage.share;
        event.brew = passage.entry.brew;
        return event;
    }
    if (passage.measured->gravity)
        event.gravity = toPlato(*passage.measured->gravity);
    event.bitterness = passage.measured->bitterness;
    return event;
}

/// The recipe of a refill without a brew, by the state it went into. None: the vessel never ran on another.
std::optional<brewing::Recipe> plannedFor(const vessel::LedgerEntry& entry, const VesselRecord& record,
                                          const ingredient::Pantry& pantry, const vessel::LedgerState& before) {
    const bool always = record.of<facts::ChoiceFact>().empty() && record.of<facts::BaseRecipeFact>().size() < 2;
    if (always || entry.kind != EntryKind::refill || entry.outOfThisVessel || entry.brew)
        return {};
    for (const auto& stored : record.of<facts::RefillFact>())
        if (stored.id == rowOf(entry.id) && stored.fact.from.empty() && stored.fact.lot.empty())
            return recipeGoneInBy(stored.fact, record, pantry, before);
    return {};
}

std::vector<Passage> passagesOf(const VesselRecord& record, const std::vector<vessel::LedgerEntry>& entries,
                                const vessel::Replay& replayed, const std::vector<BlendEvent>& told, Day asked,
                                const ingredient::Pantry& pantry) {
    std::map<std::int64_t, VesselName> sources;
    transferSources(record.of<facts::RefillFact>(), EntryKind::refill, sources);
    transferSources(record.of<facts::TopUpFact>(), EntryKind::topUp, sources);
    std::map<std::int64_t, std::int64_t> lots;
    lotSources(record.of<facts::RefillFact>(), EntryKind::refill, lots);
    lotSources(record.of<facts::TopUpFact>(), EntryKind::topUp, lots);
    const auto measured = measuredByEntry(record);
    std::vector<Passage> passages;
    std::size_t events = 0;
    auto nextTold = told.begin();
    // What an empty vessel gives to a meter is no beer.
    const auto held = [&](std::size_t i) {
        return replayed.after[i].volume.l > 0 || (i > 0 && replayed.after[i - 1].volume.l > 0);
    };
    for (std::size_t i = 0; i < entries.size() && entries[i].on <= asked; ++i) {
        for (; nextTold != told.end() && nextTold->on <= entries[i].on; ++nextTold)
            ++events;
        Passage passage{.entry = entries[i], .before = events, .share = {0}, .from = {}};
        if (fills(entries[i]) && replayed.after[i].volume.l > 0)
            passage.share = Share{std::min(1.0, entries[i].volume / replayed.after[i].volume)};
        if (const auto source = sources.find(entries[i].id); source != sources.end())
            passage.from = source->second;
        if (const auto lot = lots.find(entries[i].id); lot != lots.end())
            passage.lot = lot->second;
        passage.planned = plannedFor(entries[i], record, pantry, i > 0 ? replayed.after[i - 1] : vessel::LedgerState());
        if (const auto found = measured.find(entries[i].id); found != measured.end() && held(i))
            passage.measured = found->second;
        events += passage.changesBeer() ? 1 : 0;
        passages.push_back(std::move(passage));
    }
    return passages;
}

/// What went in, in ledger order, and what was told of the culture before it; the same count as passages have.
std::vector<BlendEvent> blendEvents(const std::vector<Passage>& passages, const std::vector<BlendEvent>& told) {
    std::vector<BlendEvent> events;
    auto next = told.begin();
    for (const auto& passage : passages) {
        for (; next != told.end() && next->on <= passage.entry.on; ++next)
            events.push_back(*next);
        if (passage.changesBeer())
            events.push_back(blendEvent(passage));
    }
    events.insert(events.end(), next, told.end());
    return events;
}

/// By event, the vessels that transfers come from.
std::map<std::size_t, VesselName> sourcesOf(const std::vector<Passage>& passages) {
    std::map<std::size_t, VesselName> sources;
    for (const auto& passage : passages)
        if (passage.fills() && !passage.from.empty())
            sources[passage.before] = passage.from;
    return sources;
}

/// By event, the pourings out of lots.
std::map<std::size_t, std::int64_t> lotsOf(const std::vector<Passage>& passages) {
    std::map<std::size_t, std::int64_t> lots;
    for (const auto& passage : passages)
        if (passage.fills() && passage.lot)
            lots[passage.before] = *passage.lot;
    return lots;
}

/// By event, the recipes of refills without a brew.
std::map<std::size_t, brewing::Recipe> plannedOf(const std::vector<Passage>& passages) {
    std::map<std::size_t, brewing::Recipe> planned;
    for (const auto& passage : passages)
        if (passage.fills() && passage.planned)
            planned[passage.before] = *passage.planned;
    return planned;
}

} // namespace

forward::Parameters parametersFor(const VesselRecord& record, Day day) {
    forward::Parameters p = forward::builtInParameters();
    const facts::VesselFact then = vesselOn(record, day);
    p.culture.heldBack =
        then.cultureHeldBack
            .value_or(vessel::materialFacts(wordOf(then.material)).value_or(vessel::MaterialFacts{}).cultureHeldBack)
            .of1;
    p.culture.evaporation = shapeOf(then).evaporationPerYear.of1;
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

Chemistry::Ledger Chemistry::ledgerOf(const VesselRecord& record) {
    const auto ledger = [&](const auto& entries, const vessel::Replay& replayed) -> Ledger {
        auto told = toldLater(record, entries, cellar_, asked_.today);
        auto passages = passagesOf(record, entries, replayed, told, asked_.today, cellar_.shared().pantry);
        return {std::move(passages), std::move(told), entries.empty() ? asked_.today : entries.front().on};
    };
    if (record.id == asked_.record.id)
        return ledger(asked_.entries, asked_.replayed);
    const auto entries = ledgerEntries(record, cellar_.shared());
    return ledger(entries, replayOf(entries, record, asked_.today));
}

Result<std::span<const Passage>> Chemistry::passages(const VesselRecord& record) {
    auto found = historyOf(record);
    if (!found)
        return fail(found.error());
    return std::span<const Passage>((*found)->passages);
}

Result<culture::VesselState> Chemistry::at(const VesselRecord& record, Day day, bool beforeFillings) {
    auto found = historyOf(record);
    if (!found)
        return fail(found.error());
    return after(record, (*found)->states.countUntil(day, beforeFillings), day);
}

Result<culture::VesselState> Chemistry::after(const VesselRecord& record, std::size_t count, Day day) {
    auto found = historyOf(record);
    if (!found)
        return fail(found.error());
    History& history = **found;
    estimate::CarriedStates& states = history.states;
    // What was told of the culture stands between the entries; it is not one of them.
    for (const auto& events = states.events();
         count < events.size() && events[count].culture && events[count].on <= day;)
        ++count;
    if (record.of<OpeningFact>().empty() && count == 0)
        return fail({FaultKind::notPossible, "/vessel", say("desk.not_opened").with("vessel", record.facts.name),
                     say("desk.not_opened.remedy")});
    if (!states.started())
        if (auto started = start(history); !started)
            return fail(started.error());
    if (auto added = findBeers(history, states.known(count), count); !added)
        return fail(added.error());
    return states.on(day, count, beers_);
}

Result<Chemistry::History*> Chemistry::historyOf(const VesselRecord& record) {
    if (const auto known = histories_.find(record.id); known != histories_.end())
        return &known->second;
    const SharedFacts& shared = cellar_.shared();
    // The recipe the vessel was run on before: the first one recorded.
    const auto& recipes = record.of<facts::BaseRecipeFact>();
    auto usual = resolve(recipes.empty() ? defaultRecipe() : recipes.front().fact.recipe, shared.pantry,
                         shared.kit(asked_.today, record.facts.name).equipment.heatingRate);
    if (!usual)
        return fail(usual.error());
    auto [passages, told, first] = ledgerOf(record);
    const forward::Parameters parameters = parametersFor(record, first);
    const brewing::RefillBeer beer = brew(*usual, parameters.brew);
    const culture::AgeConditions cellaring = cellaringOn(record, first, cellar_, asked_.today);
    auto events = blendEvents(passages, told);
    auto sources = sourcesOf(passages);
    auto planned = plannedOf(passages);
    auto lots = lotsOf(passages);
    History history{record,
                    std::move(*usual),
                    std::move(passages),
                    {std::move(events), beer, cellaring, parameters},
                    std::move(sources),
                    std::move(planned),
                    std::move(lots)};
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
        const culture::AgeConditions cellaring = cellaringOn(record, opening.on, cellar_, asked_.today);
        states.start(opening.on, openingState(known, history.usualInput, cellaring, states.parameters()));
        return {};
    }
    if (auto added = findBeers(history, 0, 1); !added)
        return added;
    const BlendEvent& first = states.events().front();
    const auto beer = first.brew ? beers_.find(*first.brew) : beers_.end();
    const brewing::RefillBeer& filled = beer == beers_.end() ? states.usual() : beer->second;
    culture::VesselState young = youngVessel(filled.beer, states.parameters().culture);
    young.enzyme = filled.enzyme;
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
        } else if (const auto lot = history.lots.find(i); lot != history.lots.end()) {
            event.brew = addLot(lot->second);
            history.lots.erase(lot);
        } else if (const auto recipe = history.planned.find(i); recipe != history.planned.end()) {
            auto added = addPlanned(recipe->second, history.record, event.on);
            if (!added)
                return fail(added.error());
            event.brew = *added;
            history.planned.erase(recipe);
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
    auto input = resolve(recipe, shared.pantryOn(fact->on), shared.kit(fact->on, fact->vessel).equipment.heatingRate);
    if (!input)
        return fail(input.error());
    // A brew whose end was not measured ended as those of this house did until then: so it was promised.
    const brewing::BrewParameters parameters =
        fact->finalGravity ? forward::builtInParameters().brew : houseOn(fact->on);
    brewing::RefillBeer beer = brew(*input, parameters);
    if (fact->finalGravity)
        beer = withFinalGravity(beer, recipe.originalGravity, toPlato(*fact->finalGravity), parameters);
    beers_.emplace(id, beer);
    return {};
}

Result<std::int64_t> Chemistry::addPlanned(const brewing::Recipe& recipe, const VesselRecord& record, Day day) {
    const SharedFacts& shared = cellar_.shared();
    auto input = resolve(recipe, shared.pantryOn(day), shared.kit(day, record.facts.name).equipment.heatingRate);
    if (!input)
        return fail(input.error());
    const std::int64_t id = nextOwn();
    beers_.emplace(id, brew(*input, houseOn(day)));
    return id;
}

const brewing::BrewParameters& Chemistry::houseOn(Day day) {
    const SharedFacts& shared = cellar_.shared();
    Day known = Day::min(); // of the last brew that shows something of the house
    for (const auto& stored : shared.brews)
        if (stored.fact.finalGravity && stored.fact.on <= day)
            known = std::max(known, stored.fact.on);
    const auto found = houses_.find(known);
    if (found != houses_.end())
        return found->second;
    return houses_.emplace(known, desk::houseOn(shared, known).parameters(forward::builtInParameters().brew))
        .first->second;
}

std::int64_t Chemistry::nextOwn() const {
    return -1 - static_cast<std::int64_t>(beers_.size());
}

std::optional<brewing::RefillBeer> Chemistry::beerIn(const VesselName& vessel, Day day) {
    auto source = cellar_.vessel(vessel);
    if (!source)
        return {};
    auto state = at(**source, day, true);
    if (!state)
        return {};
    brewing::RefillBeer beer;
    beer.beer = state->beer;
    beer.lactics = state->lactics;
    beer.brett = state->brett;
    beer.enzyme = std::max(state->enzyme, parametersFor(**source, day).culture.enzymeOpening);
    return beer;
}

/// A pseudo brew for what came out of another vessel; none when that is not known.
std::optional<std::int64_t> Chemistry::addTransfer(const VesselName& from, Day day) {
    const auto beer = beerIn(from, day);
    if (!beer)
        return {};
    const std::int64_t id = nextOwn();
    beers_.emplace(id, *beer);
    return id;
}

/// The same of a lot, by what its draws and additions brought; none when one of them is not known.
std::optional<std::int64_t> Chemistry::addLot(std::int64_t pouring) {
    const auto lots = cellar_.lots();
    if (!lots)
        return {};
    const auto replay = finishing::replayLots(lotEntries(**lots), asked_.today);
    const auto given = replay.given.find(pouring);
    if (given == replay.given.end() || given->second.parts.empty())
        return {};
    brewing::RefillBeer blend;
    for (const auto pool : compositionPools)
        blend.beer.*pool = 0;
    for (const finishing::LotPart& part : given->second.parts) {
        const double share = part.litres / given->second.volume();
        std::optional<brewing::RefillBeer> beer;
        if (const auto* draw = factOfEntry((*lots)->draws, part.entry))
            beer = beerIn(draw->vessel, draw->on);
        else if (const auto* addition = factOfEntry((*lots)->additions, part.entry))
            beer.emplace().beer = broughtBy(*addition).beer;
        if (!beer)
            return {};
        for (const auto pool : compositionPools)
            blend.beer.*pool += share * beer->beer.*pool;
        blend.lactics += share * beer->lactics;
        blend.brett += share * beer->brett;
        blend.enzyme = std::max(blend.enzyme, beer->enzyme);
    }
    const std::int64_t id = nextOwn();
    beers_.emplace(id, blend);
    return id;
}

} // namespace staveline::desk
