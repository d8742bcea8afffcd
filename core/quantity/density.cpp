// SPDX-License-Identifier: GPL-3.0-or-later
#include "quantity/density.h"

#include <array>
#include <cmath>

namespace staveline {
namespace {

/// Value and slope of the ASBC cubic, % w/w against SG 20/20. It rises everywhere, so its inverse is single-valued.
struct Line {
    double value, slope;
};
Line asbc(double s) {
    return {((135.997 * s - 630.272) * s + 1111.14) * s - 616.868, (407.991 * s - 1260.544) * s + 1111.14};
}

// OIML R 22 (1975), general formula at 20 C: coefficients of powers of the mass share [kg/m3].
constexpr std::array ethanolWater = {998.20123,   -192.9769495, 389.1238958, -1668.103923, 13522.15441, -88292.78388,
                                     306287.4042, -613838.1234, 747017.2998, -547846.1354, 223446.0334, -39032.85426};

} // namespace

Plato toPlato(SpecificGravity gravity) {
    return {asbc(gravity.sg).value};
}

SpecificGravity toGravity(Plato extract) {
    double s = 1 + 0.004 * extract.p;
    for (int i = 0; i < 50; ++i) {
        const Line line = asbc(s);
        const double step = (line.value - extract.p) / line.slope;
        s -= step;
        if (std::abs(step) < 1e-14)
            break;
    }
    return {s};
}

GramsPerLitre extractPerLitre(Plato extract) {
    return {10 * extract.p * toGravity(extract).sg * waterDensity20};
}

GramsPerLitre extractModel(Plato extract) {
    const double gravity = 1 + extract.p / (258.6 - 227.1 * extract.p / 258.2);
    return {10 * extract.p * gravity * 0.9982};
}

Plato platoFromExtract(Kilograms extract, Litres volume) {
    const double perLitre = 100 * extract.kg / (volume.l * waterDensity20);
    // Gravity moves slowly with Plato: each pass shrinks the error at least fivefold below 60 P.
    Plato p{perLitre};
    for (int i = 0; i < 40; ++i)
        p = {perLitre / toGravity(p).sg};
    return p;
}

Plato realExtract(Plato original, Plato apparent) {
    return 0.1808 * original + 0.8192 * apparent;
}

double alcoholByWeight(Plato original, Plato apparent) {
    return (original - realExtract(original, apparent)).p / (2.0665 - 0.010665 * original.p);
}

PercentVol alcoholByVolume(Plato original, Plato apparent) {
    constexpr double ethanolGravity = 789.24 / 998.20; // 20/20
    return {alcoholByWeight(original, apparent) * toGravity(apparent).sg / ethanolGravity};
}

Plato apparentExtract(Plato original, Plato real) {
    return (real - 0.1808 * original) / 0.8192;
}

double ethanolWaterDensity(double massShare) {
    double density = 0;
    for (auto a = ethanolWater.rbegin(); a != ethanolWater.rend(); ++a)
        density = density * massShare + *a;
    return density;
}

PercentVol volumeFromMassShare(double massShare) {
    return {100 * massShare * ethanolWaterDensity(massShare) / ethanolWaterDensity(1)};
}

} // namespace staveline
