// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/ledger_entries.h"

#include <algorithm>
#include <atomic>
#include <cmath>

namespace staveline::desk {

using facts::factTraits;
using vessel::EntryKind;
using vessel::LedgerEntry;

namespace {

constexpr std::int64_t kindCount = 16;

constexpr int timeNotSaid = -1;

/// How much, where a volume is said.
template <class F> LedgerEntry entry(const Stored<F>& stored) {
    const F& fact = stored.fact;
    LedgerEntry e;
    e.kind = *factTraits<F>.entry;
    e.id = entryId(e.kind, stored.id);
    e.on = fact.on;
    e.minute = minuteOfDay(fact.at).value_or(timeNotSaid);
    e.turn = fact.turn.value_or(0);
    e.rank = rankOf(e.kind);
    if constexpr (requires { fact.volume.value_or(Litres{0}); })
        e.volume = fact.volume.value_or(Litres{0});
    else if constexpr (requires { fact.volume; })
        e.volume = fact.volume;
    return e;
}

template <class F> LedgerEntry entryOf(const Stored<F>& stored, const SharedFacts&) {
    return entry(stored);
}

template <class F>
requires requires(F f) {
    f.brew;
}
LedgerEntry entryOf(const Stored<F>& stored, const SharedFacts& shared) {
    LedgerEntry e = entry(stored);
    e.age = stored.fact.age;
    const auto brew = shared.names.brews.find(stored.fact.brew);
    if (brew != shared.names.brews.end()) {
        e.brew = brew->second;
        if (const facts::BrewFact* brewed = shared.brew(stored.fact.brew); brewed && !e.age)
            e.age = Days{static_cast<double>(std::max(0, daysBetween(brewed->on, stored.fact.on)))};
    }
    return e;
}

LedgerEntry entryOf(const Stored<facts::OpeningFact>& stored, const SharedFacts&) {
    const facts::OpeningFact& f = stored.fact;
    LedgerEntry e = entry(stored);
    const double interval = f.usualInterval.value_or(Days{240}).d;
    const double share = f.usualShare.value_or(Share{.35}).of1;
    const double running = f.yearsRunning.value_or(3) * daysPerYear;
    // Habit gives the age: it settles at interval/share, and no liquid is older than the years stated.
    const double habit = interval * (1 - share) / share * (1 - std::exp(-running * share / interval));
    e.age = Days{f.ageYears ? *f.ageYears * daysPerYear : habit};
    e.ageSd = Days{f.ageSdYears ? *f.ageSdYears * daysPerYear : e.age->d * 0.3};
    return e;
}

LedgerEntry entryOf(const Stored<facts::EventFact>& stored, const SharedFacts&) {
    LedgerEntry e = entry(stored);
    const bool emptiesFirst =
        stored.fact.what == facts::Happening::racked || stored.fact.what == facts::Happening::moved;
    if (emptiesFirst && e.volume.l > 0)
        e.rank = vessel::beforeFilling;
    return e;
}

template <class F> void outflows(std::vector<LedgerEntry>& entries, const Facts<F>& facts) {
    for (const auto& stored : facts) {
        LedgerEntry e = entry(stored);
        e.outOfThisVessel = true;
        e.rank = rankOf(EntryKind::drawOff);
        entries.push_back(e);
    }
}

bool recordedBefore(const LedgerEntry& a, const LedgerEntry& b) {
    return std::tie(a.on, a.turn, a.rank, a.id) < std::tie(b.on, b.turn, b.rank, b.id);
}

/// What has no time comes after what was on record of its day before it.
void placeWithoutTime(std::vector<LedgerEntry>& entries) {
    std::sort(entries.begin(), entries.end(), recordedBefore);
    int latest = 0;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        if (i == 0 || entries[i].on != entries[i - 1].on)
            latest = 0;
        if (entries[i].minute == timeNotSaid)
            entries[i].minute = latest;
        latest = std::max(latest, entries[i].minute);
    }
}

/// What fills a vessel first opens it, unless a dip before its day found beer: on that day it comes before what is
/// taken.
void openByFirstFilling(std::vector<LedgerEntry>& entries) {
    const auto fills = [](const LedgerEntry& e) {
        return !e.outOfThisVessel && vessel::traitsOf(e.kind).flow == vessel::Flow::in;
    };
    const auto opens = [](const LedgerEntry& e) { return e.kind == EntryKind::opening; };
    if (std::any_of(entries.begin(), entries.end(), opens))
        return;
    auto first = entries.end();
    for (auto at = entries.begin(); at != entries.end(); ++at)
        if (fills(*at) && (first == entries.end() || recordedBefore(*at, *first)))
            first = at;
    const auto foundBefore = [&](const LedgerEntry& e) {
        return vessel::traitsOf(e.kind).flow == vessel::Flow::level && e.volume.l > 0 && e.on < first->on;
    };
    if (first != entries.end() && std::none_of(entries.begin(), entries.end(), foundBefore))
        first->rank = rankOf(EntryKind::opening);
}

std::atomic<std::int64_t> replays{0}, replayedEntries{0};

} // namespace

