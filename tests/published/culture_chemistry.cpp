// SPDX-License-Identifier: GPL-3.0-or-later
// Stoichiometry of the vessel: what no culture can exceed. Atomic masses IUPAC 2021.
#include "culture/vessel_state.h"
#include "support/catch.h"

#include <cmath>

using namespace staveline;
using namespace staveline::culture;

namespace {

constexpr double molarMass(int c, int h, int o) {
    return c * 12.011 + h * 1.008 + o * 15.999;
}
constexpr double ferulic = molarMass(10, 10, 4), coumaric = molarMass(9, 8, 3);
constexpr double ethylGuaiacol = molarMass(9, 12, 2), ethylPhenol = molarMass(8, 10, 1);

/// All phenolic acid goes the way of Brettanomyces, nothing is lost.
CultureParameters lossless() {
    CultureParameters p;
    p.reductionYield = 1;
    p.phenolicSink = p.vinylLoss = p.esterSplitting = p.decline = 0;
    p.decarboxylation = p.vinylReduction = .2;
    return p;
}

} // namespace

TEST_CASE("Ferulic and coumaric acid become ethyl phenols mol for mol", "[published]") {
    const VesselState start{{.sid = 16, .ferulic = 3, .coumaric = 2}, 0, 1, 20};
    const Composition end = age(start, {{2000}, {18}, 0}, lossless()).beer;
    CHECK(end.ethylGuaiacol == Approx(3 * ethylGuaiacol / ferulic).epsilon(2e-4));
    CHECK(end.ethylPhenol == Approx(2 * ethylPhenol / coumaric).epsilon(2e-4));
}

TEST_CASE("A gram of acetic acid costs 533 mg of oxygen", "[published]") {
    // C2H5OH + O2 -> CH3COOH + H2O. A new cask lets in 11.4 mg/(L year) (Junqua et al. 2021, OENO One 55:3): at most
    // 21 mg/L of acetic acid a year, so wood alone does not make vinegar.
    CultureParameters allToAcid;
    allToAcid.oxygenToAcetic = 1;
    const VesselState start{{.sid = 16, .ethanol = 50}, 0, 0, 20};
    const Composition end = age(start, {{365}, {16}, 11.4}, allToAcid).beer;
    const double made = end.acetic;
    CHECK(made * 1000 == Approx(21.4).margin(.1));
    CHECK(11.4 / made == Approx(1000 * molarMass(0, 0, 2) / molarMass(2, 4, 2)).epsilon(1e-3));
    CHECK((50 - end.ethanol) / made == Approx(molarMass(2, 6, 1) / molarMass(2, 4, 2)).epsilon(1e-3));
}

TEST_CASE("No more than a gram of lactic acid and 0.511 g of alcohol come from a gram of hexose", "[published]") {
    // C6H12O6 -> 2 C3H6O3, or 2 C2H5OH + 2 CO2.
    const CultureParameters p;
    CHECK(p.lacticYield <= 2 * molarMass(3, 6, 3) / molarMass(6, 12, 6) + 1e-9);
    CHECK(p.brettEthanol <= 2 * molarMass(2, 6, 1) / molarMass(6, 12, 6));
}

TEST_CASE("Calibration: De Keukeleire 2000: in the bottle cis bitterness lasts five years and more, trans about one",
          "[published]") {
    // Quim. Nova 23:108, at 20 C; the half-lives were taken from it. No wood and no culture take any.
    CultureParameters bottle;
    bottle.vesselHopLoss = 0;
    const VesselState fresh{{.sid = 16, .isoCis = 68, .isoTrans = 32}, 0, 0, 20};
    const auto after = [&](double years) { return age(fresh, {{years * 365.25}, {20}, 0}, bottle).beer; };
    CHECK(after(5).isoCis >= .5 * 68 * (1 - 1e-9));
    CHECK(after(1).isoTrans == Approx(.5 * 32).epsilon(.2));
    CHECK(after(2).isoTrans < .5 * 32);
}

TEST_CASE("Calibration: Dusart 2023: two years in wood leave eight times less bitterness than a bottle",
          "[published]") {
    // J. Am. Soc. Brew. Chem. 81:357, through a second text: 0.25 mg/L after two years, an eighth of what ageing
    // leaves. The loss to the vessel was taken from it.
    const VesselState fresh{{.sid = 16, .isoCis = 6.8, .isoTrans = 3.2}, 0, 0, 20};
    CultureParameters bottle;
    bottle.vesselHopLoss = 0;
    const auto left = [&](const CultureParameters& p) {
        return age(fresh, {{730.5}, {15}, 10}, p).beer.bitterness().ibu;
    };
    CHECK(left(bottle) / left({}) == Approx(8).epsilon(.15));
}

TEST_CASE("Simpson 1993: hop acids lose about 800 times their force from pH 4 to 7", "[published]") {
    // J. Inst. Brew. 99:405, quoted in a second text. In a pure medium (gamma 1) with a brake of first order the dose
    // is (1 - freedom) / freedom.
    CultureParameters medium;
    medium.phSharpensHops = medium.hopSteepness = 1;
    const auto dose = [&](double at) {
        const double free = hopFreedom({10}, 20, {at}, medium);
        return (1 - free) / free;
    };
    CHECK(dose(4) / dose(7) == Approx(800).epsilon(.15));
    CHECK(dose(4.2) / dose(4.4) > 1.3); // "0.2 pH can halve the protection"
    CHECK(dose(4.2) / dose(4.4) < 2.1);
}
