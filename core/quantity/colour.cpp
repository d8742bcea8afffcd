// SPDX-License-Identifier: GPL-3.0-or-later
#include "quantity/colour.h"

#include <algorithm>
#include <cmath>

namespace staveline {
namespace {

constexpr double ebcPerSrm = 25.0 / 12.7;
constexpr double srmPerLovibond = 1.3546, srmOffset = 0.76;
constexpr double mcuPerKgLovibondPerLitre = 8.345; // pounds per US gallon in 1 kg/L

} // namespace

double toSrm(Ebc colour) {
    return colour.ebc / ebcPerSrm;
}

Ebc ebcOfSrm(double srm) {
    return {srm * ebcPerSrm};
}

double toLovibond(Ebc malt) {
    return malt.ebc > 0 ? (toSrm(malt) + srmOffset) / srmPerLovibond : 0.0;
}

Ebc ebcOfLovibond(double lovibond) {
    return ebcOfSrm(std::max(srmPerLovibond * lovibond - srmOffset, 0.0));
}

Ebc wortColour(std::span<const ColouredMass> grist, Litres volume) {
    double kgLovibond = 0;
    for (const auto& part : grist)
        kgLovibond += part.mass.kg * toLovibond(part.colour);
    const double mcu = mcuPerKgLovibondPerLitre * kgLovibond / volume.l;
    return {ebcPerSrm * 1.4922 * std::pow(mcu, 0.6859)};
}

} // namespace staveline
