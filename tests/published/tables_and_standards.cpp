// SPDX-License-Identifier: GPL-3.0-or-later
// Outside checks of what the main job counts with: the normal law and error weighting behind every verdict, days
// between dates, units, tables as files, words a brewer mistypes.
#include "advice/loss.h"
#include "ingredient/nearest.h"
#include "ingredient/pantry.h"
#include "quantity/csv.h"
#include "quantity/density.h"
#include "quantity/text.h"
#include "support/catch.h"
#include "tasting/statistics.h"
#include "vessel/ledger.h"
#include "vessel/materials.h"

#include <cmath>

using namespace staveline;
using namespace staveline::ingredient;
using namespace staveline::tasting;
using namespace staveline::vessel;

namespace {

constexpr Day date(int y, unsigned m, unsigned d) {
    return Day{std::chrono::year{y} / static_cast<int>(m) / static_cast<int>(d)};
}

double sampleSd(const std::vector<double>& values) {
    return std::sqrt(sumOfSquares(values) / (static_cast<double>(values.size()) - 1));
}

/// NumAcc2 to NumAcc4: one value, then 500 pairs a tenth below and above.
std::vector<double> pairsAround(double whole, int tenths) {
    std::vector<double> values{whole + tenths / 10.0};
    for (int i = 0; i < 500; ++i) {
        values.push_back(whole + (tenths - 1) / 10.0);
        values.push_back(whole + (tenths + 1) / 10.0);
    }
    return values;
}

} // namespace

// --- NIST/SEMATECH e-Handbook of Statistical Methods, tables 1.3.6.7.1 (normal) and 1.3.6.7.2 (Student, last row);
// from memory, and the same in every statistics table.

TEST_CASE("Published: areas under the normal curve", "[published]") {
    const std::vector<std::pair<double, double>> fromZeroToZ{{0.25, .09871}, {0.5, .19146},  {1.0, .34134},
                                                             {1.28, .39973}, {1.64, .44950}, {1.96, .47500},
                                                             {2.33, .49010}, {3.0, .49865}};
    for (const auto& [z, area] : fromZeroToZ) {
        CAPTURE(z);
        CHECK(normalCdf(z) == Approx(.5 + area).margin(5.1e-6));
        CHECK(normalCdf(-z) == Approx(.5 - area).margin(5.1e-6));
    }
    CHECK(z80 == Approx(1.282).margin(5e-4)); // t of 0.90, infinite degrees of freedom
}

TEST_CASE("Published: the loss of a plan follows from areas and ordinates of that table", "[published]") {
    // E[max(0, |x| - 1)^2] of a standard normal is twice 2 (.5 - area to 1) - ordinate at 1; the ordinates are .24197
    // at 1 and .05399 at 2.
    CHECK(advice::expectedHinge(0, 1, 1) == Approx(2 * (2 * (.5 - .34134) - .24197)).margin(5e-5));
    // One to the side: 5 (.5 - area to 2) - 2 ordinates at 2 from the far end, half the spread from the near one.
    CHECK(advice::expectedHinge(1, 1, 1) == Approx(.5 + 5 * (.5 - .47725) - 2 * .05399).margin(1e-4));
    // Nothing free: mean square.
    CHECK(advice::expectedHinge(3, 4, 0) == Approx(13));
}

// --- NIST Statistical Reference Datasets, univariate: NumAcc1 to NumAcc4, certified values by construction.

TEST_CASE("NIST NumAcc1 to 4: mean and spread of numbers that differ in their last digits", "[published]") {
    CHECK(meanOf(std::vector<double>{10000001, 10000003, 10000002}) == 10000002);
    CHECK(sampleSd({10000001, 10000003, 10000002}) == 1);
    CHECK(meanOf(pairsAround(1, 2)) == Approx(1.2).epsilon(1e-14));
    CHECK(sampleSd(pairsAround(1, 2)) == Approx(.1).epsilon(1e-13));
    CHECK(meanOf(pairsAround(1e6, 2)) == Approx(1000000.2).epsilon(1e-14));
    CHECK(sampleSd(pairsAround(1e6, 2)) == Approx(.1).epsilon(1e-8));
    CHECK(meanOf(pairsAround(1e7, 2)) == Approx(10000000.2).epsilon(1e-14));
    CHECK(sampleSd(pairsAround(1e7, 2)) == Approx(.1).epsilon(1e-7));
}

// --- J. Meeus, Astronomical Algorithms, 2nd ed. 1998, chapter 7: table of Julian days and example of Halley's comet.
// From memory.

