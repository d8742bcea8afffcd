// SPDX-License-Identifier: GPL-3.0-or-later
// Thresholds and steps of taste against published values.
#include "forward/parameters.h"
#include "support/catch.h"

using namespace staveline;
using namespace staveline::forward;
using namespace staveline::tasting;

namespace {

void checkWithin(double value, double low, double high) {
    CHECK(value >= low);
    CHECK(value <= high);
}

} // namespace

TEST_CASE("Taste thresholds lie in their published ranges", "[published]") {
    const ScoreParameters p = builtInParameters().score;
    // Acetic acid in beer 0.09-0.175 g/L (several authors; 0.130 the middle one).
    checkWithin(p.aceticThreshold, .09, .175);
    CHECK(p.aceticThreshold == .130);
    // Lactic acid added to beer 0.4 g/L (Briggs et al. 2004, Brewing: Science and Practice, quoted) to 0.7 g/L.
    checkWithin(p.lacticThreshold, .4, .7);
    // 4-ethylphenol 0.30 mg/L (Dusart et al. 2023, J. Am. Soc. Brew. Chem. 81:357, quoted).
    CHECK(p.ethylPhenolThreshold == .30);
}

TEST_CASE("One difference threshold of acid is about one point", "[published]") {
    // 21 % of the titratable acidity, 1.56 g/L at 7.4 (J. Food Sci. 1963). What one just tastes must show in the score,
    // and not as several points.
    const double step = acidityScore({7.4 + 1.56}, {0}, {5}) - acidityScore({7.4}, {0}, {5});
    checkWithin(step, .7, 1.5);
}

TEST_CASE("Sourness grows with the exponents found for acids in water", "[published]") {
    // 0.6-0.85: Moskowitz 1971 and Makhlouf & Blum 1972, from memory.
    checkWithin(builtInParameters().score.acidityExponent, .6, .85);
}

TEST_CASE("A step of viscosity one just feels is 9.3 %", "[published]") {
    // J. Texture Stud. 2017, 48:463 (abstract).
    CHECK(builtInParameters().score.viscosityStep == Approx(1.093).margin(.001));
}
