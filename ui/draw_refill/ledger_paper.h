// SPDX-License-Identifier: GPL-3.0-or-later
// The ledger as a paper, newest entry first as in the window; notes and findings stand in the line of their entry.
#pragma once

#include "sheet/document.h"
#include "ui/present/ledger_model.h"

namespace staveline::ui {

/// None: nothing is recorded yet.
[[nodiscard]] std::optional<sheet::Document> ledgerPaper(const facts::VesselName& vessel, const LedgerModel& model,
                                                         Day today);

} // namespace staveline::ui
