// SPDX-License-Identifier: GPL-3.0-or-later
// Outside check of the variance code: NIST StRD, analysis of variance. Data and certified values from memory; that the
// data give the certified values to so many digits confirms both.
#include "support/catch.h"
#include "tasting/anova.h"

#include <cmath>

using namespace staveline;
using namespace staveline::tasting;

namespace {

/// Simon & Lesage (1989) construction: nine treatments of 21 values each, a constant part plus 0.4, 0.3, 0.5, 0.3, ...
/// and within a treatment one value at that level, then 0.1 below and above in turn.
std::vector<std::vector<double>> simonLesage(double constant) {
    std::vector<std::vector<double>> groups;
    for (int treatment = 0; treatment < 9; ++treatment) {
        const int tenths = treatment == 0 ? 4 : treatment % 2 == 1 ? 3 : 5;
        auto& group = groups.emplace_back();
        for (int i = 0; i < 21; ++i)
            group.push_back(constant + (tenths + (i == 0 ? 0 : i % 2 == 1 ? -1 : 1)) / 10.0);
    }
    return groups;
}

void checkSimonLesage(double constant, double relative) {
    const auto table = oneWayAnova(simonLesage(constant));
    CHECK(table.dfBetween == 8);
    CHECK(table.dfWithin == 180);
    CHECK(table.ssBetween == Approx(1.68).epsilon(relative));
    CHECK(table.msBetween() == Approx(.21).epsilon(relative));
    CHECK(table.ssWithin == Approx(1.80).epsilon(relative));
    CHECK(table.msWithin() == Approx(.01).epsilon(relative));
    CHECK(table.f() == Approx(21).epsilon(relative));
    CHECK(table.rSquared() == Approx(.482758620689655).epsilon(relative));
    CHECK(std::sqrt(table.msWithin()) == Approx(.1).epsilon(relative));
}

} // namespace

TEST_CASE("NIST SiRstv: resistivity of silicon, five instruments") {
    const auto table = oneWayAnova({{196.3052, 196.1240, 196.1890, 196.2569, 196.3403},
                                    {196.3042, 196.3825, 196.1669, 196.3257, 196.0422},
                                    {196.1303, 196.2005, 196.2889, 196.0343, 196.1811},
                                    {196.2795, 196.1748, 196.1494, 196.1485, 195.9885},
                                    {196.2119, 196.1051, 196.1850, 196.0052, 196.2090}});
    CHECK(table.dfBetween == 4);
    CHECK(table.dfWithin == 20);
    CHECK(table.ssBetween == Approx(5.11462616000000e-02).epsilon(1e-11));
    CHECK(table.msBetween() == Approx(1.27865654000000e-02).epsilon(1e-11));
    CHECK(table.ssWithin == Approx(2.16636560000000e-01).epsilon(1e-11));
    CHECK(table.msWithin() == Approx(1.08318280000000e-02).epsilon(1e-11));
    CHECK(table.f() == Approx(1.18046237440255e+00).epsilon(1e-11));
    CHECK(table.rSquared() == Approx(1.90999039051129e-01).epsilon(1e-11));
    CHECK(std::sqrt(table.msWithin()) == Approx(1.04076068334656e-01).epsilon(1e-11));
}

TEST_CASE("NIST SmLs01, 04 and 07: the same table on a growing constant part") {
    checkSimonLesage(1, 1e-13);
    checkSimonLesage(1e6, 1e-8);  // the data themselves carry 10 digits of the scatter
    checkSimonLesage(1e12, 1e-2); // and here 4
}
