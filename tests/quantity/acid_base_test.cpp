// SPDX-License-Identifier: GPL-3.0-or-later
#include "quantity/acid_base.h"
#include "quantity/acid_table.h"
#include "support/property.h"

#include <cmath>
#include <limits>

using namespace staveline;

namespace {

Composition freshBeer(double lactic = .2, double acetic = .1, double buffer = 1) {
    return withPh({.lactic = lactic, .acetic = acetic, .buffer = buffer}, {4.3});
}

/// Beers a cellar can hold: acids, buffer and a strong-ion difference that puts the pH between 2.6 and 5.5.
Composition anyBeer() {
    const auto draw = [](int low, int high, double unit) { return *rc::gen::inRange(low, high) * unit; };
    const Composition beer{.lactic = draw(0, 1200, .01), .acetic = draw(0, 300, .01), .buffer = draw(50, 160, .01)};
    return withPh(beer, {draw(260, 550, .01)});
}

} // namespace

TEST_CASE("Regression V4: pH and titratable acidity of the reference model", "[quantity][regression]") {
    const double sid12 = anionCharge({4.3}, .2, .1, 1), sid14 = anionCharge({4.3}, .2, .1, 14 / 12.);
    struct Row {
        double lactic, acetic, buffer, sid, ph, ta;
    };
    const Row rows[] = {{.2, .1, 1, sid12, 4.3, 1.949368},
                        {4, .2, 1, sid12, 3.31087, 5.89914},
                        {4, 1, 14 / 12., sid14, 3.338176, 7.395391},
                        {8, .3, 1, sid12, 3.050598, 10.048902}};
    for (const Row& row : rows) {
        const Composition beer{.lactic = row.lactic, .acetic = row.acetic, .sid = row.sid, .buffer = row.buffer};
        CAPTURE(row.lactic, row.buffer);
        CHECK(ph(beer).ph == Approx(row.ph).margin(.001));
        CHECK(titratableAcidity(beer).gPerL == Approx(row.ta).margin(.001));
    }
}

TEST_CASE("Regression: strong-ion difference and buffer capacity of a 12 P beer", "[quantity][regression]") {
    CHECK(freshBeer().sid == Approx(16.358).margin(.001));
    struct Row {
        double ph, capacity;
    };
    for (const Row row : {Row{3.2, 8.15}, Row{4.0, 7.88}, Row{4.3, 7.77}, Row{4.5, 7.65}, Row{5.0, 7.06}, Row{5.5, 6.0},
                          Row{6.5, 4.31}, Row{7.5, 3.69}}) {
        CAPTURE(row.ph);
        CHECK(bufferCapacity({row.ph}, 0, 0, 1) == Approx(row.capacity).margin(.006));
    }
}

TEST_CASE("Buffer capacity is the slope of the charge", "[quantity]") {
    for (double at = 2.5; at < 8.5; at += .25) {
        constexpr double step = 1e-5;
        const double slope = (anionCharge({at + step}, 5, .8, 1.2) - anionCharge({at - step}, 5, .8, 1.2)) / (2 * step);
        CAPTURE(at);
        CHECK(bufferCapacity({at}, 5, .8, 1.2) == Approx(slope).epsilon(1e-6));
    }
}

TEST_CASE("The solved pH carries the strong-ion difference", "[quantity][property]") {
    CHECK_PROPERTY("charge balances", [] {
        const Composition beer = anyBeer();
        RC_ASSERT(std::abs(anionCharge(ph(beer), beer.lactic, beer.acetic, beer.buffer) - beer.sid) < 1e-8);
    });
    CHECK_PROPERTY("Newton from anywhere agrees with the safe solver", [] {
        const Composition beer = anyBeer();
        const double start = *rc::gen::inRange(250, 600) * .01;
        const double found = newtonPh(start, beer.lactic, beer.acetic, beer.buffer, beer.sid, 40);
        RC_ASSERT(std::abs(found - ph(beer).ph) < 2e-5);
    });
}

TEST_CASE("The tabulated background is within 1e-5 mEq/L of the exact one", "[quantity]") {
    const AcidTable& table = AcidTable::instance();
    double worst = 0;
    for (double at = 2.2; at <= 6.5; at += .00037) {
        const double h = std::pow(10, 3 - at), hydroxide = 1e-8 / h;
        const double exact = anionCharge({at}, 0, 0, 1) + h - hydroxide;
        worst = std::max(worst, std::abs(table.at(at).charge - exact));
        REQUIRE(table.at(at).hydrogen == Approx(h).epsilon(1e-9));
    }
    CHECK(worst < 1e-5);
    CHECK(worst > 0);
}

