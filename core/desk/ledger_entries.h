// SPDX-License-Identifier: GPL-3.0-or-later
// From a vessel's facts to the entries of its ledger, and their replay.
#pragma once

#include "desk/cellar.h"
#include "vessel/ledger.h"

namespace staveline {

inline constexpr int lastRank = 9;
/// On one day: opening, then what measures, then samples and draws, then what goes in.
[[nodiscard]] constexpr int rankOf(EntryKind kind) {
    switch (kind) {
    case EntryKind::opening:
        return 0;
    case EntryKind::dip:
    case EntryKind::reading:
        return 1;
    case EntryKind::sample:
        return 2;
    case EntryKind::drawOff:
        return 3;
    case EntryKind::refill:
        return 4;
    case EntryKind::topUp:
        return 5;
    }
    return lastRank;
}
/// Ledger entry ids join row id and table, so that they are unique across tables.
[[nodiscard]] std::int64_t entryId(EntryKind kind, book::RowId row);
[[nodiscard]] book::RowId rowOf(std::int64_t entry);
[[nodiscard]] EntryKind kindOfEntry(std::int64_t entry);
[[nodiscard]] std::string_view tableOfEntry(EntryKind kind);

/// In ledger order.
[[nodiscard]] std::vector<LedgerEntry> ledgerEntries(const VesselRecord& record, const SharedFacts& shared);
[[nodiscard]] VesselShape shapeOf(const VesselFact& facts);
[[nodiscard]] Replay replayOf(const VesselRecord& record, const SharedFacts& shared, Day today);
/// Of entries in ledger order.
[[nodiscard]] Replay replayOf(const std::vector<LedgerEntry>& entries, const VesselRecord& record, Day today);
/// Ledgers replayed so far: what a question costs.
[[nodiscard]] std::int64_t ledgersReplayed();

} // namespace staveline
