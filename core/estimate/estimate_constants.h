// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "estimate/offset.h"
#include "quantity/constants.h"
#include "quantity/dimension.h"

namespace staveline::estimate {

/// What a vessel's offset from the model is like before anything is known, and how it wanders.
[[nodiscard]] inline PerDimension<OffsetRule> offsetRules() {
    PerDimension<OffsetRule> rules;
    rules[Dimension::acidity] = {constants::estimate::acidityLevel, constants::estimate::difference,
                                 constants::estimate::acidityWalk,  constants::estimate::acidityWalkSettled,
                                 constants::estimate::apart,        constants::estimate::walkApart,
                                 constants::estimate::youngLink,    constants::estimate::cycle};
    rules[Dimension::funk] = {constants::estimate::funkLevel,
                              constants::estimate::difference,
                              constants::estimate::funkWalk,
                              constants::estimate::funkWalkSettled,
                              0,
                              0,
                              constants::estimate::youngLink,
                              constants::estimate::cycle};
    rules[Dimension::body] = {constants::estimate::bodyLevel,
                              constants::estimate::difference,
                              constants::estimate::bodyWalk,
                              constants::estimate::bodyWalkSettled,
                              0,
                              0,
                              constants::estimate::youngLink,
                              constants::estimate::cycle};
    return rules;
}

/// How estimates are joined; rows "estimate." of resources/data/rules.csv.
struct EstimateConstants {
    PerDimension<OffsetRule> offsets = offsetRules();
    Loosening event = {constants::estimate::eventNow, constants::estimate::eventCross,
                       constants::estimate::eventSettled, 0}; ///< pitched, racked, cleaned; a surprise [points^2]
    Loosening newTasters = {constants::estimate::newTasters, constants::estimate::newTasters,
                            constants::estimate::newTasters, constants::estimate::newTasters}; ///< [points^2]
    double usualShare = constants::estimate::usualShare; ///< a top-up counts as so much smaller a refill [1]
    double surprise = constants::estimate::surprise;     ///< asks "did something happen?" [errors]
    double clash = constants::estimate::clash;           ///< tasting and titration contradict each other [errors]
    int clashDays = static_cast<int>(constants::estimate::clashDays); ///< as far apart as that at most [d]
    int poolDays = static_cast<int>(constants::estimate::poolDays);   ///< sittings of one table count together [d]
    double tasterFloor = constants::estimate::tasterFloor; ///< what tasting again does not average out [points]
    double phAsTa = constants::estimate::phAsTa;           ///< error of the acidity that a pH alone implies [g/L]
    double leastSlope = constants::estimate::leastSlope;   ///< of the acidity map [points per g/L]
    GramsPerLitre leastTa{constants::estimate::leastTa};   ///< of a running vessel; less is asked back
    GramsPerLitre mostTa{constants::estimate::mostTa};     ///< of a running vessel; more is asked back
    Ph leastPh{constants::estimate::leastPh}, mostPh{constants::estimate::mostPh}; ///< likewise
    double balancePh = constants::estimate::balancePh;     ///< by which pH and acidity may miss each other [pH]
    double balanceTa = constants::estimate::balanceTa;     ///< the same [g/L]
    double titrationSd = constants::estimate::titrationSd; ///< of a titration [g/L]
    double gravityFall = constants::estimate::gravityFall; ///< the beer is still fermenting [SG in 30 d]
    int gravityApart = static_cast<int>(constants::estimate::gravityApart);     ///< two gravities that tell [d]
    int arrivalStep = static_cast<int>(constants::estimate::arrivalStep);       ///< of the look ahead [d]
    int arrivalHorizon = static_cast<int>(constants::estimate::arrivalHorizon); ///< of the look ahead [d]
    double arrivalInside = constants::estimate::arrivalInside; ///< of the band: the score has arrived [1]
    double arrivalMove = constants::estimate::arrivalMove;     ///< a smaller change is no arrival [points]
    double longRun = constants::estimate::longRun;             ///< cycles behind a vessel whose culture has settled
};

} // namespace staveline::estimate
