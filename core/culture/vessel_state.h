// SPDX-License-Identifier: GPL-3.0-or-later
// What lives in the vessel, and what happens between refill and draw-off.
// State is carried whole: carbohydrate in hexose equivalents (carbon balances), acids with strong-ion difference and
// buffer (pH follows), phenol intermediates, cis and trans bitter acids, culture sizes and hop tolerance.
#pragma once

#include "quantity/composition.h"

namespace staveline {

/// Constants of the mixed culture, per day at 20 C (phenols: at 18 C). Rows in resources/data/parameters.csv.
struct CultureParameters {
    double mu = .067, q = .48, Ks = 1.0, Lug = 8.5, Lup = 13.4, yL = .95, aH = .016;
    double kd = .0143, kRrel = .25, sig = .174, vb = .030, yE2 = .45, mub = .05;
    double decX = .0005, Q10 = 2.0, phiO = .5;
    double ret = .6; ///< share of the culture held by wood or lees
    double Xf = 0, XBf = 0;
    double Kip = 3.05, dph = .075;
    double n = 2.0, gamma = .5, id0 = 20, idmax = 60, tg = 120, tl = 270;
    double kdec = 1 / 20., kred = 1 / 25., yred = .70, ksink = .0125, kes = .0006, kvg = .0035;
    double kBG = .024, kAX = .0116;                            ///< per month
    double isoPka = 3.1, hopPh = 4.2;                          ///< undissociated bitter acids; where ID50 is stated
    double isoCisMonths = 60, isoTransMonths = 12, isoQ10 = 3; ///< half-lives at 20 C and their change per 10 C
    double vinylEnergy = 85, vinylPh = 4.3, vinylSlope = .5, vinylMost = 4; ///< loss of vinyl phenols: kJ/mol, pH law
    bool operator==(const CultureParameters&) const = default;
};

struct VesselState {
    Composition beer;
    double lactics = .9;      ///< X, 0..1
    double brett = .9;        ///< XB, 0..1
    double hopTolerance = 20; ///< ID50 [IBU at pH 4.2]
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
