// SPDX-License-Identifier: GPL-3.0-or-later
#include "brewing/as_brewed.h"

#include "quantity/density.h"

#include <algorithm>

namespace staveline::brewing {

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
