// SPDX-License-Identifier: GPL-3.0-or-later
// Properties of the density scales; published values are in tests/published.
#include "quantity/density.h"

#include "support/property.h"

#include <cmath>

namespace staveline {
namespace {

double anyGravity() {
    return *rc::gen::inRange(980'000, 1'200'001) / 1e6;
}
/// An original extract and a lower apparent one, as a fermentation leaves them [P].
std::pair<Plato, Plato> anyFermentation() {
    const double original = *rc::gen::inRange(500, 2501) / 100.0;
    const double left = *rc::gen::inRange(-50, 1001) / 1000.0;
    return {Plato{original}, Plato{original * left}};
}

} // namespace

TEST_CASE("Gravity and Plato are inverse to one another") {
    CHECK_PROPERTY("SG -> P -> SG", [] {
        const double sg = anyGravity();
        RC_ASSERT(std::abs(toGravity(toPlato({sg})).sg - sg) < 1e-9);
    });
    CHECK_PROPERTY("P -> SG -> P", [] {
        const double p = *rc::gen::inRange(-500, 4500) / 100.0;
        RC_ASSERT(std::abs(toPlato(toGravity({p})).p - p) < 1e-9);
    });
}

TEST_CASE("More extract is denser") {
    CHECK_PROPERTY("monotone", [] {
        const double a = anyGravity(), b = anyGravity();
        RC_ASSERT((a < b) == (toPlato({a}) < toPlato({b})));
    });
}

TEST_CASE("The inverse is found far outside its use as well") {
    for (const double p : {-20.0, 0.0, 60.0, 80.0})
        CHECK(toPlato(toGravity({p})).p == Approx(p).margin(1e-9));
}

TEST_CASE("Extract per litre and Plato from extract undo one another") {
    CHECK_PROPERTY("P -> kg -> P", [] {
        const double p = *rc::gen::inRange(0, 4000) / 100.0;
        const double litres = *rc::gen::inRange(1, 20'000) / 10.0;
        const Kilograms extract{extractPerLitre({p}).gPerL * litres / 1000};
        RC_ASSERT(std::abs(platoFromExtract(extract, {litres}).p - p) < 1e-9);
    });
}

TEST_CASE("No extract is no Plato") {
    CHECK(platoFromExtract({0}, {20}).p == 0);
    CHECK(extractPerLitre({0}).gPerL == 0);
    CHECK(extractModel({0}).gPerL == 0);
}

TEST_CASE("The model's own extract per litre stays near the table's") {
    for (double p = 5; p <= 20; p += 0.5)
        CHECK(extractModel({p}).gPerL == Approx(extractPerLitre({p}).gPerL).epsilon(5e-4));
}

TEST_CASE("Regression: the forward model's extract per litre at 12 P") {
    CHECK(extractModel({12}).gPerL == Approx(125.578).margin(5e-3));
}

TEST_CASE("Real and apparent extract are inverse to one another") {
    CHECK_PROPERTY("apparent -> real -> apparent", [] {
        const auto [original, apparent] = anyFermentation();
        const auto real = realExtract(original, apparent);
        RC_ASSERT(std::abs(apparentExtract(original, real).p - apparent.p) < 1e-9);
        RC_ASSERT(real >= apparent); // alcohol hides extract
        RC_ASSERT(real <= original);
    });
}

TEST_CASE("Unfermented wort has no alcohol, more attenuation makes more") {
    CHECK(alcoholByWeight({12}, {12}) == 0);
    CHECK(alcoholByVolume({12}, {12}).pct == 0);
    CHECK_PROPERTY("monotone in the apparent extract", [] {
        const auto [original, apparent] = anyFermentation();
        RC_ASSERT(alcoholByVolume(original, apparent - Plato{0.1}) > alcoholByVolume(original, apparent));
    });
}

TEST_CASE("Balling: extract lost is alcohol, carbon dioxide and yeast") {
    // Balling's stoichiometry, 2.0665 g of extract for 1 g of alcohol, 0.9565 g of carbon dioxide and 0.11 g of yeast:
    // OE = 100 (RE + 2.0665 A) / (100 + 1.0665 A). The alcohol formula must satisfy it whatever the beer.
    CHECK_PROPERTY("mass balance", [] {
        const auto [original, apparent] = anyFermentation();
        const double re = realExtract(original, apparent).p, a = alcoholByWeight(original, apparent);
        RC_ASSERT(std::abs(100 * (re + 2.0665 * a) / (100 + 1.0665 * a) - original.p) < 1e-3);
    });
}

TEST_CASE("Ethanol and water: the ends of the scale and its slope") {
    CHECK(volumeFromMassShare(0).pct == 0);
    CHECK(volumeFromMassShare(1).pct == Approx(100).epsilon(1e-12));
    CHECK_PROPERTY("more alcohol is lighter and more by volume", [] {
        const int a = *rc::gen::inRange(0, 1000), b = *rc::gen::inRange(a + 1, 1001);
        RC_ASSERT(ethanolWaterDensity(a / 1000.0) > ethanolWaterDensity(b / 1000.0));
        RC_ASSERT(volumeFromMassShare(a / 1000.0) < volumeFromMassShare(b / 1000.0));
    });
}

} // namespace staveline
