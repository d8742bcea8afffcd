// SPDX-License-Identifier: GPL-3.0-or-later
// From recorded facts to the chemistry of vessels, for one question asked on one day.
#pragma once

#include "desk/current_vessel.h"
#include "estimate/carried_states.h"

namespace staveline::desk {

/// The model's, with what is known of this vessel's wood and culture.
[[nodiscard]] forward::Parameters parametersFor(const VesselRecord& record, Day day);
/// [mg/(L year)]
[[nodiscard]] double oxygenOf(const facts::VesselFact& facts);

/// What one vessel brings into another is looked up in its own history; nothing is worked out twice. Vessels may feed
/// each other: a transfer takes what was in the source before anything went in that day, so each look goes back in
/// time.
class Chemistry {
public:
    /// Facts up to the vessel's today count; its culture counts as it is known then.
    Chemistry(Cellar& cellar, const CurrentVessel& asked) : cellar_(cellar), asked_(asked) {}
    /// The vessel at the end of `day`. Nothing in it yet: notPossible.
    Result<culture::VesselState> on(const VesselRecord& record, Day day) { return at(record, day, false); }

private:
    struct History {
        const VesselRecord& record;
        brewing::BrewInput usualInput;
        estimate::CarriedStates states;
        std::map<std::size_t, facts::VesselName> sources; ///< by event, of transfers not looked up yet
    };

    Result<culture::VesselState> at(const VesselRecord& record, Day day, bool beforeFillings);
    [[nodiscard]] std::vector<forward::BlendEvent> eventsOf(const VesselRecord& record,
                                                            std::map<std::size_t, facts::VesselName>& sources) const;
    Result<History*> historyOf(const VesselRecord& record);
    Result<void> start(History& history);
    Result<void> findBeers(History& history, std::size_t from, std::size_t to);
    Result<void> addBrew(std::int64_t id);
    std::optional<std::int64_t> addTransfer(const facts::VesselName& from, Day day);

    Cellar& cellar_;
    const CurrentVessel& asked_;
    std::map<book::RowId, History> histories_;
    estimate::CarriedStates::Beers beers_; ///< brews by id; what came out of other vessels below 0
};

} // namespace staveline::desk
