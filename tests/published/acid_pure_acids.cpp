// SPDX-License-Identifier: GPL-3.0-or-later
// Acids in water: closed forms against the general solver. Dissociation constant of lactic acid 3.86 at 25 C: CRC
// Handbook of Chemistry and Physics, from memory.
#include "quantity/acid_base.h"
#include "support/catch.h"

#include <cmath>

using namespace staveline;

namespace {

/// pH of a weak acid alone in water: h2 + Ka h - Ka C = 0 (any textbook of chemistry; water's own ions left out).
double weakAcidPh(double molar, double pKa) {
    const double ka = std::pow(10, -pKa);
    return -std::log10((-ka + std::sqrt(ka * ka + 4 * ka * molar)) / 2);
}

} // namespace

TEST_CASE("Pure lactic acid has the pH of the textbook quadratic", "[published]") {
    for (const double grams : {.1, .5, 1., 2., 4., 5., 8., 10.}) {
        CAPTURE(grams);
        CHECK(solvePh(grams, 0, 0, 0).ph == Approx(weakAcidPh(grams / 90.078, 3.86)).margin(.0005));
    }
    CHECK(solvePh(5, 0, 0, 0).ph == Approx(2.5687).margin(.0005)); // the quadratic, by hand
}

TEST_CASE("Pure acetic acid has the pH of the textbook quadratic", "[published]") {
    for (const double grams : {.5, 1., 5.}) {
        CAPTURE(grams);
        CHECK(solvePh(0, grams, 0, 0).ph == Approx(weakAcidPh(grams / 60.052, 4.76)).margin(.0005));
    }
}

TEST_CASE("Half neutralised, an acid's pH is its dissociation constant", "[published]") {
    // Henderson-Hasselbalch; exact when the free hydrogen ions are few against the salt.
    const double halfLactic = 5 / 90.078 * 1e3 / 2, halfAcetic = 5 / 60.052 * 1e3 / 2;
    CHECK(solvePh(5, 0, 0, halfLactic).ph == Approx(3.86).margin(.006));
    CHECK(solvePh(0, 5, 0, halfAcetic).ph == Approx(4.76).margin(.002));
}

TEST_CASE("Titrating a pure acid finds what was weighed in", "[published]") {
    for (const double grams : {.5, 2., 5., 10.})
        CHECK(titratableAcidity({.lactic = grams, .buffer = 0}).gPerL == Approx(grams).margin(5e-4));
}

TEST_CASE("Pure water is neutral", "[published]") {
    CHECK(solvePh(0, 0, 0, 0).ph == Approx(7).margin(1e-6));
}
