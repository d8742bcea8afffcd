// SPDX-License-Identifier: GPL-3.0-or-later
// What a sized brew has to say for itself: where it does not fit, what may go wrong, what is dangerous. Private to the
// room. The limits have rows in resources/data/rules.csv.
#pragma once

#include "brewing/brew_plan.h"
#include "brewing/brew_volumes.h"
#include "brewing/mash_water.h"

namespace staveline {

inline constexpr double glucanLimit = .15;    ///< glucan-rich grain, share of the grist that slows the run-off
inline constexpr double ryeLimit = .20;       ///< the same for rye
inline constexpr double glucanRich = .012;    ///< beta-glucan from which a grain counts as glucan-rich [kg/kg]
inline constexpr double ryeLike = 1.0;        ///< arabinoxylan from which a grain counts as rye [g/L at 12 P]
inline constexpr double starchLimit = .02;    ///< uncut starch, share
inline constexpr double lowPower = 100;       ///< enzyme power [WK]
inline constexpr double headspaceLimit = .85; ///< fullest a kettle or fermenter should be
inline constexpr double thickestMash = 1.8;   ///< [L/kg]
inline constexpr double gasPerHexose = .241;  ///< CO2 at 20 C from a gram of hexose [L/g]
inline constexpr Celsius scalding{60};        ///< from here on seconds burn
inline constexpr Celsius gelatinising{52};    ///< below it a rest breaks glucan down and converts little

/// Everything a note may look at.
struct PlanFacts {
    const BrewInput& input;
    const RefillBeer& beer;
    const Equipment& equipment;
    const BatchNeed& need;
    const BrewVolumes& volumes;
    const MashWater& water;
    MashLoad load;
};

[[nodiscard]] std::vector<Message> planFindings(const PlanFacts& facts);
[[nodiscard]] std::vector<Message> planCautions(const PlanFacts& facts);

/// Water beyond what the kettle can take before the boil; 0 when some is left to sparge with.
[[nodiscard]] Litres waterTooMuch(const PlanFacts& facts);
/// Glucan-rich grain and rye against their limits, together; from 1 on the run-off is likely slow.
[[nodiscard]] double runOffRisk(const BrewInput& input);

} // namespace staveline
