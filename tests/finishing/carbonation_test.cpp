// SPDX-License-Identifier: GPL-3.0-or-later
#include "finishing/carbonation.h"

#include "support/property.h"

#include <cmath>
#include <limits>

namespace staveline::finishing {

TEST_CASE("The gauge leaves out the air, the absolute pressure counts it", "[carbonation]") {
    CHECK(absolute({0}).barAbsolute == Approx(1.01325));
    CHECK(gauge({1.01325}).barOverAir == Approx(0).margin(1e-12));
    CHECK(absolute({2.5}).barAbsolute - absolute({1.5}).barAbsolute == Approx(1));
}

TEST_CASE("Pressure and volumes are inverses, and a keg set so holds what was wanted", "[carbonation]") {
    CHECK_PROPERTY("dissolved after equilibrium", [] {
        const Co2Volumes wanted{*rc::gen::inRange(20, 600) / 100.0};
        const Celsius at{*rc::gen::inRange(-10, 400) / 10.0};
        RC_ASSERT(std::abs(dissolved(equilibrium(wanted, at), at).vol - wanted.vol) < 1e-9);
        RC_ASSERT(std::abs(dissolved(absolute(setPoint(wanted, at)), at).vol - wanted.vol) < 1e-9);
        RC_ASSERT(std::abs(volumesOf(gramsOf(wanted)).vol - wanted.vol) < 1e-12);
    });
}

TEST_CASE("A warmer bottle has more pressure", "[carbonation]") {
    CHECK_PROPERTY("order of pressures", [] {
        const Co2Volumes all{*rc::gen::inRange(100, 600) / 100.0};
        const Celsius at{*rc::gen::inRange(0, 390) / 10.0};
        RC_ASSERT(bottlePressure(all, at) < bottlePressure(all, {at.c + 1}));
    });
}

TEST_CASE("What is left in beer comes from a measurement, a keg's head or the warmest days", "[carbonation]") {
    const auto measured = residualCo2(Co2Volumes{.6}).value();
    CHECK(measured.value == Co2Volumes{.6});
    CHECK(measured.measured);
    // DeLange's law by hand: (14.504 + 14.696) psi x (0.01821 + 0.090115 exp(-7.2 / 43.11)) - 0.003342
    const auto keg = residualCo2(UnderHead{{1}, {4}}).value();
    CHECK(keg.value.vol == Approx(2.75).margin(.01));
    CHECK(keg.measured);
    const auto air = residualCo2(UnderAir{{21}}).value();
    CHECK(air.value.vol == Approx(.8153).margin(1e-3));
    CHECK(air.least == Co2Volumes{.3});
    CHECK_FALSE(air.measured);
}

TEST_CASE("What CO2 cannot be is refused at its field", "[carbonation]") {
    CHECK(residualCo2(Co2Volumes{-.1}).error().path == "/residual_vol");
    CHECK(residualCo2(Co2Volumes{9}).error().path == "/residual_vol");
    CHECK(residualCo2(UnderHead{{-1}, {4}}).error().path == "/head_bar");
    CHECK(residualCo2(UnderHead{{1}, {90}}).error().path == "/head_c");
    CHECK(residualCo2(UnderAir{{std::numeric_limits<double>::quiet_NaN()}}).error().path == "/temperature_c");
}

} // namespace staveline::finishing
