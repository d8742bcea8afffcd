// SPDX-License-Identifier: GPL-3.0-or-later
#include "brewing/primary.h"

#include <algorithm>

namespace staveline {
namespace {

constexpr double everydayGlycerol = 2.0; ///< g/L at 12 P; already inside the yield of ethanol and the other extract
constexpr double glucoamylaseTaste = .7; ///< a diastatic yeast takes mostly what is accessible
constexpr double leastAccessible = .15;

/// Accessible share of the dextrin a yeast leaves behind.
double accessible(double share, double taken) {
    if (taken >= 1)
        return leastAccessible;
    return std::clamp((share - glucoamylaseTaste * taken) / (1 - taken), leastAccessible, 1.);
}

} // namespace

Attenuation attenuate(const WortHexose& wort, const Yeast& yeast, Plato original, const BrewParameters& parameters) {
    const double maltose = wort.maltose * yeast.takesMaltose;
    const double maltotriose = wort.maltotriose * yeast.takesMaltotriose;
    const double dextrin = wort.dextrin * yeast.takesDextrin;
    const double maltotrioseLeft = wort.maltotriose - maltotriose, dextrinLeft = wort.dextrin - dextrin;
    const double open = accessible(parameters.phi, yeast.takesDextrin);
    const double strength = original.p / 12;

    Attenuation out;
    out.taken = wort.simple + maltose + maltotriose + dextrin;
    out.sugar = wort.maltose - maltose + parameters.sT * maltotrioseLeft;
    out.dextrin = (1 - parameters.sT) * maltotrioseLeft + open * dextrinLeft;
    out.residue = (1 - open) * dextrinLeft;
    out.glycerol = yeast.glycerolAt12P * strength;
    out.ethanol = parameters.ethanolPerHexose * (out.taken - (out.glycerol - everydayGlycerol * strength));
    return out;
}

void decarboxylate(double& free, double& vinyl, double share, double vinylPerAcid) {
    vinyl += share * free * vinylPerAcid;
    free -= share * free;
}

} // namespace staveline
