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

/// The fact of this kind that an entry stands for; none: another kind's.
template <class F> [[nodiscard]] const F* factOfEntry(const Facts<F>& list, std::int64_t entry) {
    for (const auto& stored : list)
        if (lotEntryId<F>(stored.id) == entry)
            return &stored.fact;
    return nullptr;
}

/// Fruit and sugar nobody knows bring nothing.
[[nodiscard]] finishing::Brought broughtBy(const facts::LotAdditionFact& fact);
/// Sugar in so many litres of it, before they have fermented.
[[nodiscard]] Grams sugarOf(const facts::LotAdditionFact& fact, Litres litres);
/// In all packages and lost in filling.
[[nodiscard]] Litres litresOf(const facts::PackagingFact& fact);

/// The vessel that most of what an entry took of a lot was drawn from; empty: nothing was.
[[nodiscard]] facts::VesselName mostlyDrawnFrom(const LotFacts& lots, std::int64_t entry);

[[nodiscard]] std::vector<finishing::LotEntry> lotEntries(const LotFacts& lots);

} // namespace staveline::desk
