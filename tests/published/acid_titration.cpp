// SPDX-License-Identifier: GPL-3.0-or-later
// Titration arithmetic and equivalents. End point pH 8.2 and degassed beer: ASBC Methods of Analysis, Beer-8 (read in
// a summary). Equivalent weights from IUPAC atomic masses.
#include "quantity/acid_base.h"
#include "support/catch.h"

using namespace staveline;

namespace {

/// Molar mass of CxHyOz and sulphur [g/mol], IUPAC abridged atomic masses 2021.
constexpr double molarMass(int c, int h, int o, int s = 0) {
    return c * 12.011 + h * 1.008 + o * 15.999 + s * 32.06;
}

} // namespace

TEST_CASE("Millilitres of base become grams per litre", "[published]") {
    struct Row {
        double base, normality, beer, asLactic;
    };
    // mL x N x 90.08 / mL, the arithmetic of the method worked by hand.
    for (const Row row :
         {Row{5, .1, 15, 3.003}, Row{15, .1, 25, 5.405}, Row{10, .1, 20, 4.504}, Row{8.33, .1, 10, 7.503}})
        CHECK(titration(row.base, row.normality, row.beer).gPerL == Approx(row.asLactic).margin(.001));
}

TEST_CASE("Equivalent weights are molar masses over replaceable hydrogen", "[published]") {
    CHECK(equivalentWeight(Acid::lactic) == Approx(molarMass(3, 6, 3)).epsilon(1e-4));
    CHECK(equivalentWeight(Acid::acetic) == Approx(molarMass(2, 4, 2)).epsilon(1e-4));
    CHECK(equivalentWeight(Acid::tartaric) == Approx(molarMass(4, 6, 6) / 2).epsilon(1e-4));
    CHECK(equivalentWeight(Acid::malic) == Approx(molarMass(4, 6, 5) / 2).epsilon(1e-4));
    CHECK(equivalentWeight(Acid::citric) == Approx(molarMass(6, 8, 7) / 3).epsilon(1e-4));
    CHECK(equivalentWeight(Acid::sulfuric) == Approx(molarMass(0, 2, 4, 1) / 2).epsilon(1e-3));
}

TEST_CASE("A gram of another acid counts as lactic by its equivalents", "[published]") {
    const auto one = [](Acid acid) { return asLactic({1}, acid).gPerL; };
    CHECK(one(Acid::lactic) == 1);
    CHECK(one(Acid::acetic) == Approx(1.5000).margin(1e-4));
    CHECK(one(Acid::tartaric) == Approx(1.2003).margin(1e-4));
    CHECK(one(Acid::malic) == Approx(1.3436).margin(1e-4));
    CHECK(one(Acid::citric) == Approx(1.4066).margin(1e-4));
    CHECK(one(Acid::sulfuric) == Approx(1.8368).margin(1e-4));
}

TEST_CASE("Acid worked out from a titration of pure acid is the acid itself", "[published]") {
    // 5 g/L lactic acid: 20 mL hold 0.1 g, 1.1101 mmol, 11.101 mL of 0.1 N base.
    CHECK(titration(5 / 90.078 * 20 / .1, .1, 20).gPerL == Approx(5));
}
