// SPDX-License-Identifier: GPL-3.0-or-later
// A vessel as it stands today, as far as its facts say without the model: worked out once for all that is asked of it.
#pragma once

#include "desk/ledger.h"
#include "desk/ledger_entries.h"
#include "desk/settings.h"
#include "tasting/verdict.h"

namespace staveline::desk {

/// The worst fault of the last sitting that this vessel is not kept for.
struct FaultFound {
    std::string id;
    const tasting::FaultRule* rule = nullptr; ///< none: a fault the sheet does not know
    Day on{};
    std::optional<Day> until; ///< when to look again, where waiting is the cure
};

/// Valid while no fact changes.
struct CurrentVessel {
    const VesselRecord& record;
    Day today{};
    std::vector<vessel::LedgerEntry> entries; ///< in ledger order
    vessel::Replay replayed;
    advice::Setting inUse;                   ///< for the coming refill
    advice::Setting leftAlone;               ///< the last refill without its one-cycle aids
    std::optional<Litres> drawn;             ///< for it already
    const facts::BrewFact* brewed = nullptr; ///< for it already
    std::optional<FaultFound> fault;
    vessel::ScheduleRule rule; ///< by which its days go, with the setting in use
    vessel::Schedule dates;
    Due due;
    CycleWorks works{};
    bool toFill = false; ///< empty, and not because it was drawn for a refill: nothing to taste, draw or advise on

    [[nodiscard]] const vessel::LedgerState& now() const { return replayed.now; }
};

/// Kept in the cellar until a fact or the day changes. Unknown name: fault at "/vessel".
[[nodiscard]] Result<std::shared_ptr<const CurrentVessel>> currentVessel(Cellar& cellar, const facts::VesselName& name,
                                                                         Day today);
/// Without the states after each entry, and not kept: for many vessels at once.
[[nodiscard]] CurrentVessel currentOutline(const VesselRecord& record, Cellar& cellar, Day today);
/// The dates as they would be if the refill were planned like this.
[[nodiscard]] vessel::Schedule datesWith(const CurrentVessel& vessel, const Cellar& cellar,
                                         const advice::Setting& coming);

/// Drawn at an age, a vessel has the interval that follows from the draw; else its setting is as given.
[[nodiscard]] advice::Setting asSteered(const CurrentVessel& vessel, const Cellar& cellar, advice::Setting setting);

} // namespace staveline::desk
