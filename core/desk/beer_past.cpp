// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/beer_past.h"

#include "desk/lot_entries.h"
#include "quantity/constants.h"

#include <algorithm>

namespace staveline::desk {

using facts::CultureFact;
using facts::DrawOffFact;
using facts::EventFact;

std::optional<Day> lastFilled(const CurrentVessel& vessel, Day until, std::optional<std::int64_t> before) {
    std::optional<Day> last;
    for (const vessel::LedgerEntry& entry : vessel.entries) {
        if (entry.on > until || entry.id == before)
            break;
        const bool fills = entry.kind == vessel::EntryKind::refill || entry.kind == vessel::EntryKind::topUp;
        if (fills && !entry.outOfThisVessel)
            last = entry.on;
    }
    return last;
}

std::optional<Day> lastExchanged(const CurrentVessel& vessel, Day until, std::optional<std::int64_t> before) {
    std::optional<Day> last;
    bool drawn = false;
    for (const vessel::LedgerEntry& entry : vessel.entries) {
        if (entry.on > until || entry.id == before)
            break;
        drawn = drawn || entry.kind == vessel::EntryKind::drawOff || entry.outOfThisVessel;
        if (!drawn || entry.kind != vessel::EntryKind::refill || entry.outOfThisVessel)
            continue;
        last = entry.on;
        drawn = false;
    }
    return last;
}

namespace {

template <class F>
double sugarIn(const Facts<F>& fillings, const LotFacts& lots, const finishing::LotsReplay& replay, Day until) {
    constexpr int counts = static_cast<int>(constants::finishing::untoldDays);
    double grams = 0;
    for (const auto& [id, filling] : fillings) {
        const auto given = replay.given.find(lotEntryId<F>(id));
        if (filling.lot.empty() || filling.on > until || daysBetween(filling.on, until) > counts ||
            given == replay.given.end())
            continue;
        for (const finishing::LotPart& part : given->second.parts)
            if (const auto* addition = factOfEntry(lots.additions, part.entry))
                grams += sugarOf(*addition, part.litres).g;
    }
    return grams;
}

} // namespace

Grams sugarFromLots(const VesselRecord& record, const LotFacts& lots, const finishing::LotsReplay& replay, Day until) {
    return Grams{sugarIn(record.of<facts::RefillFact>(), lots, replay, until) +
                 sugarIn(record.of<facts::TopUpFact>(), lots, replay, until)};
}

Grams sugarFromLots(const VesselRecord& record, Cellar& cellar, Day until) {
    const auto ofLot = [](const auto& stored) { return !stored.fact.lot.empty(); };
    const auto& refills = record.of<facts::RefillFact>();
    const auto& topUps = record.of<facts::TopUpFact>();
    if (std::none_of(refills.begin(), refills.end(), ofLot) && std::none_of(topUps.begin(), topUps.end(), ofLot))
        return Grams{0};
    const auto lots = cellar.lots();
    return lots ? sugarFromLots(record, **lots, finishing::replayLots(lotEntries(**lots), until), until) : Grams{0};
}

std::optional<Day> takenOver(const VesselRecord& record) {
    const auto& openings = record.of<facts::OpeningFact>();
    if (openings.empty())
        return {};
    const facts::OpeningFact& opening = openings.front().fact;
    return opening.on - std::chrono::days{static_cast<int>(opening.ageYears.value_or(0) * daysPerYear)};
}

std::optional<Day> lastMoved(const VesselRecord& record, Day today) {
    std::optional<Day> last;
    for (const auto& [id, event] : record.of<EventFact>())
        if (event.on <= today && wakesBeer(event.what))
            last = std::max(last, std::optional(event.on));
    return last;
}

void Ancestry::add(const VesselRecord& record, Day until) {
    const auto [seen, first] = upTo_.emplace(record.id, until);
    if (!first && seen->second >= until)
        return;
    seen->second = until;
    for (const auto& [id, culture] : record.of<CultureFact>())
        diastatic = diastatic || (culture.on <= until && culture.diastatic);
    addFillings(record.of<facts::RefillFact>(), record, until);
    addFillings(record.of<facts::TopUpFact>(), record, until);
}

void Ancestry::add(const brewing::Recipe& recipe, Day on) {
    const auto yeast = cellar_.shared().pantryOn(on).yeast(recipe.yeast);
    diastatic = diastatic || (yeast && yeast->diastatic());
    mostSugar = std::max(mostSugar, recipe.sugarShare);
}

/// What the usual recipe and the plan were then.
void Ancestry::addUsual(const VesselRecord& record, Day on) {
    if (const auto* usual = record.latest<facts::BaseRecipeFact>(on))
        add(usual->recipe, on);
    if (const auto* choice = record.latest<facts::ChoiceFact>(on); choice && choice->forecast)
        add(choice->forecast->recipe, on);
}

template <class F> void Ancestry::addFillings(const Facts<F>& list, const VesselRecord& record, Day until) {
    for (const auto& [id, filling] : list) {
        if (filling.on > until)
            continue;
        if (const facts::BrewFact* brew = cellar_.shared().brew(filling.brew))
            add(brew->recipe, brew->on);
        if (filling.brew.empty() && filling.lot.empty() && filling.from.empty())
            addUsual(record, filling.on);
        if (!filling.lot.empty())
            addLot(lotEntryId<F>(id), filling.on);
        if (filling.from.empty())
            continue;
        if (const auto source = cellar_.vessel(filling.from))
            add(**source, filling.on);
    }
}

void Ancestry::addLot(std::int64_t entry, Day until) {
    const auto lots = cellar_.lots();
    if (!lots)
        return;
    const auto replay = finishing::replayLots(lotEntries(**lots), until);
    const auto given = replay.given.find(entry);
    if (given == replay.given.end())
        return;
    for (const finishing::LotPart& part : given->second.parts)
        for (const auto& [id, draw] : (*lots)->draws)
            if (lotEntryId<DrawOffFact>(id) == part.entry)
                if (const auto source = cellar_.vessel(draw.vessel))
                    add(**source, draw.on);
}

} // namespace staveline::desk
