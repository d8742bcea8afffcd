// SPDX-License-Identifier: GPL-3.0-or-later
// From a vessel's facts to the entries of its ledger, and their replay.
#pragma once

#include "desk/cellar.h"
#include "vessel/ledger.h"

namespace staveline::desk {

inline constexpr int lastRank = 9;
[[nodiscard]] constexpr int rankOf(vessel::EntryKind kind) {
    return vessel::traitsOf(kind).rank;
}
/// Ledger entry ids join row id and table, so that they are unique across tables.
[[nodiscard]] std::int64_t entryId(vessel::EntryKind kind, book::RowId row);
[[nodiscard]] book::RowId rowOf(std::int64_t entry);
[[nodiscard]] vessel::EntryKind kindOfEntry(std::int64_t entry);
[[nodiscard]] std::string_view tableOfEntry(vessel::EntryKind kind);

/// In ledger order.
[[nodiscard]] std::vector<vessel::LedgerEntry> ledgerEntries(const VesselRecord& record, const SharedFacts& shared);
[[nodiscard]] vessel::VesselShape shapeOf(const facts::VesselFact& facts);
[[nodiscard]] vessel::Replay replayOf(const VesselRecord& record, const SharedFacts& shared, Day today);
/// Of entries in ledger order.
[[nodiscard]] vessel::Replay replayOf(const std::vector<vessel::LedgerEntry>& entries, const VesselRecord& record,
                                      Day today);
/// Ledgers replayed so far: what a question costs.
[[nodiscard]] std::int64_t ledgersReplayed();

} // namespace staveline::desk
