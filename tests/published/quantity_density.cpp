// SPDX-License-Identifier: GPL-3.0-or-later
// Density scales against published tables. The source stands beside each; "from memory" where no copy was seen.
#include "quantity/density.h"

#include "support/catch.h"

#include <utility>
#include <vector>

namespace staveline {

using Rows = std::vector<std::pair<double, double>>;

TEST_CASE("Published: Plato and ICUMSA sucrose tables, 20/20") {
    // Plato 1900 and the ICUMSA tables, % w/w against SG 20/20; from memory.
    for (const auto& [plato, gravity] : Rows{{10, 1.04003}, {12, 1.0484}, {15, 1.0611}, {20, 1.08295}, {25, 1.1057}}) {
        INFO(plato << " P");
        CHECK(toGravity({plato}).sg == Approx(gravity).margin(1e-4));
        CHECK(toPlato({gravity}).p == Approx(plato).margin(0.025));
    }
}

TEST_CASE("Published: Brix table, 20 C") {
    // USDA-type Brix table as quoted in a brewers' discussion of grain specifications.
    CHECK(toGravity({8.4}).sg == Approx(1.03344).margin(1e-4));
    CHECK(toGravity({8.9}).sg == Approx(1.03549).margin(1e-4));
}

TEST_CASE("Published: total extract in g/L by relative density 20/20") {
    // Table of the total extract of wine (state standard GOST, table 1; the same table is OIV-MA-AS2-03B, table I).
    const Rows table = {{1.002, 5.1},   {1.006, 15.4},  {1.010, 25.8},  {1.015, 38.8},  {1.020, 51.7},  {1.025, 64.7},
                        {1.030, 77.7},  {1.035, 90.7},  {1.040, 103.7}, {1.043, 111.6}, {1.048, 124.6}, {1.050, 129.8},
                        {1.055, 142.9}, {1.060, 155.9}, {1.065, 169.0}, {1.070, 182.1}, {1.074, 192.6}, {1.079, 205.8}};
    for (const auto& [gravity, extract] : table) {
        INFO("SG " << gravity);
        CHECK(extractPerLitre(toPlato({gravity})).gPerL == Approx(extract).margin(0.15));
    }
}

TEST_CASE("Published: Lincoln's quadratic agrees with the ASBC cubic") {
    // Lincoln equation, an independent fit to the same tables; from memory.
    for (double s = 1.0; s <= 1.1; s += 0.002) {
        INFO("SG " << s);
        CHECK(toPlato({s}).p == Approx(668.72 * s - 463.37 - 205.347 * s * s).margin(0.02));
    }
}

TEST_CASE("Published: the ASBC cubic has its coefficients right") {
    // Values of the printed polynomial (A. J. deLange in issue 5694 of a brewers' digest), worked out by hand; -0.003
    // at water is its own error.
    for (const auto& [gravity, plato] :
         Rows{{1.000, -0.003}, {1.010, 2.561}, {1.020, 5.081}, {1.040, 9.994}, {1.060, 14.741}, {1.100, 23.769}})
        CHECK(toPlato({gravity}).p == Approx(plato).margin(6e-4));
}

TEST_CASE("Published: sucrose brings 46 points for a pound in a US gallon") {
    // Palmer, How to Brew, "Extraction and maximum yield": 46 points per pound per gallon.
    const auto plato = platoFromExtract({0.45359237}, {3.785411784});
    CHECK(1000 * (toGravity(plato).sg - 1) == Approx(46).margin(0.4));
}

TEST_CASE("Worked by hand: extract of a grist into gravity") {
    // 5.00 kg at 80.5 % dry and 4.5 % moisture, 0.80 kg at 83.0 % and 5.0 %, of which 80 % is won into 23.0 L at 20 C.
    const double most = 5.00 * 0.955 * 0.805 + 0.80 * 0.95 * 0.83;
    CHECK(most == Approx(4.4747).margin(1e-4));
    const auto plato = platoFromExtract({0.8 * most}, {23});
    CHECK(plato.p == Approx(14.71).margin(0.02));
    CHECK(toGravity(plato).sg == Approx(1.0599).margin(1e-4));
}

TEST_CASE("Published: density of ethanol and water at 20 C") {
    // Perry's Chemical Engineers' Handbook, 7th ed., table of densities of ethanol-water mixtures at 20 C [kg/L]
    // against % w/w: another set of measurements than the one behind OIML R 22. Rows above 12 % from memory.
    const Rows table = {{0, 0.99823},  {1, 0.99636},  {2, 0.99453},  {3, 0.99275},  {4, 0.99103},  {5, 0.98938},
                        {6, 0.98780},  {7, 0.98627},  {8, 0.98478},  {9, 0.98331},  {10, 0.98187}, {11, 0.98047},
                        {12, 0.97910}, {20, 0.96864}, {40, 0.93518}, {60, 0.89113}, {80, 0.84344}, {100, 0.78934}};
    for (const auto& [weight, density] : table) {
        INFO(weight << " % w/w");
        CHECK(ethanolWaterDensity(weight / 100) == Approx(1000 * density).margin(0.15));
    }
}

TEST_CASE("Published: OIML R 22 itself") {
    // OIML R 22 (1975): water 998.20 kg/m3, ethanol 789.24 kg/m3; 40 % vol at 948.05 kg/m3 from memory.
    CHECK(ethanolWaterDensity(0) == Approx(998.20).margin(0.005));
    CHECK(ethanolWaterDensity(1) == Approx(789.24).margin(0.005));
    CHECK(ethanolWaterDensity(0.332996) == Approx(948.05).margin(0.01));
    CHECK(volumeFromMassShare(0.332996).pct == Approx(40).margin(1e-3));
}

TEST_CASE("Published: a coarse table of mass against volume per cent") {
    // Water-ethanol table of dbaril, 15.6 C: 5 % w/w is 6.2 % vol, 10 is 12.4, 20 is 24.5.
    CHECK(volumeFromMassShare(0.05).pct == Approx(6.2).margin(0.1));
    CHECK(volumeFromMassShare(0.10).pct == Approx(12.4).margin(0.1));
    CHECK(volumeFromMassShare(0.20).pct == Approx(24.5).margin(0.1));
}

} // namespace staveline
