// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "facts/facts.h"
#include "quantity/message.h"

#include <string>

namespace staveline::desk {

/// What does not agree in a ledger, and at which entry.
struct LedgerNote {
    Day on{};
    std::string entry; ///< its kind as record files have it; "transfer": beer that left for another vessel
    Message text;
};
struct VesselNote {
    facts::VesselName vessel;
    LedgerNote note;
};

} // namespace staveline::desk
