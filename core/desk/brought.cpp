// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/brought.h"

#include "desk/ledger_entries.h"
#include "desk/lot_entries.h"

#include <algorithm>
#include <map>
#include <optional>

namespace staveline::desk {

using facts::DrawOffFact;
using vessel::EntryKind;
using vessel::Generation;
using vessel::LedgerEntry;

namespace {

using Parts = std::map<std::int64_t, std::vector<Generation>>; ///< by entry

/// Where beer that was not brewed for the vessel came from.
struct Source {
    facts::VesselName vessel;
    std::optional<std::int64_t> lot; ///< the entry that poured it, in the ledger of the lots
};
using Sources = std::map<std::int64_t, Source>; ///< by entry

Sources sourcesOf(const VesselRecord& record) {
    Sources sources;
    const auto add = [&]<class F>(EntryKind kind, const Facts<F>& list) {
        for (const auto& [id, fact] : list)
            if (!fact.from.empty())
                sources.emplace(entryId(kind, id), Source{fact.from, {}});
            else if (!fact.lot.empty())
                sources.emplace(entryId(kind, id), Source{{}, lotEntryId<F>(id)});
    };
    add(EntryKind::refill, record.of<facts::RefillFact>());
    add(EntryKind::topUp, record.of<facts::TopUpFact>());
    return sources;
}

std::vector<Generation> asOldAsThere(const vessel::LedgerState& there) {
    std::vector<Generation> parts = there.generations;
    for (Generation& part : parts)
        part.birthAge = ageOf(part, there.on);
    return parts;
}

/// The ledgers of a vessel and of those whose beer went into it, on whatever way: each is walked as far as another one
/// needs it, so that beer which went through several vessels and lots is as old as it is.
class Upstream {
public:
    explicit Upstream(Cellar& cellar) : cellar_(cellar) {}
    Parts brought(const VesselRecord& record, std::vector<LedgerEntry> entries);

private:
    struct Ledger {
        std::vector<LedgerEntry> entries;
        Sources sources;
        vessel::LedgerWalk walk;
        std::size_t next = 0;
        bool walking = false;
    };
    /// Draws into lots whose beer went into vessels.
    struct Lots {
        finishing::LotsReplay replay;
        std::map<std::int64_t, const DrawOffFact*> draws; ///< by entry of the lots
        std::set<std::int64_t> drawn;                     ///< entries of the vessels
    };
    Ledger& add(const VesselRecord& record, std::vector<LedgerEntry> entries);
    void loadLots();
    void walkTo(std::int64_t leaving, const facts::VesselName& source);
    void walk(Ledger& ledger, std::optional<std::int64_t> until);
    std::vector<Generation> outOf(const Source& source, const LedgerEntry& entry);
    std::vector<Generation> outOfLot(std::int64_t pouring, Day on);

    Cellar& cellar_;
    Lots lots_;
    std::map<book::RowId, Ledger> ledgers_;
    Parts parts_;
};

Parts Upstream::brought(const VesselRecord& record, std::vector<LedgerEntry> entries) {
    loadLots();
    walk(add(record, std::move(entries)), {});
    return std::move(parts_);
}

void Upstream::loadLots() {
    const auto facts = cellar_.lots();
    if (!facts || ((*facts)->refills.empty() && (*facts)->topUps.empty()))
        return;
    lots_.replay = finishing::replayLots(lotEntries(**facts));
    for (const auto& [id, draw] : (*facts)->draws) {
        lots_.draws.emplace(lotEntryId<DrawOffFact>(id), &draw);
        lots_.drawn.insert(entryId(EntryKind::drawOff, id));
    }
}

Upstream::Ledger& Upstream::add(const VesselRecord& record, std::vector<LedgerEntry> entries) {
    vessel::LedgerWalk walk(shapesOf(record), entries);
    Ledger ledger{std::move(entries), sourcesOf(record), std::move(walk)};
    return ledgers_.emplace(record.id, std::move(ledger)).first->second;
}

void Upstream::walkTo(std::int64_t leaving, const facts::VesselName& source) {
    const auto record = cellar_.vessel(source);
    if (!record)
        return;
    const auto known = ledgers_.find((*record)->id);
    Ledger& ledger = known != ledgers_.end() ? known->second : add(**record, ledgerEntries(**record, cellar_.shared()));
    if (!ledger.walking) // else each is said to come from the other
        walk(ledger, leaving);
}

std::vector<Generation> Upstream::outOf(const Source& source, const LedgerEntry& entry) {
    if (source.lot)
        return outOfLot(*source.lot, entry.on);
    if (!parts_.contains(entry.id))
        walkTo(entry.id, source.vessel);
    return parts_[entry.id];
}

/// Each draw as old as it was in its vessel, and since.
std::vector<Generation> Upstream::outOfLot(std::int64_t pouring, Day on) {
    std::vector<Generation> all;
    const auto given = lots_.replay.given.find(pouring);
    const double litres = given == lots_.replay.given.end() ? 0 : given->second.volume().l;
    for (std::size_t i = 0; litres > 0 && i < given->second.parts.size(); ++i) {
        const finishing::LotPart& part = given->second.parts[i];
        const double share = part.litres.l / litres;
        const auto draw = lots_.draws.find(part.entry);
        if (draw == lots_.draws.end()) { // an addition: new
            all.push_back({pouring, on, Share{share}, Days{0}, Days{0}});
            continue;
        }
        const std::int64_t entry = entryId(EntryKind::drawOff, rowOfLotEntry(part.entry).id);
        if (!parts_.contains(entry))
            walkTo(entry, draw->second->vessel);
        for (Generation generation : parts_[entry]) {
            generation.share.of1 *= share;
            generation.birthAge.d += daysBetween(draw->second->on, on);
            all.push_back(generation);
        }
    }
    std::stable_sort(all.begin(), all.end(),
                     [](const Generation& a, const Generation& b) { return a.birthAge < b.birthAge; });
    return all;
}

void Upstream::walk(Ledger& ledger, std::optional<std::int64_t> until) {
    ledger.walking = true;
    for (bool there = false; !there && ledger.next < ledger.entries.size(); ++ledger.next) {
        LedgerEntry& entry = ledger.entries[ledger.next];
        if (const auto source = ledger.sources.find(entry.id); source != ledger.sources.end() && !entry.age) {
            entry.brought = outOf(source->second, entry);
            parts_[entry.id] = entry.brought;
        } else if (entry.outOfThisVessel || lots_.drawn.contains(entry.id)) {
            parts_[entry.id] = asOldAsThere(ledger.walk.on(entry.on));
        }
        ledger.walk.apply(entry);
        there = entry.id == until;
    }
    ledger.walking = false;
}

} // namespace

void bringAges(std::vector<LedgerEntry>& entries, const VesselRecord& record, Cellar& cellar) {
    const auto sources = sourcesOf(record);
    if (sources.empty())
        return;
    const Parts parts = Upstream(cellar).brought(record, entries);
    for (LedgerEntry& entry : entries)
        if (const auto from = parts.find(entry.id); sources.contains(entry.id) && from != parts.end() && !entry.age)
            entry.brought = from->second;
}

} // namespace staveline::desk
