// SPDX-License-Identifier: GPL-3.0-or-later
// The model as its reference has it: values under which everything mended since does nothing. The frozen regression
// vectors hold for these, whatever resources/data ships.
#pragma once

#include "forward/parameters.h"

namespace staveline::reference {

constexpr culture::CultureParameters neutralCulture() {
    culture::CultureParameters p;
    p.startLactics = .004;
    p.startBrett = .02;
    p.lacticsGrowth = .067;
    p.souring = .48;
    p.sugarLeak = .174;
    p.brettSugar = .03;
    p.enzymeOpening = 0;
    p.starvedDecline = p.decline;
    p.brettGrowthPer10C = p.speedPer10C;
    p.coldest = -1e3;
    p.warmest = 1e3;
    p.vesselHopLoss = 0;
    p.hopTolerance = 20;
    p.mostHopTolerance = 60;
    p.esterSplitting = .0006;
    p.coumaricPerEster = 0;
    p.evaporation = 0;
    p.alcoholBrakes = 1e6;
    p.alcoholStops = 2e6;
    return p;
}

constexpr brewing::BrewParameters neutralBrew() {
    brewing::BrewParameters p;
    p.otherFollowsMash = 0;
    p.alphaKept = 0;
    p.coumaricTurnover = 1;
    p.wortBuffer = 1;
    p.phWort = p.phFresh;
    p.betaHalfLife65 = 10;
    p.betaStableShare = 0;
    return p;
}

inline forward::Parameters neutralParameters() {
    forward::Parameters p;
    p.brew = neutralBrew();
    p.culture = neutralCulture();
    p.score.arabinoxylanThickening = .10;
    p.score.ordinaryArabinoxylan = .5;
    return p;
}

} // namespace staveline::reference
