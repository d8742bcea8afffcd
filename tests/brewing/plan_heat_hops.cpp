// SPDX-License-Identifier: GPL-3.0-or-later
// Heat balance and hops on their own; the published examples are in tests/published.
#include "brewing/heat.h"
#include "brewing/hops.h"
#include "quantity/constants.h"
#include "support/property.h"

#include <cmath>

using namespace staveline;
using namespace staveline::brewing;

TEST_CASE("strike temperatures, worked by hand") {
    // T + c (T - Tg)/r: 45 + .41 * 25/3 and 67 + .41 * 47/3
    CHECK(strikeTemperature({45}, {10}, {20}, {30}, {0}, {20}).c == Approx(48.42).margin(.005));
    CHECK(strikeTemperature({67}, {10}, {20}, {30}, {0}, {20}).c == Approx(73.42).margin(.005));
    CHECK(strikeTemperature({45}, {1}, {20}, {2.7}, {0}, {20}).c == Approx(48.80).margin(.005));
    // a cold tun of 6 kg water equivalent takes its part: 6 * 46/54 more
    CHECK(strikeTemperature({64}, {18}, {18}, {54}, {6}, {18}).c -
              strikeTemperature({64}, {18}, {18}, {54}, {0}, {18}).c ==
          Approx(6 * 46 / 54.));
}

TEST_CASE("an infusion, worked by hand") {
    // 45 to 66 C, 6 kg with 16.2 L, water at 99 C: 21 (2.46 + 16.2)/33
    CHECK(infusion({45}, {66}, {6}, {16.2}, {0}, {99}).l == Approx(11.87).margin(.005));
    CHECK(infusion({45}, {45}, {6}, {16.2}, {0}, {99}).l == 0);
}

TEST_CASE("mixing gives the temperature asked for") {
    CHECK_PROPERTY("heat balance", [] {
        const Kilograms malt{*rc::gen::inRange(10, 5000) / 10.0}, tun{*rc::gen::inRange(0, 500) / 10.0};
        const Litres water{malt.kg * *rc::gen::inRange(18, 80) / 10.0};
        const Celsius target{*rc::gen::inRange(350, 700) / 10.0}, cold{*rc::gen::inRange(0, 300) / 10.0};
        const Celsius strike = strikeTemperature(target, malt, cold, water, tun, cold);
        const double heat = constants::plan::maltHeat * malt.kg * cold.c + tun.kg * cold.c + water.l * strike.c;
        RC_ASSERT(std::abs(heat / mashHeat(malt, water, tun) - target.c) < 1e-9);
        const Celsius next{target.c + *rc::gen::inRange(0, 100) / 10.0};
        const Litres more = infusion(target, next, malt, water, tun, nearBoiling);
        const double mixed = mashHeat(malt, water, tun) * target.c + more.l * nearBoiling.c;
        RC_ASSERT(std::abs(mixed / mashHeat(malt, water + more, tun) - next.c) < 1e-9);
        RC_ASSERT(more.l >= 0);
    });
}

TEST_CASE("grams and bitterness invert each other") {
    CHECK_PROPERTY("inverse", [] {
        const Ibu wanted{*rc::gen::inRange(1, 800) / 10.0};
        const Share alpha{*rc::gen::inRange(5, 250) / 1000.0};
        const Litres volume{*rc::gen::inRange(100, 50000) / 10.0};
        const SpecificGravity gravity{1 + *rc::gen::inRange(0, 1000) / 10000.0};
        const Minutes boiled{*rc::gen::inRange(1, 1800) / 10.0};
        const Grams hops = hopsFor(wanted, alpha, volume, gravity, boiled);
        RC_ASSERT(std::abs(tinsethIbu(hops, alpha, volume, gravity, boiled).ibu - wanted.ibu) < 1e-9 * wanted.ibu);
        // longer boils and thinner worts give more
        RC_ASSERT(tinsethUtilisation(gravity, boiled + Minutes{1}) > tinsethUtilisation(gravity, boiled));
        RC_ASSERT(tinsethUtilisation(gravity + SpecificGravity{.001}, boiled) < tinsethUtilisation(gravity, boiled));
        RC_ASSERT(tinsethUtilisation(gravity, boiled) < 1.65 / 4.15);
    });
}

TEST_CASE("no boil, no bitterness; nothing wanted, no hops") {
    CHECK(tinsethUtilisation({1.05}, {0}) == 0);
    CHECK(hopsFor({0}, {0}, {20}, {1.05}, {0}).g == 0);
    CHECK(std::isinf(hopsFor({5}, {.05}, {20}, {1.05}, {0}).g));
}
