// SPDX-License-Identifier: GPL-3.0-or-later
// Beer of a vessel or of a lot as it stands, into bottles: priming by weight, pressure, and what the bottle guard says
// of it.
#pragma once

#include "facts/facts.h"
#include "finishing/carbonation.h"
#include "finishing/fruit.h"
#include "finishing/guard.h"
#include "finishing/priming.h"

namespace staveline::desk {

struct PackingRequest {
    facts::VesselName vessel; ///< or:
    facts::LotName lot{};     ///< drawn beer
    Litres litres{0};
    std::optional<Co2Volumes> volumes;        ///< wanted; none: by the weight of the sugar
    std::optional<GramsPerLitre> sugarWeight; ///< in place of volumes, not of wort or young beer
    std::string sugar = "sucrose";
    Plato extract{12}; ///< real, of wort or young beer
    finishing::Package package;
    std::string make;                                   ///< of the bottle; empty: not told
    std::optional<SpecificGravity> gravity{};           ///< measured today, beside what is on record
    std::optional<SpecificGravity> forced{};            ///< where a sample kept warm ended
    std::optional<Day> forcedOn{};                      ///< none: today
    std::optional<finishing::ResidualKnown> residual{}; ///< none: by the warmth of the vessel
    std::string fruit{};                                ///< whose sugar may still be in it; empty: none
    double fruitKgPerLitre = 0;
    std::optional<std::string> override{}; ///< the reason
    std::optional<Celsius> keg{};          ///< tell the pressure for a keg at this temperature
};
struct PackingAnswer {
    facts::VesselName vessel; ///< or the lot
    Litres litres{0};
    Co2Volumes wanted{0};
    finishing::PrimingSugar sugar;
    finishing::Residual residual;
    finishing::Priming priming;
    Millilitres size{0};
    Celsius warmest{0};
    finishing::GuardVerdict verdict;
    std::optional<finishing::FruitEffect> fruit;
    std::optional<GaugePressure> keg;
    std::vector<Message> words; ///< priming, pressure, the guard's answer with its reasons
    std::vector<Message> cautions;
};

/// One object, for machines.
[[nodiscard]] std::string toJson(const PackingAnswer& answer);

} // namespace staveline::desk
