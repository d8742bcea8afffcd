// SPDX-License-Identifier: GPL-3.0-or-later
// Morey's colour of wort, and the two older straight lines it was drawn between.
#include "quantity/colour.h"

#include "ingredient/diastatic_power.h"
#include "support/catch.h"

#include <array>
#include <utility>

namespace staveline {
using namespace ingredient;
namespace {

/// SRM of a wort with this many malt colour units, made of 1 kg at 10 degrees Lovibond.
double srmAt(double mcu) {
    const Ebc tenLovibond{(1.3546 * 10 - 0.76) * 25 / 12.7};
    const std::array grist = {ColouredMass{{1}, tenLovibond}};
    return toSrm(wortColour(grist, {83.45 / mcu}));
}

} // namespace

TEST_CASE("Published: Morey's equation, SRM = 1.4922 MCU^0.6859") {
    // Morey 1995; equation from memory, points worked out by hand.
    for (const auto& [mcu, srm] :
         {std::pair{1.0, 1.49}, {5.0, 4.50}, {10.0, 7.24}, {20.0, 11.65}, {30.0, 15.38}, {50.0, 21.83}})
        CHECK(srmAt(mcu) == Approx(srm).margin(0.01));
}

TEST_CASE("Published: Morey lies by the lines of Daniels and of Mosher") {
    // Daniels: SRM = 0.2 MCU + 8.4; Mosher: SRM = 0.3 MCU + 4.7; both from memory, for amber to brown.
    for (double mcu = 15; mcu <= 40; mcu += 5) {
        INFO("MCU " << mcu);
        CHECK(srmAt(mcu) == Approx((0.2 * mcu + 8.4 + 0.3 * mcu + 4.7) / 2).margin(2.5));
    }
}

TEST_CASE("Worked by hand: two grists in 20 L") {
    const std::array pale = {ColouredMass{{5.0}, {3.5}}};
    CHECK(wortColour(pale, {20}).ebc == Approx(7.5).margin(0.05));
    const std::array amber = {ColouredMass{{4.5}, {3.5}}, ColouredMass{{0.5}, {60}}};
    CHECK(wortColour(amber, {20}).ebc == Approx(12.6).margin(0.05));
}

TEST_CASE("Published: enzyme power in degrees Windisch-Kolbach and Lintner") {
    // WK = 3.5 Lintner - 16 (encyclopedia article on the Windisch-Kolbach unit).
    CHECK(windischKolbach(80) == Approx(264));
    CHECK(windischKolbach(40) == Approx(124));
    CHECK(lintner(250) == Approx(76.0));
    CHECK(lintner(windischKolbach(123.4)) == Approx(123.4));
}

} // namespace staveline
