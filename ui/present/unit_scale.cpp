// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/present/unit_scale.h"

#include "quantity/colour.h"
#include "quantity/density.h"
#include "quantity/language.h"
#include "quantity/shown_units.h"
#include "ui/present/text.h"

namespace staveline::ui {
namespace {

QString wordOf(DisplayUnits::Volume unit) {
    return qs(shownVolume(unit).word);
}
QString wordOf(DisplayUnits::Temperature unit) {
    return qs(shownTemperature(unit).word);
}
QString wordOf(DisplayUnits::Pressure unit) {
    return qs(shownPressure(unit).word);
}

/// Of kinds that are shown in one unit alone.
std::string_view fixedSuffix(UnitKind kind) {
    switch (kind) {
    case UnitKind::concentration:
        return "g/L";
    case UnitKind::bitterness:
        return "IBU";
    case UnitKind::days:
    case UnitKind::age:
        return "days";
    case UnitKind::years:
        return "years";
    case UnitKind::share:
    case UnitKind::percent:
    case UnitKind::percentOfGrist:
    case UnitKind::percentOfExtract:
        return "%";
    case UnitKind::oxygenUptake:
        return "mg/L a year";
    case UnitKind::minutes:
        return "min";
    case UnitKind::mass:
        return "kg";
    case UnitKind::content:
        return "mg/kg";
    case UnitKind::enzymePower:
        return "WK";
    case UnitKind::thickness:
        return "L/kg";
    case UnitKind::smallMass:
        return "g";
    case UnitKind::trace:
        return "mg/L";
    case UnitKind::alcohol:
        return "% vol";
    case UnitKind::carbonation:
        return "vol";
    case UnitKind::smallVolume:
        return "mL";
    default:
        return {};
    }
}

} // namespace

UnitScale::UnitScale(UnitKind kind, const DisplayUnits& units) : kind_(kind), units_(units) {}

bool UnitScale::isSpecificGravity() const {
    return (kind_ == UnitKind::gravity || kind_ == UnitKind::extract) &&
           units_.gravity == DisplayUnits::Gravity::specific;
}

QString UnitScale::suffix() const {
    switch (kind_) {
    case UnitKind::volume:
        return wordOf(units_.volume);
    case UnitKind::flow:
        return wordOf(units_.volume) + QStringLiteral("/h");
    case UnitKind::temperature:
        return wordOf(units_.temperature);
    case UnitKind::heatingRate:
        return wordOf(units_.temperature) + QStringLiteral("/min");
    case UnitKind::gravity:
    case UnitKind::extract:
        return isSpecificGravity() ? QStringLiteral("SG") : QStringLiteral("°P");
    case UnitKind::colour:
        return qs(units_.colour == DisplayUnits::Colour::srm ? "SRM" : "EBC");
    case UnitKind::pressure:
        return wordOf(units_.pressure);
    case UnitKind::absolutePressure:
        return wordOf(units_.pressure) + QLatin1Char(' ') + qs(inLanguage("absolute"));
    default:
        return qs(inLanguage(fixedSuffix(kind_)));
    }
}

double UnitScale::toShown(double stored) const {
    const ShownTemperature degrees = shownTemperature(units_.temperature);
    switch (kind_) {
    case UnitKind::volume:
    case UnitKind::flow:
        return stored / shownVolume(units_.volume).litres;
    case UnitKind::heatingRate:
        return stored * degrees.degreesPerCelsius;
    case UnitKind::temperature:
        return stored * degrees.degreesPerCelsius + degrees.atZeroCelsius;
    case UnitKind::gravity:
        return isSpecificGravity() ? stored : toPlato(SpecificGravity{stored}).p;
    case UnitKind::extract:
        return isSpecificGravity() ? toGravity(Plato{stored}).sg : stored;
    case UnitKind::pressure:
    case UnitKind::absolutePressure:
        return stored / shownPressure(units_.pressure).bars;
    case UnitKind::share:
        return stored * 100;
    case UnitKind::colour:
        return units_.colour == DisplayUnits::Colour::srm ? toSrm(Ebc{stored}) : stored;
    default:
        return stored;
    }
}

double UnitScale::toStored(double shown) const {
    const ShownTemperature degrees = shownTemperature(units_.temperature);
    switch (kind_) {
    case UnitKind::volume:
    case UnitKind::flow:
        return shown * shownVolume(units_.volume).litres;
    case UnitKind::heatingRate:
        return shown / degrees.degreesPerCelsius;
    case UnitKind::temperature:
        return (shown - degrees.atZeroCelsius) / degrees.degreesPerCelsius;
    case UnitKind::gravity:
        return isSpecificGravity() ? shown : toGravity(Plato{shown}).sg;
    case UnitKind::extract:
        return isSpecificGravity() ? toPlato(SpecificGravity{shown}).p : shown;
    case UnitKind::pressure:
    case UnitKind::absolutePressure:
        return shown * shownPressure(units_.pressure).bars;
    case UnitKind::share:
        return shown / 100;
    case UnitKind::colour:
        return units_.colour == DisplayUnits::Colour::srm ? ebcOfSrm(shown).ebc : shown;
    default:
        return shown;
    }
}

int UnitScale::fewestDecimals() const {
    return isSpecificGravity() ? 3 : 0;
}

int UnitScale::mostDecimals() const {
    if (isSpecificGravity())
        return 4;
    const bool volume = kind_ == UnitKind::volume || kind_ == UnitKind::flow;
    if (volume && units_.volume == DisplayUnits::Volume::hectolitre)
        return 4;
    return volume || kind_ == UnitKind::ph || kind_ == UnitKind::concentration || kind_ == UnitKind::mass ? 3 : 2;
}

QString UnitScale::show(double stored) const {
    QString number = numberWords(toShown(stored), mostDecimals());
    int spare = mostDecimals() - fewestDecimals();
    while (spare-- > 0 && number.endsWith(QLatin1Char('0')))
        number.chop(1);
    if (number.endsWith(QLatin1Char(spoken().decimalMark)))
        number.chop(1);
    return number == QStringLiteral("-0") ? QStringLiteral("0") : number;
}

} // namespace staveline::ui
