// SPDX-License-Identifier: GPL-3.0-or-later
// What the beer of lots is like and where it came from, by the replay of its vessels on the days of its draws; for one
// question, nothing is worked out twice.
#pragma once

#include "desk/current_vessel.h"
#include "desk/lot_entries.h"
#include "finishing/blend.h"
#include "finishing/proof.h"

namespace staveline::desk {

/// A draw as its vessel's ledger has it.
struct Drawn {
    const facts::DrawOffFact* fact = nullptr;
    std::shared_ptr<const CurrentVessel> vessel; ///< today
    std::int64_t entry = 0;                      ///< of the vessel's ledger
    vessel::LedgerState then;                    ///< of the vessel, just after it
};

class LotBeers {
public:
    /// As lots stand in the evening of `today`.
    static Result<LotBeers> on(Cellar& cellar, Day today);

    [[nodiscard]] const LotFacts& facts() const { return *facts_; }
    [[nodiscard]] const finishing::LotsReplay& replay() const { return replay_; }
    [[nodiscard]] Day today() const { return today_; }
    /// None: it is no draw, or its vessel cannot be read.
    const Drawn* drawn(std::int64_t entry);
    [[nodiscard]] const facts::LotAdditionFact* added(std::int64_t entry) const;
    /// Of the beer that was drawn, by litres; 0 without any.
    Days meanAge(const finishing::LotState& state);
    /// Beer with these parts, without what was measured of the lot. `state` holds some.
    Result<finishing::BlendSource> beerOf(const finishing::LotState& state);
    /// The lot as it stands, with what was measured since something was last put in. An unknown or empty one: fault at
    /// "/lot".
    Result<finishing::BlendSource> lot(const std::string& name);
    /// What the bottle guard asks of the beer of a lot; its residual CO2 is left open.
    finishing::BeerKnown known(const std::string& name);
    /// The lots that this one's beer went through up to now, itself among them.
    [[nodiscard]] std::set<std::string> through(const std::string& name) const;

private:
    LotBeers(Cellar& cellar, const LotFacts& facts, Day today);
    Result<finishing::BlendSource> partOf(std::int64_t entry);
    Result<finishing::BlendSource> beerDrawn(const Drawn& drawn);
    void addPast(const Drawn& drawn, finishing::BeerKnown& beer, class Ancestry& ancestry) const;

    Cellar& cellar_;
    const LotFacts* facts_;
    Day today_;
    finishing::LotsReplay replay_;
    std::map<facts::VesselName, std::shared_ptr<const CurrentVessel>> vessels_;
    std::map<std::int64_t, Drawn> drawn_;
    std::map<std::int64_t, finishing::BlendSource> parts_;
};

} // namespace staveline::desk
