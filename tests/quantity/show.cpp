// SPDX-License-Identifier: GPL-3.0-or-later
#include "quantity/density.h"
#include "quantity/text.h"

#include "support/property.h"

#include <cmath>
#include <limits>

namespace staveline {
namespace {

using Units = DisplayUnits;

Units gallons() {
    Units units;
    units.volume = Units::Volume::usGallon;
    return units;
}
Units hectolitres() {
    Units units;
    units.volume = Units::Volume::hectolitre;
    return units;
}
Units fahrenheit() {
    Units units;
    units.temperature = Units::Temperature::fahrenheit;
    return units;
}
Units plato() {
    Units units;
    units.gravity = Units::Gravity::plato;
    return units;
}
Units srm() {
    Units units;
    units.colour = Units::Colour::srm;
    return units;
}

/// The number at the start of a shown quantity.
double shownNumber(const std::string& text) {
    return std::stod(text);
}

TEST_CASE("An estimate of an order of size is shown to two figures, in the unit chosen") {
    const auto shown = [](double litres, const DisplayUnits& units = {}) {
        return show(roughly(Litres{litres}), units);
    };
    CHECK(shown(445.5) == "450 L");
    CHECK(shown(7198) == "7200 L");
    CHECK(shown(45.4) == "45 L");
    CHECK(shown(4.54) == "4.5 L");
    CHECK(shown(99.6) == "100 L");
    CHECK(shown(0) == "0 L");
    DisplayUnits us;
    us.volume = DisplayUnits::Volume::usGallon;
    CHECK(shown(445.5, us).starts_with("120 "));
    CHECK(show(Litres{445.5}) == "445.5 L");
}

} // namespace

TEST_CASE("Volumes keep about three figures") {
    CHECK(show(Litres{88}) == "88.0 L");
    CHECK(show(Litres{0.15}) == "0.15 L");
    CHECK(show(Litres{0.999}) == "1.00 L");
    CHECK(show(Litres{1}) == "1.0 L");
    CHECK(show(Litres{999.94}) == "999.9 L");
    CHECK(show(Litres{999.96}) == "1000 L");
    CHECK(show(Litres{4500}) == "4500 L");
    CHECK(show(Litres{-2.5}) == "-2.5 L");
    CHECK(show(Litres{0}) == "0.00 L");
}

TEST_CASE("Volumes in US gallons and hectolitres") {
    // 1 US gallon = 231 cubic inches of 2.54 cm: 3.785411784 L by definition.
    CHECK(show(Litres{3.785411784}, gallons()) == "1.0 US gal");
    CHECK(show(Litres{225}, gallons()) == "59.4 US gal");
    CHECK(show(Litres{88}, hectolitres()) == "0.88 hL");
    CHECK(show(Litres{4500}, hectolitres()) == "45.00 hL");
}

TEST_CASE("Masses are shown as they are weighed") {
    CHECK(show(Kilograms{0.3}) == "0.30 kg");
    CHECK(show(Kilograms{5}) == "5.00 kg");
    CHECK(show(Kilograms{25.04}) == "25.0 kg");
    CHECK(show(Grams{4.5}) == "4.5 g");
    CHECK(show(Grams{5}) == "5 g");
    CHECK(show(Grams{45.4}) == "45 g");
}

TEST_CASE("Temperatures have a decimal only where they need one") {
    CHECK(show(Celsius{66}) == "66 °C");
    CHECK(show(Celsius{66.5}) == "66.5 °C");
    CHECK(show(Celsius{66.04}) == "66 °C");
    CHECK(show(Celsius{-1}) == "-1 °C");
    CHECK(show(Celsius{100}, fahrenheit()) == "212 °F");
    CHECK(show(Celsius{0}, fahrenheit()) == "32 °F");
    CHECK(show(Celsius{-40}, fahrenheit()) == "-40 °F");
    CHECK(show(Celsius{66}, fahrenheit()) == "151 °F");
    CHECK(show(CelsiusPerMinute{1}) == "1 °C/min");
    CHECK(show(CelsiusPerMinute{1}, fahrenheit()) == "1.8 °F/min");
}

TEST_CASE("Either gravity scale shows both kinds of extract") {
    CHECK(show(SpecificGravity{1.0485}) == "1.048");
    CHECK(show(SpecificGravity{1.049}) == "1.049");
    CHECK(show(Plato{12}) == "1.048");
    CHECK(show(Plato{12}, plato()) == "12.0 °P");
    CHECK(show(SpecificGravity{1.048}, plato()) == "11.9 °P");
    CHECK(show(SpecificGravity{0.998}, plato()) == "-0.5 °P");
}

TEST_CASE("Water is shown as 0.0 P, never as -0.0") {
    CHECK(show(SpecificGravity{1.0}, plato()) == "0.0 °P");
    CHECK(show(Number{-0.04, 1}) == "0.0");
    CHECK(show(Number{-0.0, 0}) == "0");
    CHECK(show(Number{-0.06, 1}) == "-0.1");
    CHECK(show(Celsius{-0.01}) == "0 °C");
}

TEST_CASE("Colour in both scales") {
    CHECK(show(Ebc{8}) == "8 EBC");
    CHECK(show(Ebc{12.56}) == "12.6 EBC");
    CHECK(show(Ebc{25}, srm()) == "12.7 SRM");
}

TEST_CASE("An age is in days below three months, in months to three years, then in years") {
    const auto shown = [](double days) { return show(Age{days}); };
    CHECK(shown(0) == "0 days");
    CHECK(shown(1) == "1 day");
    CHECK(shown(91) == "91 days");
    CHECK(shown(92) == "3 months");
    CHECK(shown(605) == "20 months");
    CHECK(shown(1095) == "36 months");
    CHECK(shown(1096) == "3.0 years");
    CHECK(shown(1340) == "3.7 years");
    CHECK(show(Amount{Days{605}}) == "605 days"); // a time that is kept is not an age
}

TEST_CASE("Shares are per cent") {
    CHECK(show(Share{0.35}) == "35 %");
    CHECK(show(Share{0.125}) == "12.5 %");
    CHECK(show(Share{1.0 / 3}) == "33.3 %");
    CHECK(show(Share{0}) == "0 %");
    CHECK(show(Share{1}) == "100 %");
}

TEST_CASE("Differences of scores always have their sign") {
    CHECK(show(SignedPoints{0.4}) == "+0.4");
    CHECK(show(SignedPoints{-1.2}) == "-1.2");
    CHECK(show(SignedPoints{0}) == "0.0");
    CHECK(show(SignedPoints{0.04}) == "0.0");
    CHECK(show(SignedPoints{-0.04}) == "0.0");
    CHECK(show(Points{4.64}) == "4.6");
}

TEST_CASE("The other quantities with their units") {
    CHECK(show(Minutes{60}) == "60 min");
    CHECK(show(Minutes{7.5}) == "7.5 min");
    CHECK(show(Days{240}) == "240 days");
    CHECK(show(Days{1}) == "1 day");
    CHECK(show(Days{0.2}) == "0 days");
    CHECK(show(GramsPerLitre{5.24}) == "5.2 g/L");
    CHECK(show(GramsPerLitre{0.13}) == "0.13 g/L");
    CHECK(show(MilligramsPerLitre{0.25}) == "0.25 mg/L");
    CHECK(show(MilligramsPerLitre{42}) == "42.0 mg/L");
    CHECK(show(Ibu{10}) == "10 IBU");
    CHECK(show(Ibu{0.4}) == "0.4 IBU");
    CHECK(show(Ibu{23.6}) == "24 IBU");
    CHECK(show(Ph{3.4}) == "3.40");
    CHECK(show(PercentVol{5.13}) == "5.1 % vol");
    CHECK(show(LitresPerKilogram{3}) == "3.0 L/kg");
    CHECK(show(Co2Volumes{2.75}) == "2.8 vol");
    CHECK(show(Millilitres{330}) == "330 mL");
    CHECK(show(std::string("Plover")) == "Plover");
    CHECK(show(std::int64_t{-3}) == "-3");
    CHECK(show(Number{1.048, 3}) == "1.048");
    CHECK(show(Number{12.5, 0}) == "12");
    CHECK(show(std::chrono::sys_days(std::chrono::year(2026) / 3 / 2)) == "2 Mar 2026");
}

TEST_CASE("What is not a number is not shown as one") {
    CHECK(show(Litres{std::numeric_limits<double>::quiet_NaN()}) == "? L");
    CHECK(show(Points{std::numeric_limits<double>::infinity()}) == "?");
    CHECK(show(SignedPoints{std::numeric_limits<double>::quiet_NaN()}) == "?");
}

TEST_CASE("Whatever unit is chosen, the same amount is shown") {
    CHECK_PROPERTY("volume", [] {
        const double l = *rc::gen::inRange(10, 90'000) / 10.0;
        RC_ASSERT(std::abs(shownNumber(show(Litres{l})) - l) <= 0.5);
        RC_ASSERT(std::abs(shownNumber(show(Litres{l}, gallons())) * 3.785411784 - l) <= 0.2 + 0.0005 * l);
        RC_ASSERT(std::abs(shownNumber(show(Litres{l}, hectolitres())) * 100 - l) <= 0.5 + 1e-9);
    });
    CHECK_PROPERTY("temperature", [] {
        const double c = *rc::gen::inRange(-50, 1050) / 10.0;
        RC_ASSERT(std::abs(shownNumber(show(Celsius{c})) - c) <= 0.05 + 1e-9);
        RC_ASSERT(std::abs((shownNumber(show(Celsius{c}, fahrenheit())) - 32) / 1.8 - c) <= 0.3);
    });
    CHECK_PROPERTY("gravity", [] {
        const int millionths = *rc::gen::inRange(980'000, 1'200'000);
        RC_PRE(millionths % 1000 != 500); // half way between two shown ones: the last bit decides
        const SpecificGravity sg{millionths / 1e6};
        RC_ASSERT(std::abs(shownNumber(show(sg)) - sg.sg) <= 0.0005 + 1e-9);
        RC_ASSERT(std::abs(toGravity({shownNumber(show(sg, plato()))}).sg - sg.sg) <= 0.0003);
        RC_ASSERT(show(toPlato(sg)) == show(sg));
    });
}

TEST_CASE("A pressure says whether the air counts") {
    // 1 bar is 14.504 psi (NIST Special Publication 811)
    DisplayUnits pounds;
    pounds.pressure = DisplayUnits::Pressure::psi;
    CHECK(show(GaugePressure{2.36}) == "2.4 bar");
    CHECK(show(GaugePressure{0.773}) == "0.77 bar");
    CHECK(show(GaugePressure{1}, pounds) == "15 psi");
    CHECK(show(AbsolutePressure{1.01325}) == "1.0 bar absolute");
    CHECK(show(AbsolutePressure{2}, pounds) == "29 psi absolute");
}

} // namespace staveline
