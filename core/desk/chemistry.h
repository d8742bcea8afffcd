// SPDX-License-Identifier: GPL-3.0-or-later
// From recorded facts to the chemistry of vessels, for one question asked on one day.
#pragma once

#include "desk/current_vessel.h"
#include "estimate/carried_states.h"

namespace staveline::desk {

/// The model's, with what is known of this vessel's wood, and of its culture on `day`.
[[nodiscard]] forward::Parameters parametersFor(const VesselRecord& record, Day day);
/// [mg/(L year)]
[[nodiscard]] double oxygenOf(const facts::VesselFact& facts);

/// An entry of a ledger as the chemistry sees it.
struct Passage {
    vessel::LedgerEntry entry;
    std::size_t before = 0;                      ///< events (what changes the beer) before it
    Share share{0};                              ///< of the volume after it; above 0: it brings liquid into this vessel
    facts::VesselName from;                      ///< a transfer's
    std::optional<brewing::Recipe> planned = {}; ///< of a refill without a brew
    const facts::Measured* measured = nullptr;
    std::optional<std::int64_t> lot = {}; ///< of beer out of one: the entry in the ledger of the lots

    [[nodiscard]] bool fills() const { return share.of1 > 0; }
    /// Gravity and bitterness put the state right. Acid does not: it says how far the vessel is from the model. What
    /// was measured at the opening is in the opening's state.
    [[nodiscard]] bool corrects() const {
        return !fills() && measured && entry.kind != vessel::EntryKind::opening &&
               (measured->gravity || measured->bitterness);
    }
    [[nodiscard]] bool changesBeer() const { return fills() || corrects(); }
};

/// What one vessel brings into another is looked up in its own history; nothing is worked out twice. Vessels may feed
/// each other: a transfer takes what was in the source before anything went in that day, so each look goes back in
/// time.
class Chemistry {
public:
    /// Facts up to the vessel's today count; its culture counts as it was known on each day.
    Chemistry(Cellar& cellar, const CurrentVessel& asked) : cellar_(cellar), asked_(asked) {}
    /// The vessel at the end of `day`. Nothing in it yet: notPossible.
    Result<culture::VesselState> on(const VesselRecord& record, Day day) { return at(record, day, false); }
    /// The same after the first `count` of its events, and what was pitched up to that day.
    Result<culture::VesselState> after(const VesselRecord& record, std::size_t count, Day day);
    /// Its ledger up to the asked vessel's today, in order.
    Result<std::span<const Passage>> passages(const VesselRecord& record);

private:
    struct History {
        const VesselRecord& record;
        brewing::BrewInput usualInput;
        std::vector<Passage> passages;
        estimate::CarriedStates states;
        std::map<std::size_t, facts::VesselName> sources; ///< by event, of transfers not looked up yet
        std::map<std::size_t, brewing::Recipe> planned;   ///< by event, of refills not brewed yet
        std::map<std::size_t, std::int64_t> lots;         ///< by event, of beer out of lots not looked up yet
    };

    Result<culture::VesselState> at(const VesselRecord& record, Day day, bool beforeFillings);
    struct Ledger {
        std::vector<Passage> passages;
        std::vector<forward::BlendEvent> told; ///< of the culture
        Day first{};                           ///< entry; today without one
    };
    [[nodiscard]] Ledger ledgerOf(const VesselRecord& record);
    Result<History*> historyOf(const VesselRecord& record);
    Result<void> start(History& history);
    Result<void> findBeers(History& history, std::size_t from, std::size_t to);
    Result<void> addBrew(std::int64_t id);
    [[nodiscard]] std::int64_t nextOwn() const; ///< of a pseudo brew
    /// A pseudo brew by a recipe.
    Result<std::int64_t> addPlanned(const brewing::Recipe& recipe, const VesselRecord& record, Day day);
    /// How brews of this house ended until a day.
    const brewing::BrewParameters& houseOn(Day day);
    std::optional<std::int64_t> addTransfer(const facts::VesselName& from, Day day);
    std::optional<brewing::RefillBeer> beerIn(const facts::VesselName& vessel, Day day);
    std::optional<std::int64_t> addLot(std::int64_t pouring);

    Cellar& cellar_;
    const CurrentVessel& asked_;
    std::map<book::RowId, History> histories_;
    std::map<Day, brewing::BrewParameters> houses_; ///< by the day of the last brew that shows something of it
    estimate::CarriedStates::Beers beers_;          ///< brews by id; below 0 plans and other vessels'
};

} // namespace staveline::desk
