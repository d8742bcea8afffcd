// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/brought.h"

#include "desk/ledger_entries.h"

#include <map>
#include <optional>

namespace staveline::desk {

using vessel::EntryKind;
using vessel::Generation;
using vessel::LedgerEntry;

namespace {

using Parts = std::map<std::int64_t, std::vector<Generation>>; ///< by entry

/// Where the beer of each entry from another vessel came from.
std::map<std::int64_t, facts::VesselName> sourcesOf(const VesselRecord& record) {
    std::map<std::int64_t, facts::VesselName> sources;
    const auto add = [&](EntryKind kind, const auto& list) {
        for (const auto& stored : list)
            if (!stored.fact.from.empty())
                sources.emplace(entryId(kind, stored.id), stored.fact.from);
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
/// needs it, so that beer which went through several vessels is as old as it is.
class Upstream {
public:
    explicit Upstream(Cellar& cellar) : cellar_(cellar) {}
    Parts brought(const VesselRecord& record, std::vector<LedgerEntry> entries);

private:
    struct Ledger {
        std::vector<LedgerEntry> entries;
        std::map<std::int64_t, facts::VesselName> sources;
        vessel::LedgerWalk walk;
        std::size_t next = 0;
        bool walking = false;
    };
    Ledger& add(const VesselRecord& record, std::vector<LedgerEntry> entries);
    void walkTo(std::int64_t leaving, const facts::VesselName& source);
    void walk(Ledger& ledger, std::optional<std::int64_t> until);

    Cellar& cellar_;
    std::map<book::RowId, Ledger> ledgers_;
    Parts parts_;
};

Parts Upstream::brought(const VesselRecord& record, std::vector<LedgerEntry> entries) {
    walk(add(record, std::move(entries)), {});
    return std::move(parts_);
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

void Upstream::walk(Ledger& ledger, std::optional<std::int64_t> until) {
    ledger.walking = true;
    for (bool there = false; !there && ledger.next < ledger.entries.size(); ++ledger.next) {
        LedgerEntry& entry = ledger.entries[ledger.next];
        if (const auto source = ledger.sources.find(entry.id); source != ledger.sources.end() && !entry.age) {
            if (!parts_.contains(entry.id))
                walkTo(entry.id, source->second);
            entry.brought = parts_[entry.id];
        } else if (entry.outOfThisVessel) {
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
