// SPDX-License-Identifier: GPL-3.0-or-later
#include "brewing/as_brewed.h"

#include "quantity/constants.h"
#include "quantity/density.h"

#include <algorithm>
#include <cmath>

namespace staveline::brewing {

bool isWeighed(const Recipe& recipe) {
    return !recipe.grist.empty() && std::all_of(recipe.grist.begin(), recipe.grist.end(),
                                                [](const GristPart& part) { return part.mass && part.mass->kg > 0; });
}

Kilograms asScaleReads(Kilograms mass) {
    const double steps = mass.kg < 10 ? 1000 : 100; // in a kilogram
    return {std::round(mass.kg * steps) / steps};
}

Recipe asWeighed(Recipe recipe) {
    if (!isWeighed(recipe))
        return recipe;
    Kilograms all{0};
    for (const GristPart& part : recipe.grist)
        all += *part.mass;
    constexpr double shown = 5e-4; // half of the last decimal of a share: scales read no finer
    const bool other = std::any_of(recipe.grist.begin(), recipe.grist.end(), [&](const GristPart& part) {
        return std::abs(*part.mass / all - part.share.of1) >= shown;
    });
    if (other)
        for (GristPart& part : recipe.grist)
            part.share = Share{*part.mass / all};
    return recipe;
}

Recipe withoutWeights(Recipe recipe) {
    for (GristPart& part : recipe.grist)
        part.mass.reset();
    return recipe;
}

std::optional<WonExtract> wonExtract(const BrewInput& brewed, const RefillBeer& beer, const Equipment& kit,
                                     Litres intoFermenter) {
    if (!isWeighed(brewed.recipe) || brewed.recipe.grist.size() != brewed.grist.size())
        return {};
    double mashed = 0, added = 0; // kg of extract
    for (std::size_t i = 0; i < brewed.grist.size(); ++i) {
        const ingredient::Grain& grain = brewed.grist[i].grain;
        (grain.mashed() ? mashed : added) += brewed.recipe.grist[i].mass->kg * grain.dryExtract();
    }
    const double possible = mashed * beer.conversion;
    const Plato gravity = brewed.recipe.originalGravity;
    if (!(possible > 0 && gravity.p > 0))
        return {};
    const double inKettle = extractPerLitre(gravity).gPerL * (intoFermenter + kit.kettleLoss).l / 1000;
    const double won = inKettle * (1 - brewed.recipe.sugarShare.of1) - added;
    const double gravityError = constants::brew::gravityError / (toGravity(gravity).sg - 1);
    const double off = std::hypot(gravityError, constants::brew::litresError, constants::brew::extractError);
    return WonExtract{{won / possible}, {off * inKettle / possible}};
}

RefillBeer withFinalGravity(const RefillBeer& beer, Plato originalGravity, Plato finalGravity,
                            const BrewParameters& parameters) {
    const double wanted = 10 * realExtract(originalGravity, finalGravity).p;
    const double is = 10 * realExtract(originalGravity, beer.finalGravity).p;
    const double carbohydrate = beer.beer.carbohydrate();
    if (carbohydrate <= 0)
        return beer;
    const double most = carbohydrate + beer.beer.ethanol / parameters.ethanolPerHexose;
    const double factor = std::clamp(carbohydrate + wanted - is, 0.0, most) / carbohydrate;
    RefillBeer measured = beer;
    Composition& b = measured.beer;
    const double hexoseBefore = b.sugar + b.dextrin + b.residue;
    for (auto pool : {&Composition::sugar, &Composition::dextrin, &Composition::residue})
        b.*pool *= factor;
    const double fermented = hexoseBefore - (b.sugar + b.dextrin + b.residue);
    b.ethanol = std::max(0.0, b.ethanol + parameters.ethanolPerHexose * fermented);
    measured.hexoseTaken += fermented;
    measured.finalGravity = apparentExtract(originalGravity, {(is + b.carbohydrate() - carbohydrate) / 10});
    measured.alcohol = b.alcohol();
    return measured;
}

} // namespace staveline::brewing
