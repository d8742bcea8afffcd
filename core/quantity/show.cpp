// SPDX-License-Identifier: GPL-3.0-or-later
// One place decides in which unit and with how many decimals a quantity is shown.
#include "quantity/colour.h"
#include "quantity/density.h"
#include "quantity/language.h"
#include "quantity/shown_units.h"
#include "quantity/text.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

namespace staveline {
namespace {

/// Fixed decimals with a point, until `amountInWords` sets the mark of the language; never "-0.0".
std::string fixed(double value, int decimals) {
    if (!std::isfinite(value))
        return "?";
    auto text = fmt::format("{:.{}f}", value, decimals);
    if (text.front() == '-' && text.find_first_not_of("-0.") == std::string::npos)
        text.erase(0, 1);
    return text;
}
/// At most one decimal, and none when it would be 0: "66", "66.5".
std::string upToOne(double value) {
    auto text = fixed(value, 1);
    if (text.ends_with(".0"))
        text.resize(text.size() - 2);
    return text;
}
/// Three figures or all whole ones: 0.45, 6.2, 88.0, 1250. `from` is the size at which the second decimal goes.
std::string scaled(double value, double from = 1) {
    const double size = std::abs(value);
    return fixed(value, size < from ? 2 : size < 999.95 ? 1 : 0);
}
std::string signedPoints(double points) {
    const auto text = fixed(points, 1);
    return points > 0 && text != "0.0" ? '+' + text : text;
}

/// Two figures, all other digits nought: 4.5, 45, 450.
std::string twoFigures(double value) {
    if (!(std::abs(value) > 0) || !std::isfinite(value))
        return fixed(value, 0);
    const double last = std::pow(10, std::floor(std::log10(std::abs(value))) - 1);
    return fixed(std::round(value / last) * last, last < 1 ? 1 : 0);
}

std::string volume(double litres, bool rough, const DisplayUnits& units) {
    const auto [size, word] = shownVolume(units.volume);
    const double shown = litres / size;
    if (rough)
        return fmt::format("{} {}", twoFigures(shown), word);
    const bool large = units.volume == DisplayUnits::Volume::hectolitre;
    return fmt::format("{} {}", large ? fixed(shown, 2) : scaled(shown), word);
}
std::string temperature(double celsius, const DisplayUnits& units) {
    const auto [step, zero, word] = shownTemperature(units.temperature);
    const double shown = celsius * step + zero;
    const bool fine = units.temperature == DisplayUnits::Temperature::celsius; // 1 °F is fine enough
    return fmt::format("{} {}", fine ? upToOne(shown) : fixed(shown, 0), word);
}
std::string heatingRate(double celsius, const DisplayUnits& units) {
    const auto [step, zero, word] = shownTemperature(units.temperature);
    return fmt::format("{} {}/min", upToOne(celsius * step), word);
}
std::string gravity(SpecificGravity gravity, Plato extract, const DisplayUnits& units) {
    return units.gravity == DisplayUnits::Gravity::specific ? fixed(gravity.sg, 3) : fixed(extract.p, 1) + " °P";
}
std::string colour(double ebc, const DisplayUnits& units) {
    return units.colour == DisplayUnits::Colour::srm ? upToOne(toSrm(Ebc{ebc})) + " SRM" : upToOne(ebc) + " EBC";
}
std::string pressure(double bars, const DisplayUnits& units) {
    const auto [size, word] = shownPressure(units.pressure);
    const bool fine = units.pressure == DisplayUnits::Pressure::bar; // 1 psi is fine enough
    return fmt::format("{} {}", fine ? scaled(bars / size) : fixed(bars / size, 0), word);
}
/// "3 days" and "1 day" in the words of the language.
std::string counted(const std::string& number, std::string_view unit) {
    return number + ' ' + inLanguage(unit, number == "1" ? 1 : 2);
}
std::string days(double count) {
    return counted(fixed(count, 0), "days");
}
/// Days, from three months on months, from three years on years.
std::string age(double count) {
    constexpr double monthsPerYear = 12;
    if (count < 3 * daysPerMonth)
        return days(count);
    if (count < 3 * daysPerYear)
        return counted(fixed(count / daysPerYear * monthsPerYear, 0), "months");
    return counted(fixed(count / daysPerYear, 1), "years");
}
/// Below ten a decimal where it says something, above none.
std::string upToTen(double value) {
    return std::abs(value) < 10 ? upToOne(value) : fixed(value, 0);
}

/// The kinds whose unit the brewer cannot choose.
std::string inOneUnit(const Amount& amount) {
    switch (amount.kind) {
    case UnitKind::points:
        return fixed(amount.value, 1);
    case UnitKind::pointsDifference:
        return signedPoints(amount.value);
    case UnitKind::mass:
        return scaled(amount.value, 10) + " kg";
    case UnitKind::smallMass:
        return upToTen(amount.value) + " g";
    case UnitKind::minutes:
        return upToOne(amount.value) + " min";
    case UnitKind::days:
        return days(amount.value);
    case UnitKind::age:
        return age(amount.value);
    case UnitKind::years:
        return counted(upToOne(amount.value), "years");
    case UnitKind::concentration:
        return scaled(amount.value) + " g/L";
    case UnitKind::trace:
        return scaled(amount.value) + " mg/L";
    case UnitKind::oxygenUptake:
        return counted(scaled(amount.value), "mg/L a year");
    case UnitKind::bitterness:
        return upToTen(amount.value) + " IBU";
    case UnitKind::ph:
        return fixed(amount.value, 2);
    case UnitKind::alcohol:
        return fixed(amount.value, 1) + " % vol";
    case UnitKind::share:
        return upToOne(100 * amount.value) + " %";
    case UnitKind::percent:
    case UnitKind::percentOfGrist:
    case UnitKind::percentOfExtract:
        return upToOne(amount.value) + " %";
    case UnitKind::content:
        return scaled(amount.value, 10) + " mg/kg";
    case UnitKind::enzymePower:
        return fixed(amount.value, 0) + " WK";
    case UnitKind::thickness:
        return fixed(amount.value, 1) + " L/kg";
    case UnitKind::carbonation:
        return counted(fixed(amount.value, 1), "vol");
    case UnitKind::smallVolume:
        return fixed(amount.value, 0) + " mL";
    default:
        return fixed(amount.value, amount.decimals);
    }
}

std::string amount(const Amount& amount, const DisplayUnits& units) {
    switch (amount.kind) {
    case UnitKind::volume:
        return volume(amount.value, amount.rough, units);
    case UnitKind::flow:
        return volume(amount.value, amount.rough, units) + "/h";
    case UnitKind::temperature:
        return temperature(amount.value, units);
    case UnitKind::heatingRate:
        return heatingRate(amount.value, units);
    case UnitKind::extract:
        return gravity(toGravity(Plato{amount.value}), Plato{amount.value}, units);
    case UnitKind::gravity:
        return gravity(SpecificGravity{amount.value}, toPlato(SpecificGravity{amount.value}), units);
    case UnitKind::colour:
        return colour(amount.value, units);
    case UnitKind::pressure:
        return pressure(amount.value, units);
    case UnitKind::absolutePressure:
        return pressure(amount.value, units) + ' ' + inLanguage("absolute");
    default:
        return inOneUnit(amount);
    }
}

/// No unit has a point in it.
std::string amountInWords(const Amount& size, const DisplayUnits& units) {
    auto text = amount(size, units);
    std::replace(text.begin(), text.end(), '.', spoken().decimalMark);
    return text;
}

/// How each kind of argument looks.
struct Show {
    const DisplayUnits& units;

    std::string operator()(const std::string& text) const { return text; }
    std::string operator()(std::int64_t count) const { return fmt::format("{}", count); }
    std::string operator()(const Amount& size) const { return amountInWords(size, units); }
    std::string operator()(std::chrono::sys_days day) const { return dayInWords(day); }
};

} // namespace

std::string show(const ArgumentValue& value, const DisplayUnits& units) {
    return std::visit(Show{units}, value);
}

} // namespace staveline
