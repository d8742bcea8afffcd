// SPDX-License-Identifier: GPL-3.0-or-later
#include "brewing/primary.h"

#include "quantity/constants.h"

#include <algorithm>

namespace staveline::brewing {
namespace {

namespace k = constants::primary;

/// Accessible share of the dextrin a yeast leaves behind.
double accessible(double share, double taken) {
    if (taken >= 1)
        return k::leastAccessible;
    return std::clamp((share - k::glucoamylaseTaste * taken) / (1 - taken), k::leastAccessible, 1.);
}

} // namespace

Attenuation attenuate(const WortHexose& wort, const ingredient::Yeast& yeast, Plato original,
                      const BrewParameters& parameters) {
    const double maltose = wort.maltose * yeast.takesMaltose;
    const double maltotriose = wort.maltotriose * yeast.takesMaltotriose;
    const double dextrin = wort.dextrin * yeast.takesDextrin;
    const double maltotrioseLeft = wort.maltotriose - maltotriose, dextrinLeft = wort.dextrin - dextrin;
    const double open = accessible(parameters.accessibleDextrin, yeast.takesDextrin);
    const double strength = original.p / 12;

    Attenuation out;
    out.taken = wort.simple + maltose + maltotriose + dextrin;
    out.sugar = wort.maltose - maltose + parameters.maltotrioseForLactics * maltotrioseLeft;
    out.dextrin = (1 - parameters.maltotrioseForLactics) * maltotrioseLeft + open * dextrinLeft;
    out.residue = (1 - open) * dextrinLeft;
    out.glycerol = yeast.glycerolAt12P * strength;
    out.ethanol = parameters.ethanolPerHexose * (out.taken - (out.glycerol - k::everydayGlycerol * strength));
    return out;
}

void decarboxylate(double& free, double& vinyl, double share, double vinylPerAcid) {
    vinyl += share * free * vinylPerAcid;
    free -= share * free;
}

} // namespace staveline::brewing
