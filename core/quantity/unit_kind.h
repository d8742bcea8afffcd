// SPDX-License-Identifier: GPL-3.0-or-later
// What a number measures. A kind stands for one stored unit; in which unit it is shown is decided in shown_units.h.
#pragma once

namespace staveline {

/// The stored unit in brackets.
enum class UnitKind {
    none,             ///< a bare number
    points,           ///< tasting score, 0..10
    pointsDifference, ///< difference of scores, always shown with its sign
    volume,           ///< [L]
    flow,             ///< [L/h]
    mass,             ///< [kg]
    smallMass,        ///< [g]
    temperature,      ///< [C]
    heatingRate,      ///< [C/min]
    minutes,          ///< [min]
    days,             ///< [d]
    years,            ///< [a]
    age,              ///< of beer, or how long ago [d]; shown as days, months or years
    extract,          ///< [P]
    gravity,          ///< [SG]
    concentration,    ///< [g/L]
    trace,            ///< [mg/L]
    oxygenUptake,     ///< [mg/(L a)]
    bitterness,       ///< [IBU]
    colour,           ///< [EBC]
    ph,               ///< [pH]
    alcohol,          ///< [% vol]
    share,            ///< [1], 0..1, shown as per cent
    percent,          ///< [%]
    percentOfGrist,   ///< [%]
    percentOfExtract, ///< [%]
    content,          ///< of a substance in grain [mg/kg]
    enzymePower,      ///< Windisch-Kolbach [WK]
    thickness,        ///< of a mash [L/kg]
    carbonation,      ///< [vol]
    pressure,         ///< above that of the air, as a gauge shows it [bar]
    absolutePressure, ///< above a vacuum [bar]
    smallVolume       ///< [mL]
};

} // namespace staveline
