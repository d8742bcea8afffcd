// SPDX-License-Identifier: GPL-3.0-or-later
// What lives in the vessel, and what happens between refill and draw-off.
// State is carried whole: carbohydrate in hexose equivalents (carbon balances), acids with strong-ion difference and
// buffer (pH follows), phenol intermediates, cis and trans bitter acids, culture sizes and hop tolerance.
#pragma once

#include "quantity/composition.h"
#include "quantity/constants.h"
#include "vessel/room.h"

namespace staveline::culture {

/// Constants of the mixed culture, at 20 C unless said otherwise (phenols: at 18 C). Rows of
/// resources/data/parameters.csv.
struct CultureParameters {
    double lacticsGrowth = constants::lacticsGrowth; ///< growth of lactics [1/d]
    double souring = constants::souring; ///< lactic acid made by a full culture with sugar at hand [g/(L d)]
    double halfSpeedSugar = constants::halfSpeedSugar;     ///< sugar at which lactics work at half speed [g/L]
    double acidStopsGrowth = constants::acidStopsGrowth;   ///< undissociated lactic acid that stops growth [g/L]
    double acidStopsSouring = constants::acidStopsSouring; ///< undissociated lactic acid that stops acid [g/L]
    double lacticYield = constants::lacticYield;           ///< lactic acid from a gram of hexose [g/g]
    double aceticPerLactic = constants::aceticPerLactic;   ///< acetic acid made with a gram of lactic acid [g/g]
    double dextrinOpening = constants::dextrinOpening; ///< opening of accessible dextrin by a full Brettanomyces [1/d]
    double residueAgainstDextrin =
        constants::residueAgainstDextrin;          ///< opening of the hard part of the dextrin against the easy part
    double sugarLeak = constants::sugarLeak;       ///< share of the opened dextrin that reaches lactics
    double brettSugar = constants::brettSugar;     ///< sugar Brettanomyces takes directly [g/(L d)]
    double brettEthanol = constants::brettEthanol; ///< alcohol from a gram of hexose by Brettanomyces [g/g]
    double brettGrowth = constants::brettGrowth;   ///< growth of Brettanomyces [1/d]
    double brettGrowthPer10C = constants::brettGrowthPer10C; ///< speed-up of that growth for 10 C in the cool
    double brettWarm = constants::brettWarm;                 ///< temperature up to which it speeds up so [C]
    double decline = constants::decline;                     ///< slow decline of lactics and Brettanomyces [1/d]
    double starvedDecline = constants::starvedDecline;       ///< decline of lactics without sugar [1/d]
    double starvingSugar = constants::starvingSugar;         ///< sugar below which they decline so [g/L]
    double speedPer10C = constants::speedPer10C;             ///< speed-up of culture and phenols for 10 C
    double coldest = constants::coldest;                     ///< below it the culture stands still [C]
    double warmest = constants::warmest;                     ///< above it the culture stands still [C]
    double coldRamp = constants::coldRamp;                   ///< from the coldest to where cold no longer tells [C]
    double warmRamp = constants::warmRamp;             ///< from the warmest down to where heat no longer tells [C]
    double oxygenToAcetic = constants::oxygenToAcetic; ///< share of the oxygen that ends in acetic acid
    double heldBack = constants::heldBack;             ///< share of the culture that wood or lees hold back at a draw
    double startLactics = constants::startLactics;     ///< lactics in a vessel just inoculated
    double startBrett = constants::startBrett;         ///< Brettanomyces in a vessel just inoculated
    double enzymeOpening = constants::enzymeOpening;   ///< opening of accessible dextrin by diastatic enzyme [1/d]
    double refillLactics = constants::refillLactics;   ///< lactics in the refill
    double refillBrett = constants::refillBrett;       ///< Brettanomyces in the refill
    double stopPh = constants::stopPh;                 ///< pH at which lactics work at half speed [pH]
    double stopWidth = constants::stopWidth;           ///< width of the stop of lactics by pH [pH]
    double alcoholBrakes = constants::alcoholBrakes;   ///< alcohol from which lactics slow down [% vol]
    double alcoholStops = constants::alcoholStops;     ///< alcohol at which they stop [% vol]
    double hopSteepness = constants::hopSteepness;     ///< steepness of the hop brake
    double phSharpensHops = constants::phSharpensHops; ///< how far pH sharpens hops: 1 as in pure medium, 0 not at all
    double hopTolerance =
        constants::hopTolerance; ///< bitterness that halves acid in a culture that has met no hops [IBU]
    double mostHopTolerance =
        constants::mostHopTolerance;                 ///< bitterness that halves acid after long contact with hops [IBU]
    double toleranceGain = constants::toleranceGain; ///< time to gain hop tolerance [d]
    double toleranceLoss = constants::toleranceLoss; ///< time to lose hop tolerance [d]
    double decarboxylation =
        constants::decarboxylation; ///< ferulic acid to vinyl guaiacol by a full Brettanomyces at 18 C [1/d]
    double vinylReduction = constants::vinylReduction; ///< vinyl to ethyl phenols by a full Brettanomyces at 18 C [1/d]
    double reductionYield = constants::reductionYield; ///< yield of vinyl to ethyl phenols
    double phenolicSink = constants::phenolicSink; ///< phenolic acids reduced by lactics to nothing one smells [1/d]
    double esterSplitting = constants::esterSplitting;     ///< splitting of feruloyl esters [1/d]
    double coumaricPerEster = constants::coumaricPerEster; ///< p-coumaric acid set free with ferulic acid [g/g]
    double vinylLoss = constants::vinylLoss;               ///< loss of vinyl phenols at 20 C and pH 4.3 [1/d]
    double glucanLoss = constants::glucanLoss;             ///< loss of beta-glucan [1/month]
    double arabinoxylanLoss = constants::arabinoxylanLoss; ///< loss of arabinoxylan [1/month]
    double isoPka = constants::isoPka;                     ///< dissociation of iso-alpha acids [pH]
    double hopPh = constants::hopPh;                       ///< pH at which hop tolerance is stated [pH]
    double isoCisMonths = constants::isoCisMonths;         ///< half-life of cis-iso-alpha acids at 20 C [months]
    double isoTransMonths = constants::isoTransMonths;     ///< half-life of trans-iso-alpha acids at 20 C [months]
    double isoSpeedPer10C = constants::isoSpeedPer10C;     ///< speed-up of the loss of iso-alpha acids for 10 C
    double evaporation = constants::evaporation;     ///< water and alcohol that leave, share of the volume [1/year]
    double vesselHopLoss = constants::vesselHopLoss; ///< hop acids lost to wood and culture [1/month]
    double vinylEnergy = constants::vinylEnergy;     ///< how temperature speeds the loss of vinyl phenols [kJ/mol]
    double vinylPh = constants::vinylPh;             ///< pH at which the loss of vinyl phenols is stated [pH]
    double vinylSlope = constants::vinylSlope;       ///< decades of the loss of vinyl phenols for a unit of pH [1/pH]
    double vinylMost = constants::vinylMost;         ///< most that acid multiplies the loss of vinyl phenols by
    bool operator==(const CultureParameters&) const = default;
};

struct VesselState {
    Composition beer;
    double lactics = .9;                           ///< lactic acid bacteria against a full culture, 0..1
    double brett = .9;                             ///< Brettanomyces against a full culture, 0..1
    double hopTolerance = constants::hopTolerance; ///< bitterness that halves acid at pH 4.2 [IBU]
    double enzyme = 0; ///< opening of accessible dextrin by the diastatic yeast of refills [1/d]
    bool operator==(const VesselState&) const = default;
};

struct AgeConditions {
    Days days{240};            ///< 0..36525; outside: the nearest end
    Celsius temperature{16};   ///< -5..45; outside: the nearest end
    double oxygenPerYear = 10; ///< mg/(L year), 0..10000; outside: the nearest end
    vessel::ByMonth apart{};   ///< how far each month lies from `temperature` [K]; all 0: the same all year
    Day from{};                ///< the first of the days; counts where the months differ
};

/// What lives in beer that goes in, against a full culture.
struct Inoculum {
    double lactics = 0, brett = 0; ///< 0..1
    double enzyme = 0;             ///< opening of accessible dextrin by diastatic yeast [1/d]
    bool operator==(const Inoculum&) const = default;
};

/// Fresh beer into old: composition and enzyme by volume, culture by what the walls hold back and what the beer brings
/// beyond the refill of the parameters.
[[nodiscard]] VesselState refill(const VesselState& old, const Composition& fresh, Share share,
                                 const CultureParameters& parameters, const Inoculum& brought = {});
/// Pure; two half intervals equal one within the integrator's tolerance (steps of at most one day). The beer ages at
/// the temperature of each month; where all months are alike, to the last bit as at that one temperature.
[[nodiscard]] VesselState age(const VesselState& state, const AgeConditions& conditions,
                              const CultureParameters& parameters);
/// A vessel just inoculated, filled with `beer`. The lag of Brettanomyces is in its small start: lag and growth change
/// alike with temperature, so what a lag costs is the same share at any.
[[nodiscard]] VesselState youngVessel(const Composition& beer, const CultureParameters& parameters);

/// How far hops let lactics work, 0..1: 1 without hops, 0.5 at the culture's tolerance at pH 4.2.
[[nodiscard]] double hopFreedom(Ibu bitterness, double hopTolerance, Ph ph, const CultureParameters& parameters);

} // namespace staveline::culture
