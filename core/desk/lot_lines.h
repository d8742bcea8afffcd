// SPDX-License-Identifier: GPL-3.0-or-later
// What happened to a lot, line by line, and its packages.
#pragma once

#include "desk/lot_beer.h"
#include "desk/lots.h"

namespace staveline::desk {

/// "8.00 kg of sour cherries"
[[nodiscard]] Message additionWords(const facts::LotAdditionFact& fact);
/// Oldest first, as the ledger takes them.
[[nodiscard]] std::vector<LotLine> lotLines(const std::string& lot, const LotBeers& beers);
[[nodiscard]] PackageView packageOf(book::RowId id, const facts::PackagingFact& filled, const LotFacts& lots);

} // namespace staveline::desk
