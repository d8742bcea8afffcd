// SPDX-License-Identifier: GPL-3.0-or-later
// What is shown can be typed: every quantity's number is read back to what was shown, in each unit, with either mark.
#include "quantity/density.h"
#include "quantity/parse.h"
#include "quantity/text.h"
#include "support/property.h"

#include <algorithm>
#include <cmath>

namespace staveline {
namespace {

constexpr Range anything{-1e9, 1e9};

DisplayUnits someUnits() {
    using U = DisplayUnits;
    return {*rc::gen::element(U::Volume::litre, U::Volume::usGallon, U::Volume::hectolitre),
            *rc::gen::element(U::Temperature::celsius, U::Temperature::fahrenheit),
            *rc::gen::element(U::Gravity::plato, U::Gravity::specific),
            *rc::gen::element(U::Colour::ebc, U::Colour::srm)};
}

/// The number at the start of a shown quantity, with a comma half of the time.
std::string typed(const std::string& shown) {
    auto number = shown.substr(0, shown.find(' '));
    if (*rc::gen::arbitrary<bool>())
        std::replace(number.begin(), number.end(), '.', ',');
    return number;
}
/// Half of the last decimal shown.
double grain(const std::string& number) {
    const auto mark = number.find_first_of(".,");
    return mark == std::string::npos ? .5 : .5 * std::pow(10.0, -static_cast<double>(number.size() - mark - 1));
}
double amount(int low, int high) {
    return *rc::gen::inRange(low * 1000, high * 1000) / 1000.0;
}

/// Shown in `units`, typed again and taken back by `toStored`, it is the same within what was shown.
template <Quantity Q>
void readsBack(Q value, const DisplayUnits& units, double (*toShown)(double, const DisplayUnits&)) {
    const auto number = typed(show(value, units));
    const auto back = parseNumber(number, anything);
    RC_ASSERT(back.has_value());
    RC_ASSERT(std::abs(*back - toShown(raw(value), units)) <= grain(number) * (1 + 1e-9) + 1e-12);
}

double asIs(double value, const DisplayUnits&) {
    return value;
}

} // namespace

TEST_CASE("Volumes, temperatures and gravities are read back as shown in every unit") {
    CHECK_PROPERTY("volume", [] {
        readsBack(Litres{amount(0, 5000)}, someUnits(), [](double l, const DisplayUnits& u) {
            return u.volume == DisplayUnits::Volume::litre        ? l
                   : u.volume == DisplayUnits::Volume::hectolitre ? l / 100
                                                                  : l / 3.785411784;
        });
    });
    CHECK_PROPERTY("temperature", [] {
        readsBack(Celsius{amount(-10, 110)}, someUnits(), [](double c, const DisplayUnits& u) {
            return u.temperature == DisplayUnits::Temperature::celsius ? c : c * 1.8 + 32;
        });
    });
    CHECK_PROPERTY("gravity", [] {
        readsBack(SpecificGravity{.98 + amount(0, 200) / 1000}, someUnits(), [](double sg, const DisplayUnits& u) {
            return u.gravity == DisplayUnits::Gravity::specific ? sg : toPlato(SpecificGravity{sg}).p;
        });
    });
    CHECK_PROPERTY("extract", [] {
        readsBack(Plato{amount(0, 30)}, someUnits(), [](double p, const DisplayUnits& u) {
            return u.gravity == DisplayUnits::Gravity::plato ? p : toGravity(Plato{p}).sg;
        });
    });
}

TEST_CASE("Quantities of one unit are read back as shown") {
    CHECK_PROPERTY("mass, hops, days, acid, bitterness, pH, alcohol, thickness", [] {
        const auto units = someUnits();
        readsBack(Kilograms{amount(0, 900)}, units, asIs);
        readsBack(Grams{amount(0, 900)}, units, asIs);
        readsBack(Minutes{amount(0, 600)}, units, asIs);
        readsBack(Days{amount(0, 4000)}, units, asIs);
        readsBack(GramsPerLitre{amount(0, 30)}, units, asIs);
        readsBack(MilligramsPerLitre{amount(0, 2000)}, units, asIs);
        readsBack(Ibu{amount(0, 80)}, units, asIs);
        readsBack(Ph{amount(2, 7)}, units, asIs);
        readsBack(PercentVol{amount(0, 14)}, units, asIs);
        readsBack(LitresPerKilogram{amount(1, 8)}, units, asIs);
        readsBack(Points{amount(0, 10)}, units, asIs);
    });
    CHECK_PROPERTY("shares are shown as per cent", [] {
        readsBack(Share{amount(0, 1)}, someUnits(), [](double share, const DisplayUnits&) { return 100 * share; });
    });
}

TEST_CASE("A gravity shown is a gravity when typed, and never another one") {
    CHECK_PROPERTY("gravity field", [] {
        const SpecificGravity gravity{.98 + *rc::gen::inRange(0, 220) / 1000.0};
        const auto back = parseGravity(typed(show(gravity)));
        RC_ASSERT(back.has_value());
        RC_ASSERT(std::abs(back->sg - gravity.sg) < 1e-9);
        // without its mark it is refused, and what is offered is what was meant
        auto bare = show(gravity);
        bare.erase(std::remove(bare.begin(), bare.end(), '.'), bare.end());
        const auto refused = parseGravity(bare);
        RC_ASSERT(!refused.has_value());
        for (const auto& argument : refused.error().remedy.arguments)
            if (argument.name == "instead")
                RC_ASSERT(std::abs(std::get<Amount>(argument.value).value - gravity.sg) < 1e-9);
    });
}

TEST_CASE("A day in words or as a record is the same day") {
    CHECK_PROPERTY("days", [] {
        const Day day{std::chrono::days{*rc::gen::inRange(-25000, 60000)}};
        RC_ASSERT(*parseDay(isoDay(day)) == day);
        RC_ASSERT(show(day) == dayInWords(day));
        const auto year = isoDay(day).substr(0, 4);
        RC_ASSERT(dayInWords(day).ends_with(year));
        RC_ASSERT(daysBetween(day, day + std::chrono::days{30}) == 30);
    });
}

} // namespace staveline
