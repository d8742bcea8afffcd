// SPDX-License-Identifier: GPL-3.0-or-later
#include "brewing/grist.h"

#include "quantity/constants.h"

#include <algorithm>
#include <limits>

namespace staveline::brewing {

using ingredient::Grain;

namespace {

bool hasStarch(const Grain& grain) {
    return grain.ownRdf < 0;
}

void addPart(GristSums::Portion& portion, const Grain& grain, double share) {
    portion.starch.enzyme += share * grain.diastaticPowerWk / constants::grist::fullPower;
    if (hasStarch(grain))
        portion.starch.starch += share * grain.dryExtract();
    portion.phenols.ferulicFree += share * grain.ferulicFree;
    portion.phenols.ferulicBound += share * grain.ferulicBound;
    portion.phenols.coumaricFree += share * grain.coumaricFree;
    portion.phenols.coumaricBound += share * grain.coumaricBound;
    portion.phenols.esterase += share * grain.esterase;
    portion.glucan.glucanase += share * grain.glucanase;
    (grain.isRaw() ? portion.glucan.raw : portion.glucan.malt) += share * grain.betaGlucan * 1000;
}

/// From sums over the grist to what the starch model wants: starch summing to 1, enzymes per unit of mash.
void scale(GristSums& sums, double tunShare) {
    const double starch = sums.first.starch.starch + sums.late.starch.starch;
    const double enzyme = sums.first.starch.enzyme + sums.late.starch.enzyme;
    const double perMash = tunShare > 0 ? 1 / tunShare : 0;
    const double perUnit = enzyme > 0 ? std::min(perMash, constants::grist::mostPower / enzyme) : 0;
    for (auto* portion : {&sums.first, &sums.late}) {
        portion->starch.enzyme *= perUnit;
        if (starch > 0)
            portion->starch.starch /= starch;
    }
}

} // namespace

GristSums sumsOf(std::span<const BrewInput::Part> grist) {
    GristSums sums;
    double tunShare = 0, dryExtract = 0, ownFermentable = 0;
    for (const auto& [grain, share, late] : grist) {
        const double extract = share.of1 * grain.dryExtract();
        addPart(late ? sums.late : sums.first, grain, share.of1);
        sums.hasLate |= late;
        sums.extract += share.of1 * grain.extractAsIs;
        dryExtract += extract;
        if (!hasStarch(grain)) {
            sums.ownExtract += extract;
            ownFermentable += extract * grain.ownRdf;
        }
        if (grain.mashed()) // extract does not thin the enzymes in the tun
            tunShare += share.of1;
        sums.ferulicBound += share.of1 * grain.ferulicBound;
        sums.lactic += share.of1 * grain.lactic;
        sums.arabinoxylan += share.of1 * grain.arabinoxylan;
    }
    if (sums.ownExtract > 0)
        sums.ownFermentability = ownFermentable / sums.ownExtract;
    sums.ownExtract /= dryExtract;
    scale(sums, tunShare);
    return sums;
}

double convertingPower(std::span<const BrewInput::Part> grist) {
    double power = 0, needy = 0;
    for (const auto& part : grist) {
        power += part.share.of1 * part.grain.diastaticPowerWk;
        if (hasStarch(part.grain))
            needy += part.share.of1;
    }
    return needy > 0 ? power / needy : std::numeric_limits<double>::infinity();
}

} // namespace staveline::brewing
