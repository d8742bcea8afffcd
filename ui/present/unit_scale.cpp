// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/present/unit_scale.h"

#include "quantity/density.h"

namespace staveline::ui {
namespace {

constexpr double litresPerUsGallon = 3.785411784; // exact by definition (NIST Handbook 44)
constexpr double litresPerHectolitre = 100;
constexpr double fahrenheitPerCelsius = 1.8;

double litresPerShown(DisplayUnits::Volume unit) {
    switch (unit) {
    case DisplayUnits::Volume::usGallon:
        return litresPerUsGallon;
    case DisplayUnits::Volume::hectolitre:
        return litresPerHectolitre;
    case DisplayUnits::Volume::litre:
        break;
    }
    return 1;
}

QString volumeSuffix(DisplayUnits::Volume unit) {
    switch (unit) {
    case DisplayUnits::Volume::usGallon:
        return QStringLiteral("US gal");
    case DisplayUnits::Volume::hectolitre:
        return QStringLiteral("hL");
    case DisplayUnits::Volume::litre:
        break;
    }
    return QStringLiteral("L");
}

} // namespace

UnitScale::UnitScale(UnitKind kind, const DisplayUnits& units) : kind_(kind), units_(units) {}

bool UnitScale::isSpecificGravity() const {
    return kind_ == UnitKind::gravity && units_.gravity == DisplayUnits::Gravity::specific;
}

QString UnitScale::suffix() const {
    switch (kind_) {
    case UnitKind::volume:
        return volumeSuffix(units_.volume);
    case UnitKind::temperature:
        return units_.temperature == DisplayUnits::Temperature::celsius ? QStringLiteral("°C") : QStringLiteral("°F");
    case UnitKind::gravity:
        return isSpecificGravity() ? QStringLiteral("SG") : QStringLiteral("°P");
    case UnitKind::acidity:
        return QStringLiteral("g/L");
    case UnitKind::bitterness:
        return QStringLiteral("IBU");
    case UnitKind::days:
        return QStringLiteral("days");
    case UnitKind::years:
        return QStringLiteral("years");
    case UnitKind::percent:
        return QStringLiteral("%");
    case UnitKind::oxygen:
        return QStringLiteral("mg/L a year");
    case UnitKind::minutes:
        return QStringLiteral("min");
    case UnitKind::mass:
        return QStringLiteral("kg");
    case UnitKind::thickness:
        return QStringLiteral("L/kg");
    case UnitKind::perHour:
        return volumeSuffix(units_.volume) + QStringLiteral("/h");
    case UnitKind::heating:
        return units_.temperature == DisplayUnits::Temperature::celsius ? QStringLiteral("°C/min")
                                                                        : QStringLiteral("°F/min");
    case UnitKind::ph:
    case UnitKind::none:
        break;
    }
    return {};
}

double UnitScale::toShown(double stored) const {
    switch (kind_) {
    case UnitKind::volume:
    case UnitKind::perHour:
        return stored / litresPerShown(units_.volume);
    case UnitKind::heating:
        return units_.temperature == DisplayUnits::Temperature::celsius ? stored : stored * fahrenheitPerCelsius;
    case UnitKind::temperature:
        return units_.temperature == DisplayUnits::Temperature::celsius ? stored : stored * fahrenheitPerCelsius + 32;
    case UnitKind::gravity:
        return isSpecificGravity() ? stored : toPlato(SpecificGravity{stored}).p;
    case UnitKind::percent:
        return stored * 100;
    default:
        return stored;
    }
}

double UnitScale::toStored(double shown) const {
    switch (kind_) {
    case UnitKind::volume:
    case UnitKind::perHour:
        return shown * litresPerShown(units_.volume);
    case UnitKind::heating:
        return units_.temperature == DisplayUnits::Temperature::celsius ? shown : shown / fahrenheitPerCelsius;
    case UnitKind::temperature:
        return units_.temperature == DisplayUnits::Temperature::celsius ? shown : (shown - 32) / fahrenheitPerCelsius;
    case UnitKind::gravity:
        return isSpecificGravity() ? shown : toGravity(Plato{shown}).sg;
    case UnitKind::percent:
        return shown / 100;
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
    const bool volume = kind_ == UnitKind::volume || kind_ == UnitKind::perHour;
    if (volume && units_.volume == DisplayUnits::Volume::hectolitre)
        return 4;
    return volume || kind_ == UnitKind::ph || kind_ == UnitKind::acidity || kind_ == UnitKind::mass ? 3 : 2;
}

QString UnitScale::show(double stored) const {
    QString number = QString::number(toShown(stored), 'f', mostDecimals());
    int spare = mostDecimals() - fewestDecimals();
    while (spare-- > 0 && number.endsWith(QLatin1Char('0')))
        number.chop(1);
    if (number.endsWith(QLatin1Char('.')))
        number.chop(1);
    return number == QStringLiteral("-0") ? QStringLiteral("0") : number;
}

} // namespace staveline::ui
