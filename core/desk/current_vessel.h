// SPDX-License-Identifier: GPL-3.0-or-later
// A vessel as it stands today, as far as its facts say without the model: worked out once for all that is asked of it.
#pragma once

#include "desk/ledger.h"
#include "desk/ledger_entries.h"
#include "desk/settings.h"

namespace staveline {

/// Valid while no fact changes.
struct CurrentVessel {
    const VesselRecord& record;
    Day today{};
    std::vector<LedgerEntry> entries; ///< in ledger order
    Replay replayed;
    Setting inUse;                    ///< for the coming refill
    Setting leftAlone;                ///< if nothing is chosen for it
    std::optional<Litres> drawn;      ///< for it already
    const BrewFact* brewed = nullptr; ///< for it already
    Schedule dates;                   ///< with the setting in use
    Due due;

    [[nodiscard]] const LedgerState& now() const { return replayed.now; }
};

/// Kept in the cellar until a fact or the day changes. Unknown name: fault at "/vessel".
[[nodiscard]] Result<std::shared_ptr<const CurrentVessel>> currentVessel(Cellar& cellar, const VesselName& name,
                                                                         Day today);
/// Without the states after each entry, and not kept: for many vessels at once.
[[nodiscard]] CurrentVessel currentOutline(const VesselRecord& record, const Cellar& cellar, Day today);
/// The dates as they would be if the refill were planned like this.
[[nodiscard]] Schedule datesWith(const CurrentVessel& vessel, const Cellar& cellar, const Setting& coming);

} // namespace staveline
