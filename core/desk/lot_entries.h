// SPDX-License-Identifier: GPL-3.0-or-later
// From what is recorded of drawn beer to the entries of its ledger.
#pragma once

#include "desk/lot_facts.h"
#include "finishing/addition.h"
#include "finishing/lots.h"

namespace staveline::desk {

/// Unique across tables, and the row it stands for.
template <class F> [[nodiscard]] std::int64_t lotEntryId(book::RowId row);
[[nodiscard]] book::RowKey rowOfLotEntry(std::int64_t entry);

/// Fruit and sugar nobody knows bring nothing.
[[nodiscard]] finishing::Brought broughtBy(const facts::LotAdditionFact& fact);
/// In all packages and lost in filling.
[[nodiscard]] Litres litresOf(const facts::PackagingFact& fact);

[[nodiscard]] std::vector<finishing::LotEntry> lotEntries(const LotFacts& lots);

} // namespace staveline::desk
