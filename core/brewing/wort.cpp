// SPDX-License-Identifier: GPL-3.0-or-later
#include "brewing/wort.h"

#include "quantity/constants.h"
#include "quantity/density.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace staveline::brewing {
namespace {

constexpr std::array extractParts = {&MaltExtract::sugar,       &MaltExtract::glucose, &MaltExtract::maltose,
                                     &MaltExtract::maltotriose, &MaltExtract::dextrin, &MaltExtract::other};

/// Extract of grain that the mash does not change.
MaltExtract ownExtract(double fermentability) {
    constexpr double other = 1 - constants::mash::starchShare - constants::mash::sugarShare;
    const double fermentable = std::min(fermentability, 1 - other);
    return {.sugar = constants::wort::ownSimple * fermentable,
            .glucose = 0,
            .maltose = constants::wort::ownMaltose * fermentable,
            .maltotriose = constants::wort::ownMaltotriose * fermentable,
            .dextrin = 1 - other - fermentable,
            .other = other};
}

/// Moves extract between maltose and dextrin so that the logit of the fermentability shifts.
void calibrate(MaltExtract& extract, double logitShift) {
    if (logitShift == 0)
        return;
    const double before = extract.fermentable();
    const double odds = before / (1 - before) * std::exp(logitShift);
    const double moved = std::clamp(odds / (1 + odds) - before, -extract.maltose, extract.dextrin);
    extract.maltose += moved;
    extract.dextrin -= moved;
}

} // namespace

MaltWort maltWort(const StarchPools& mash, const GristSums& grist, double logitShift) {
    const MaltExtract mashed = extractOf(mash);
    const MaltExtract own = ownExtract(grist.ownFermentability);
    MaltWort wort;
    wort.conversion = (1 - grist.ownExtract) * mashed.total() + grist.ownExtract;
    wort.starch = std::max(0., mash.polymer);
    wort.opened = 1 - mash.granules;
    for (auto part : extractParts)
        wort.shares.*part = ((1 - grist.ownExtract) * mashed.*part + grist.ownExtract * own.*part) / wort.conversion;
    calibrate(wort.shares, logitShift);
    return wort;
}

WortHexose wortHexose(const MaltWort& malt, const BrewInput& input) {
    namespace h = constants::wort;
    const double extract = extractModel(input.recipe.originalGravity).gPerL;
    const double sugar = extract * input.recipe.sugarShare.of1;
    const double fermentable = input.sugar.ownRdf < 0 ? 1 : input.sugar.ownRdf;
    const double grist = extract - sugar;
    const auto& s = malt.shares;
    return {.simple = grist * (h::glucose * s.glucose + h::preformed * s.sugar) + sugar * fermentable * h::sucrose,
            .maltose = grist * h::maltose * s.maltose,
            .maltotriose = grist * h::maltotriose * s.maltotriose,
            .dextrin = h::dextrin * (grist * s.dextrin + sugar * (1 - fermentable)),
            .maltExtract = grist};
}

Plato gristGravity(const Recipe& recipe, double conversion) {
    return recipe.originalGravity * ((1 - recipe.sugarShare.of1) / std::max(constants::wort::poorest, conversion));
}

double gristPerLitre(const Recipe& recipe, double conversion, const GristSums& grist) {
    return extractModel(gristGravity(recipe, conversion)).gPerL / 1000 / grist.extract;
}

} // namespace staveline::brewing
