// SPDX-License-Identifier: GPL-3.0-or-later
// From a vessel's facts to the entries of its ledger, and their replay.
#pragma once

#include "desk/ledger_note.h"
#include "desk/refits.h"
#include "vessel/ledger.h"

namespace staveline::desk {

[[nodiscard]] constexpr int rankOf(vessel::EntryKind kind) {
    return vessel::traitsOf(kind).rank;
}
/// Ledger entry ids join row id and table, so that they are unique across tables.
[[nodiscard]] std::int64_t entryId(vessel::EntryKind kind, book::RowId row);
[[nodiscard]] book::RowId rowOf(std::int64_t entry);
[[nodiscard]] vessel::EntryKind kindOfEntry(std::int64_t entry);
[[nodiscard]] std::string_view tableOfEntry(vessel::EntryKind kind);
/// None: the table holds no entries of the ledger.
[[nodiscard]] std::optional<std::int64_t> entryOfRow(const book::RowKey& row);

/// In ledger order.
[[nodiscard]] std::vector<vessel::LedgerEntry> ledgerEntries(const VesselRecord& record, const SharedFacts& shared);
[[nodiscard]] vessel::Replay replayOf(const VesselRecord& record, const SharedFacts& shared, Day today);
/// Of entries in ledger order.
[[nodiscard]] vessel::Replay replayOf(const std::vector<vessel::LedgerEntry>& entries, const VesselRecord& record,
                                      Day today);
/// What does not agree in a ledger, without the states after each entry.
[[nodiscard]] std::vector<vessel::LedgerFinding> findingsOf(const VesselRecord& record, const SharedFacts& shared,
                                                            Day today);
/// The vessel that beer went to, of an entry seen from its source.
[[nodiscard]] facts::VesselName receiverOf(const VesselRecord& record, const vessel::LedgerEntry& entry);
[[nodiscard]] LedgerNote noteOf(const vessel::LedgerFinding& finding);
[[nodiscard]] std::vector<LedgerNote> notesOf(const std::vector<vessel::LedgerFinding>& findings);
/// Ledgers replayed so far: what a question costs.
[[nodiscard]] std::int64_t ledgersReplayed();
/// Entries that were replayed for them: what recording costs.
[[nodiscard]] std::int64_t entriesReplayed();

} // namespace staveline::desk
