// SPDX-License-Identifier: GPL-3.0-or-later
// Real extract and alcohol from gravities against published beers and an independent route.
#include "quantity/density.h"

#include "support/catch.h"

#include <array>

namespace staveline {

TEST_CASE("Published: means of 384 brews in three sets") {
    // Cutaia, Reid & Speers 2009, J. Inst. Brew. 115:318, table of data-set means: original extract, alcohol % w/w,
    // real and apparent extract. The paper finds Balling's real extract low by 0.1-0.2 P.
    struct Set {
        double original, alcohol, real, apparent;
    };
    for (const auto& set : {Set{14.08, 4.72, 5.28, 3.11}, Set{11.34, 3.82, 3.80, 2.01}, Set{17.67, 6.56, 5.38, 2.45}}) {
        INFO("OE " << set.original);
        const auto real = realExtract({set.original}, {set.apparent});
        CHECK(real.p == Approx(set.real).margin(0.2));
        CHECK(real.p < set.real);
        CHECK(alcoholByWeight({set.original}, {set.apparent}) == Approx(set.alcohol).margin(0.15));
        CHECK(apparentExtract({set.original}, {set.real}).p == Approx(set.apparent).margin(0.25));
    }
}

TEST_CASE("Published: real against apparent attenuation of 532 brews") {
    // The same paper: real over apparent degree of fermentation is 0.814 + 0.000862 OE.
    for (double original = 8; original <= 18; original += 1) {
        const double apparent = 0.2 * original;
        const double ratio = (original - realExtract({original}, {apparent}).p) / (original - apparent);
        CHECK(ratio == Approx(0.814 + 0.000862 * original).margin(0.011));
    }
}

TEST_CASE("Published: 1.050 to 1.010") {
    // Worked example of an encyclopedia article on final gravity (secondary): 5.23 % vol, accepted within 0.1.
    CHECK(alcoholByVolume(toPlato({1.050}), toPlato({1.010})).pct == Approx(5.23).margin(0.1));
}

TEST_CASE("Worked by hand: real extract and alcohol") {
    // From the printed formulas; OE, AE, RE, % w/w, % vol.
    struct Beer {
        double original, apparent, real, weight, volume;
    };
    for (const auto& beer :
         {Beer{12, 2.5, 4.218, 4.015, 5.13}, Beer{12, 3, 4.627, 3.803, 4.87}, Beer{10, 2, 3.446, 3.344, 4.26},
          Beer{14, 1.5, 3.760, 5.341, 6.80}, Beer{12, 0, 2.170, 5.071, 6.41}}) {
        INFO("OE " << beer.original << ", AE " << beer.apparent);
        CHECK(realExtract({beer.original}, {beer.apparent}).p == Approx(beer.real).margin(1e-3));
        CHECK(alcoholByWeight({beer.original}, {beer.apparent}) == Approx(beer.weight).margin(1e-3));
        CHECK(alcoholByVolume({beer.original}, {beer.apparent}).pct == Approx(beer.volume).margin(0.01));
    }
}

TEST_CASE("Published: Tabarie's rule and OIML R 22 give the same beer") {
    // Tabarie: the gravity of beer is that of its alcohol in water plus that of its real extract, less one. With the
    // density of OIML R 22 this is a route to the apparent extract that shares nothing with Balling's alcohol formula.
    for (const double original : {8.0, 10.0, 12.0, 14.0, 16.0})
        for (const double left : {-0.02, 0.1, 0.25, 0.4}) {
            const Plato apparent{original * left};
            INFO("OE " << original << ", AE " << apparent.p);
            const double alcohol = alcoholByWeight({original}, apparent) / 100;
            const double ofAlcohol = ethanolWaterDensity(alcohol) / ethanolWaterDensity(0);
            const double ofExtract = toGravity(realExtract({original}, apparent)).sg;
            CHECK(ofAlcohol + ofExtract - 1 == Approx(toGravity(apparent).sg).margin(1e-3));
        }
}

TEST_CASE("Published: alcohol by volume by two routes") {
    // % vol from % w/w by the beer's own gravity, and by the ethanol-water table of OIML R 22 (no extract in it).
    for (const double original : {8.0, 12.0, 16.0}) {
        const Plato apparent{0.1 * original};
        const double byTable = volumeFromMassShare(alcoholByWeight({original}, apparent) / 100).pct;
        CHECK(alcoholByVolume({original}, apparent).pct == Approx(byTable).epsilon(0.02));
    }
}

} // namespace staveline
