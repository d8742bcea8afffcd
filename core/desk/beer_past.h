// SPDX-License-Identifier: GPL-3.0-or-later
// What went into beer and when it was last disturbed: what the bottle guard asks of a vessel.
#pragma once

#include "desk/current_vessel.h"
#include "desk/lot_facts.h"
#include "finishing/lots.h"

namespace staveline::desk {

/// The last time beer went in, up to a day and, of that day, before an entry where one is given: it ferments again from
/// then on.
[[nodiscard]] std::optional<Day> lastFilled(const CurrentVessel& vessel, Day until,
                                            std::optional<std::int64_t> before = {});
/// The last refill after a draw: what was measured before is of beer that ended otherwise. Arguments as above.
[[nodiscard]] std::optional<Day> lastExchanged(const CurrentVessel& vessel, Day until,
                                               std::optional<std::int64_t> before = {});
/// Sugar that came in with beer of lots in the last year and may not have fermented. `lots` replayed up to that day or
/// later.
[[nodiscard]] Grams sugarFromLots(const VesselRecord& record, const LotFacts& lots, const finishing::LotsReplay& replay,
                                  Day until);
/// The same of a vessel by itself: without beer of lots in it none are read.
[[nodiscard]] Grams sugarFromLots(const VesselRecord& record, Cellar& cellar, Day until);
/// As young as it was taken over at most; with an age nobody told, of that day.
[[nodiscard]] std::optional<Day> takenOver(const VesselRecord& record);
/// The last time the beer was woken up.
[[nodiscard]] std::optional<Day> lastMoved(const VesselRecord& record, Day today);

/// What ever went into the beer, also by way of other vessels and lots: diastatic yeast that came in stays in.
class Ancestry {
public:
    explicit Ancestry(Cellar& cellar) : cellar_(cellar) {}
    bool diastatic = false;
    Share mostSugar{0};

    void add(const VesselRecord& record, Day until);
    /// With its ingredients as they were on that day.
    void add(const brewing::Recipe& recipe, Day on);

private:
    template <class F> void addFillings(const Facts<F>& list, const VesselRecord& record, Day until);
    void addUsual(const VesselRecord& record, Day on);
    void addLot(std::int64_t entry, Day until);

    Cellar& cellar_;
    std::map<book::RowId, Day> upTo_;
};

} // namespace staveline::desk
