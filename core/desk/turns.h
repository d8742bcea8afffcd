// SPDX-License-Identifier: GPL-3.0-or-later
// The order of entry within a day: what comes without a time goes after what is on record of that day.
#pragma once

#include "desk/cellar.h"

namespace staveline::desk {

/// A number goes with each turn in the day, not a link to the entry before: an entry taken out or moved leaves no gap
/// to mend, and both ledgers of a transfer can agree on it. Facts of one file share the turn that the day had before
/// it.
class Turns {
public:
    explicit Turns(Cellar& cellar) : cellar_(cellar) {}
    /// Unless it is given: of an entry about to be recorded, in the ledgers it belongs to.
    template <class F> Result<void> give(F& fact);

private:
    Result<std::optional<int>> next(const facts::VesselName& vessel, Day on);
    Cellar& cellar_;
    std::map<std::pair<book::RowId, Day>, std::optional<int>> given_;
};

template <class F> Result<void> Turns::give(F& fact) {
    if constexpr (requires { fact.turn; }) {
        auto turn = next(fact.vessel, fact.on);
        if (!turn)
            return fail(turn.error());
        if constexpr (requires { fact.from; })
            if (!fact.from.empty()) {
                const auto there = next(fact.from, fact.on);
                if (!there)
                    return fail(there.error());
                turn = std::max(*turn, *there);
            }
        if (!fact.turn)
            fact.turn = *turn;
    }
    return {};
}

} // namespace staveline::desk