TEST_CASE("Published: days between dates are differences of Julian days, Meeus 1998", "[published]") {
    const std::vector<std::pair<Day, double>> julian{{date(2000, 1, 1), 2451544.5},  {date(1999, 1, 1), 2451179.5},
                                                     {date(1987, 1, 27), 2446822.5}, {date(1988, 1, 27), 2447187.5},
                                                     {date(1957, 10, 4), 2436115.5}, {date(1900, 1, 1), 2415020.5},
                                                     {date(1600, 1, 1), 2305447.5}};
    for (const auto& [from, a] : julian)
        for (const auto& [to, b] : julian)
            CHECK(daysBetween(from, to) == static_cast<int>(b - a));
    CHECK(daysBetween(date(1910, 4, 20), date(1986, 2, 9)) == 27689);
    // the year 1900 had no 29 February, 2000 had one (the Gregorian rule)
    CHECK_FALSE(parseDay("1900-02-29"));
    CHECK(parseDay("2000-02-29"));
    CHECK(daysBetween(date(2000, 2, 28), date(2000, 3, 1)) == 2);
}

// --- NIST Special Publication 811 (2008), appendix B.8, and Handbook 44, appendix C: conversion factors. From memory.

TEST_CASE("Published: factors of NIST SP 811 are those numbers are shown with", "[published]") {
    DisplayUnits american;
    american.volume = DisplayUnits::Volume::usGallon;
    american.temperature = DisplayUnits::Temperature::fahrenheit;
    CHECK(show(Litres{3.785412}, american) == "1.0 US gal");  // gallon (US): 3.785 412 E-03 cubic metre
    CHECK(show(Litres{117.3478}, american) == "31.0 US gal"); // the US barrel of beer: 31 gallons
    CHECK(show(Litres{158.9873}, american) == "42.0 US gal"); // barrel of oil: 1.589 873 E-01
    CHECK(show(Celsius{100}, american) == "212 °F");
    CHECK(show(Celsius{20}, american) == "68 °F");
    CHECK(show(Celsius{37.0}, american) == "99 °F");
    DisplayUnits hecto;
    hecto.volume = DisplayUnits::Volume::hectolitre;
    CHECK(show(Litres{117.3478}, hecto) == "1.17 hL");
}

// --- RFC 4180 (2005), section 2, and RFC 6901 (2013), section 5: the examples printed there. From memory.

TEST_CASE("Published: the tables of RFC 4180 are read as it says", "[published]") {
    const auto plain = CsvTable::parse("field_name,field_name2,field_name3\r\naaa,bbb,ccc\r\nzzz,yyy,xxx");
    REQUIRE(plain);
    CHECK(plain->rows() == 2);
    CHECK(plain->text(1, "field_name3") == "xxx");
    const auto broken = CsvTable::parse("a,b,c\r\n\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx\r\n");
    REQUIRE(broken);
    CHECK(broken->text(0, "b") == "b\r\nbb");
    const auto quoted = CsvTable::parse("a,b,c\r\n\"aaa\",\"b\"\"bb\",\"ccc\"\r\n");
    REQUIRE(quoted);
    CHECK(quoted->text(0, "b") == "b\"bb");
}

TEST_CASE("Published: a path is a pointer of RFC 6901", "[published]") {
    CHECK(cellPath(0, "foo") == "/0/foo");
    CHECK(cellPath(0, "a/b") == "/0/a~1b");
    CHECK(cellPath(0, "m~n") == "/0/m~0n");
    CHECK(cellPath(0, "") == "/0/");
    CHECK(cellPath(0, "c%d") == "/0/c%d");
}

// --- F. J. Damerau, Communications of the ACM 7 (1964) 171: one slip is a letter wrong, missing, extra or two
// exchanged. The pairs are those of textbooks (Wagner & Fischer 1974; Jurafsky & Martin, Speech and Language
// Processing, ch. 2), from memory.

TEST_CASE("Published: distances between words", "[published]") {
    CHECK(editDistance("kitten", "sitting") == 3);
    CHECK(editDistance("saturday", "sunday") == 3);
    CHECK(editDistance("intention", "execution") == 5);
    CHECK(editDistance("flaw", "lawn") == 2);
    CHECK(editDistance("pilsenr", "pilsner") == 1);  // exchanged
    CHECK(editDistance("pilsener", "pilsner") == 1); // extra
    CHECK(editDistance("pilner", "pilsner") == 1);   // missing
    CHECK(editDistance("pilsmer", "pilsner") == 1);  // wrong
}

// --- R. Junqua, L. Zeng, A. Pons, OENO One 55 (2021) 3.4692: 11.4 mg/L a year through a new 225 L cask.

TEST_CASE("Published: oxygen through a new cask, Junqua 2021", "[published]") {
    CHECK(materialFacts("oak new")->oxygenPerYear == Approx(11.4));
    // a cask in use cannot let in much more than a new one, steel next to nothing
    CHECK(materialFacts("oak used")->oxygenPerYear < 11.4);
    CHECK(materialFacts("steel")->oxygenPerYear < 1.2);
}
