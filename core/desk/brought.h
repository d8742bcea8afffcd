// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "desk/cellar.h"
#include "vessel/ledger.h"

namespace staveline::desk {

/// Beer from another vessel or a lot is as old as it was there: gives such entries the generations they bring, unless
/// their age was told. `entries`: the ledger of `record`, in order.
void bringAges(std::vector<vessel::LedgerEntry>& entries, const VesselRecord& record, Cellar& cellar);

} // namespace staveline::desk