std::int64_t entryId(EntryKind kind, book::RowId row) {
    return row * kindCount + static_cast<std::int64_t>(kind);
}
book::RowId rowOf(std::int64_t entry) {
    return entry / kindCount;
}
EntryKind kindOfEntry(std::int64_t entry) {
    return static_cast<EntryKind>(entry % kindCount);
}

std::string_view tableOfEntry(EntryKind kind) {
    return vessel::traitsOf(kind).word;
}

std::optional<std::int64_t> entryOfRow(const book::RowKey& row) {
    for (const auto& traits : vessel::entryKinds)
        if (traits.word == row.table)
            return entryId(traits.kind, row.id);
    return {};
}

std::vector<LedgerEntry> ledgerEntries(const VesselRecord& record, const SharedFacts& shared) {
    std::vector<LedgerEntry> entries;
    facts::forEachFact([&]<class F>(std::type_identity<F>) {
        if constexpr (factTraits<F>.entry)
            for (const auto& stored : record.of<F>())
                entries.push_back(entryOf(stored, shared));
    });
    outflows(entries, record.refillsElsewhere);
    outflows(entries, record.topUpsElsewhere);
    openByFirstFilling(entries);
    placeWithoutTime(entries);
    if (!std::is_sorted(entries.begin(), entries.end(), vessel::before))
        std::sort(entries.begin(), entries.end(), vessel::before);
    return entries;
}

vessel::Replay replayOf(const std::vector<LedgerEntry>& entries, const VesselRecord& record, Day today) {
    ++replays;
    replayedEntries += static_cast<std::int64_t>(entries.size());
    return replay(entries, shapesOf(record), today);
}

vessel::Replay replayOf(const VesselRecord& record, const SharedFacts& shared, Day today) {
    return replayOf(ledgerEntries(record, shared), record, today);
}

std::vector<vessel::LedgerFinding> findingsOf(const VesselRecord& record, const SharedFacts& shared, Day today) {
    const auto entries = ledgerEntries(record, shared);
    replayedEntries += static_cast<std::int64_t>(entries.size());
    return replayNow(entries, shapesOf(record), today).findings;
}

facts::VesselName receiverOf(const VesselRecord& record, const LedgerEntry& entry) {
    const auto of = [&](const auto& elsewhere) {
        const auto at = std::find_if(elsewhere.begin(), elsewhere.end(),
                                     [&](const auto& stored) { return stored.id == rowOf(entry.id); });
        return at == elsewhere.end() ? facts::VesselName() : at->fact.vessel;
    };
    return kindOfEntry(entry.id) == EntryKind::refill ? of(record.refillsElsewhere) : of(record.topUpsElsewhere);
}

LedgerNote noteOf(const vessel::LedgerFinding& finding) {
    return {finding.on, finding.outOfThisVessel ? "transfer" : std::string(tableOfEntry(kindOfEntry(finding.entry))),
            finding.message};
}

std::vector<LedgerNote> notesOf(const std::vector<vessel::LedgerFinding>& findings) {
    std::vector<LedgerNote> notes;
    notes.reserve(findings.size());
    for (const auto& finding : findings)
        notes.push_back(noteOf(finding));
    return notes;
}

std::int64_t ledgersReplayed() {
    return replays;
}

std::int64_t entriesReplayed() {
    return replayedEntries;
}

} // namespace staveline::desk
