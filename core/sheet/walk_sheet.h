// SPDX-License-Identifier: GPL-3.0-or-later
// The sheet to take along on the round: a row for each vessel, in the order in which it is typed in afterwards.
#pragma once

#include "sheet/document.h"

namespace staveline::sheet {

struct WalkRow {
    std::string vessel;
    Litres capacity{0}, held{0}; ///< by the ledger
};
[[nodiscard]] Document walkSheet(const std::vector<WalkRow>& rows, Day on, const DisplayUnits& units = {},
                                 const Catalogue& texts = builtInTexts());

} // namespace staveline::sheet
