// SPDX-License-Identifier: GPL-3.0-or-later
// What lives in the vessel, and what happens between refill and draw-off.
// State is carried whole: carbohydrate in hexose equivalents (carbon balances), acids with strong-ion difference and
// buffer (pH follows), phenol intermediates, cis and trans bitter acids, culture sizes and hop tolerance.
#pragma once

#include "quantity/composition.h"

namespace staveline {

/// Constants of the mixed culture, at 20 C unless said otherwise (phenols: at 18 C). Rows in
/// resources/data/parameters.csv.
struct CultureParameters {
    double lacticsGrowth = .067;        ///< growth of lactics [1/d]
    double souring = .48;               ///< lactic acid made by a full culture with sugar at hand [g/(L d)]
    double halfSpeedSugar = 1.0;        ///< sugar at which lactics work at half speed [g/L]
    double acidStopsGrowth = 8.5;       ///< undissociated lactic acid that stops growth [g/L]
    double acidStopsSouring = 13.4;     ///< undissociated lactic acid that stops acid [g/L]
    double lacticYield = .95;           ///< lactic acid from a gram of hexose [g/g]
    double aceticPerLactic = .016;      ///< acetic acid made with a gram of lactic acid [g/g]
    double dextrinOpening = .0143;      ///< opening of accessible dextrin by a full Brettanomyces [1/d]
    double residueAgainstDextrin = .25; ///< opening of the hard part of the dextrin against the easy part
    double sugarLeak = .174;            ///< share of the opened dextrin that reaches lactics
    double brettSugar = .030;           ///< sugar Brettanomyces takes directly [g/(L d)]
    double brettEthanol = .45;          ///< alcohol from a gram of hexose by Brettanomyces [g/g]
    double brettGrowth = .05;           ///< growth of Brettanomyces [1/d]
    double decline = .0005;             ///< slow decline of lactics and Brettanomyces [1/d]
    double speedPer10C = 2.0;           ///< speed-up of culture and phenols for 10 C
    double oxygenToAcetic = .5;         ///< share of the oxygen that ends in acetic acid
    double heldBack = .6;               ///< share of the culture that wood or lees hold back at a draw
    double refillLactics = 0;           ///< lactics in the refill
    double refillBrett = 0;             ///< Brettanomyces in the refill
    double stopPh = 3.05;               ///< pH at which lactics work at half speed [pH]
    double stopWidth = .075;            ///< width of the stop of lactics by pH [pH]
    double hopSteepness = 2.0;          ///< steepness of the hop brake
    double phSharpensHops = .5;         ///< how far pH sharpens hops: 1 as in pure medium, 0 not at all
    double hopTolerance = 20;           ///< bitterness that halves acid in a culture that has met no hops [IBU]
    double mostHopTolerance = 60;       ///< bitterness that halves acid after long contact with hops [IBU]
    double toleranceGain = 120;         ///< time to gain hop tolerance [d]
    double toleranceLoss = 270;         ///< time to lose hop tolerance [d]
    double decarboxylation = .05;       ///< ferulic acid to vinyl guaiacol by a full Brettanomyces at 18 C [1/d]
    double vinylReduction = .04;        ///< vinyl to ethyl phenols by a full Brettanomyces at 18 C [1/d]
    double reductionYield = .70;        ///< yield of vinyl to ethyl phenols
    double phenolicSink = .0125;        ///< phenolic acids reduced by lactics to nothing one smells [1/d]
    double esterSplitting = .0006;      ///< splitting of feruloyl esters [1/d]
    double vinylLoss = .0035;           ///< loss of vinyl phenols at 20 C and pH 4.3 [1/d]
    double glucanLoss = .024;           ///< loss of beta-glucan [1/month]
    double arabinoxylanLoss = .0116;    ///< loss of arabinoxylan [1/month]
    double isoPka = 3.1;                ///< dissociation of iso-alpha acids [pH]
    double hopPh = 4.2;                 ///< pH at which hop tolerance is stated [pH]
    double isoCisMonths = 60;           ///< half-life of cis-iso-alpha acids at 20 C [months]
    double isoTransMonths = 12;         ///< half-life of trans-iso-alpha acids at 20 C [months]
    double isoSpeedPer10C = 3;          ///< speed-up of the loss of iso-alpha acids for 10 C
    double vinylEnergy = 85;            ///< how temperature speeds the loss of vinyl phenols [kJ/mol]
    double vinylPh = 4.3;               ///< pH at which the loss of vinyl phenols is stated [pH]
    double vinylSlope = .5;             ///< decades of the loss of vinyl phenols for a unit of pH [1/pH]
    double vinylMost = 4;               ///< most that acid multiplies the loss of vinyl phenols by
    bool operator==(const CultureParameters&) const = default;
};

struct VesselState {
    Composition beer;
    double lactics = .9;      ///< lactic acid bacteria against a full culture, 0..1
    double brett = .9;        ///< Brettanomyces against a full culture, 0..1
    double hopTolerance = 20; ///< bitterness that halves acid at pH 4.2 [IBU]
    bool operator==(const VesselState&) const = default;
};

struct AgeConditions {
    Days days{240};            ///< 0..36525; outside: the nearest end
    Celsius temperature{16};   ///< -5..45; outside: the nearest end
    double oxygenPerYear = 10; ///< mg/(L year), 0..10000; outside: the nearest end
};

/// Fresh beer into old: composition by volume, culture by what the walls hold back.
[[nodiscard]] VesselState refill(const VesselState& old, const Composition& fresh, Share share,
                                 const CultureParameters& parameters);
/// Pure; two half intervals equal one within the integrator's tolerance (steps of at most one day).
[[nodiscard]] VesselState age(const VesselState& state, const AgeConditions& conditions,
                              const CultureParameters& parameters);
/// A vessel just inoculated, filled with `beer`.
[[nodiscard]] VesselState youngVessel(const Composition& beer, const CultureParameters& parameters);

/// How far hops let lactics work, 0..1: 1 without hops, 0.5 at the culture's tolerance at pH 4.2.
[[nodiscard]] double hopFreedom(Ibu bitterness, double hopTolerance, Ph ph, const CultureParameters& parameters);

} // namespace staveline
