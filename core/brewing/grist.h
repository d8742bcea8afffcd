// SPDX-License-Identifier: GPL-3.0-or-later
// What a grist brings into the mash, summed over its parts: once at mash-in, once with the late grain.
#pragma once

#include "brewing/glucan.h"
#include "brewing/mash_kinetics.h"
#include "brewing/phenol_release.h"

#include <span>

namespace staveline::brewing {

struct GristSums {
    struct Portion {
        MashKinetics::Portion starch{0, 0};
        PhenolPortion phenols;
        GlucanPortion glucan;
    } first, late;
    bool hasLate = false;
    double extract = 0;           ///< kg/kg as is, in the scale the phenol and glucan models were fitted with
    double ownExtract = 0;        ///< share of the extract from grain with a fermentability of its own (caramel, roast)
    double ownFermentability = 0; ///< real, of that share
    double ferulicBound = 0;      ///< mg/kg
    double arabinoxylan = 0;      ///< g/L at 12 P
    double lactic = 0;            ///< lactic acid, kg/kg
};

/// Total for shares that sum to 1.
[[nodiscard]] GristSums sumsOf(std::span<const BrewInput::Part> grist);

/// Enzyme power of the grist [WK] against the part that needs it; infinite where nothing needs converting.
[[nodiscard]] double convertingPower(std::span<const BrewInput::Part> grist);

} // namespace staveline::brewing
