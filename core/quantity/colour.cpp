// SPDX-License-Identifier: GPL-3.0-or-later
#include "quantity/colour.h"

#include <cmath>

namespace staveline {
namespace {

constexpr double ebcPerSrm = 25.0 / 12.7;          // both scale the absorbance at 430 nm
constexpr double mcuPerKgLovibondPerLitre = 8.345; // pounds per US gallon in 1 kg/L

/// Malt colour in degrees Lovibond. Sugar of 0 EBC brings nothing; the scales' offset belongs to malt.
double lovibond(Ebc malt) {
    return malt.ebc > 0 ? (toSrm(malt) + 0.76) / 1.3546 : 0.0;
}

} // namespace

double toSrm(Ebc colour) {
    return colour.ebc / ebcPerSrm;
}

Ebc fromSrm(double srm) {
    return {srm * ebcPerSrm};
}

Ebc wortColour(std::span<const ColouredMass> grist, Litres volume) {
    double kgLovibond = 0;
    for (const auto& part : grist)
        kgLovibond += part.mass.kg * lovibond(part.colour);
    const double mcu = mcuPerKgLovibondPerLitre * kgLovibond / volume.l;
    return {ebcPerSrm * 1.4922 * std::pow(mcu, 0.6859)};
}

} // namespace staveline
