// SPDX-License-Identifier: GPL-3.0-or-later
// Which entry of the ledger to look at after it changed.
#pragma once

#include "desk/ledger.h"
#include "ui/present/ledger_model.h"

namespace staveline::ui {

struct LedgerPlace {
    const std::vector<LedgerLine>& lines; ///< oldest first
    int row = -1;                         ///< selected; newest first
};

/// With `toNews` the newest entry that is there anew or says something else; else the one selected before; else the
/// one that stands in its place, which came before it. -1: none.
[[nodiscard]] int rowAfter(const LedgerPlace& before, const LedgerModel& now, bool toNews);

} // namespace staveline::ui
