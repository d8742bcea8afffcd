// SPDX-License-Identifier: GPL-3.0-or-later
// Properties of the colour scale; values are in tests/published.
#include "quantity/colour.h"

#include "support/property.h"

#include <array>
#include <cmath>

namespace staveline {
namespace {

Ebc colourOf(double kg, double ebc, double litres) {
    const std::array grist = {ColouredMass{{kg}, {ebc}}};
    return wortColour(grist, {litres});
}

} // namespace

TEST_CASE("An empty grist and white sugar have no colour") {
    CHECK(wortColour({}, {20}).ebc == 0);
    CHECK(colourOf(5, 0, 20).ebc == 0);
    const std::array grist = {ColouredMass{{4}, {5}}, ColouredMass{{1}, {0}}};
    CHECK(wortColour(grist, {20}) == colourOf(4, 5, 20));
}

TEST_CASE("Colour depends on mass per litre only") {
    CHECK_PROPERTY("twice of both", [] {
        const double kg = *rc::gen::inRange(1, 500) / 10.0, ebc = *rc::gen::inRange(2, 1500);
        const double litres = *rc::gen::inRange(50, 5000) / 10.0;
        const double once = colourOf(kg, ebc, litres).ebc, twice = colourOf(2 * kg, ebc, 2 * litres).ebc;
        RC_ASSERT(std::abs(once - twice) < 1e-9 * once);
    });
}

TEST_CASE("Parts of one malt may be listed apart, in any order") {
    const std::array once = {ColouredMass{{3}, {4}}, ColouredMass{{1}, {60}}};
    const std::array apart = {ColouredMass{{1}, {60}}, ColouredMass{{1}, {4}}, ColouredMass{{2}, {4}}};
    CHECK(wortColour(once, {20}).ebc == Approx(wortColour(apart, {20}).ebc));
}

TEST_CASE("Darker malt, more malt and less water are darker") {
    CHECK_PROPERTY("monotone", [] {
        const double kg = *rc::gen::inRange(1, 500) / 10.0, ebc = *rc::gen::inRange(2, 1500);
        const double litres = *rc::gen::inRange(50, 5000) / 10.0;
        const auto colour = colourOf(kg, ebc, litres);
        RC_ASSERT(colourOf(kg, ebc + 1, litres) > colour);
        RC_ASSERT(colourOf(kg * 1.1, ebc, litres) > colour);
        RC_ASSERT(colourOf(kg, ebc, litres * 0.9) > colour);
    });
}

TEST_CASE("SRM and EBC measure the same absorbance") {
    // EBC = 25 x A430, SRM = 12.7 x A430.
    CHECK(toSrm({25}) == Approx(12.7));
    CHECK(toSrm({0}) == 0);
    CHECK(ebcOfSrm(12.7).ebc == Approx(25));
    // Malt: SRM = 1.3546 L - 0.76.
    CHECK(toSrm(ebcOfLovibond(10)) == Approx(12.786));
    CHECK(toLovibond(ebcOfLovibond(60)) == Approx(60));
    CHECK(toLovibond({0}) == 0);
    CHECK(ebcOfLovibond(0).ebc == 0);
}

} // namespace staveline
