// SPDX-License-Identifier: GPL-3.0-or-later
#include "brewing/hops.h"

#include "quantity/constants.h"

#include <algorithm>
#include <cmath>

namespace staveline::brewing {

double tinsethUtilisation(SpecificGravity gravity, Minutes boiled) {
    const double bigness = 1.65 * std::pow(0.000125, gravity.sg - 1);
    const double time = -std::expm1(-0.04 * boiled.min) / 4.15;
    return bigness * time;
}

Ibu tinsethIbu(Grams hops, Share alpha, Litres volume, SpecificGravity gravity, Minutes boiled) {
    return {1000 * hops.g * alpha.of1 * tinsethUtilisation(gravity, boiled) / volume.l};
}

Grams hopsFor(Ibu wanted, Share alpha, Litres volume, SpecificGravity gravity, Minutes boiled) {
    if (wanted.ibu <= 0)
        return {0};
    return {wanted / tinsethIbu({1}, alpha, volume, gravity, boiled)};
}

double alphaPerIso(Minutes boiled) {
    // Two first-order reactions in a row; what no boil makes counts as a minute's.
    namespace k = constants::hop;
    const double minutes = std::max(1.0, boiled.min);
    const double left = std::exp(-k::isomerised100 * minutes);
    const double made =
        k::isomerised100 / (k::degraded100 - k::isomerised100) * (left - std::exp(-k::degraded100 * minutes));
    return left / made;
}

} // namespace staveline::brewing