TEST_CASE("Outside its range the table holds its ends, and no number counts as one of them", "[quantity]") {
    const AcidTable& table = AcidTable::instance();
    CHECK(table.at(-3).hydrogen == Approx(10).epsilon(1e-6));
    CHECK(table.at(40).hydrogen == Approx(1e-4).epsilon(1e-4));
    CHECK(std::isfinite(table.at(std::numeric_limits<double>::quiet_NaN()).charge));
    CHECK(std::isfinite(solvePh(1, .1, 1, std::numeric_limits<double>::quiet_NaN()).ph));
    CHECK(solvePh(0, 0, 1, 1e6).ph <= 12);
    CHECK(solvePh(900, 0, 1, -1e6).ph >= .5);
}

TEST_CASE("Titratable acidity blends exactly, pH does not", "[quantity][property]") {
    CHECK_PROPERTY("TA of a blend is the mean of TAs", [] {
        const Composition a = anyBeer(), b = anyBeer();
        const Share share{*rc::gen::inRange(0, 101) * .01};
        const double mean = (1 - share.of1) * titratableAcidity(a).gPerL + share.of1 * titratableAcidity(b).gPerL;
        RC_ASSERT(std::abs(titratableAcidity(blend(a, b, share)).gPerL - mean) < 1e-9);
    });
    CHECK_PROPERTY("pH of a blend lies between the two", [] {
        const Composition a = anyBeer(), b = anyBeer();
        const double mixed = ph(blend(a, b, {.5})).ph;
        RC_ASSERT(mixed >= std::min(ph(a).ph, ph(b).ph) - 1e-9);
        RC_ASSERT(mixed <= std::max(ph(a).ph, ph(b).ph) + 1e-9);
    });
}

TEST_CASE("More acid lowers pH and raises titratable acidity by what was added", "[quantity][property]") {
    CHECK_PROPERTY("lactic acid", [] {
        Composition beer = anyBeer();
        const double before = ph(beer).ph, ta = titratableAcidity(beer).gPerL;
        beer.lactic += .5;
        RC_ASSERT(ph(beer).ph < before);
        RC_ASSERT(std::abs(titratableAcidity(beer).gPerL - ta - .5) < 1e-4);
    });
    CHECK_PROPERTY("acetic acid counts half as much again", [] {
        Composition beer = anyBeer();
        const double ta = titratableAcidity(beer).gPerL;
        beer.acetic += 1;
        RC_ASSERT(std::abs(titratableAcidity(beer).gPerL - ta - 1.5) < 2e-3);
    });
}

TEST_CASE("A measured acidity or pH is met", "[quantity][property]") {
    CHECK_PROPERTY("titratable acidity above the beer's own", [] {
        const Composition beer = anyBeer();
        const double own = titratableAcidity(beer).gPerL - beer.lactic;
        const GramsPerLitre measured{std::max(0.0, own) + *rc::gen::inRange(1, 1500) * .01};
        const Composition corrected = withTitratableAcidity(beer, measured);
        RC_ASSERT(std::abs(titratableAcidity(corrected).gPerL - measured.gPerL) < 1e-9);
        RC_ASSERT(corrected.sid == beer.sid && corrected.acetic == beer.acetic);
    });
    CHECK_PROPERTY("pH", [] {
        const Composition beer = anyBeer();
        const Ph measured{*rc::gen::inRange(260, 550) * .01};
        RC_ASSERT(std::abs(ph(withPh(beer, measured)).ph - measured.ph) < 1e-9);
    });
    const Composition beer = freshBeer();
    CHECK(withTitratableAcidity(beer, {0}).lactic == 0);
    CHECK(titratableAcidity(withTitratableAcidity(beer, {0})).gPerL > 1);
}

TEST_CASE("The same acid reads another pH in a beer with another buffer", "[quantity]") {
    const auto soured = [](double buffer) {
        Composition beer = freshBeer(.2, .1, buffer);
        beer.lactic = 5;
        return ph(beer).ph;
    };
    CHECK(soured(1.3) - soured(.7) > .1);
}

TEST_CASE("The table's dissociation constants are those of the header", "[quantity]") {
    CHECK(AcidTable::lacticKa == Approx(std::pow(10, 3 - lacticPka)).epsilon(1e-14));
    CHECK(AcidTable::aceticKa == Approx(std::pow(10, 3 - aceticPka)).epsilon(1e-14));
}
