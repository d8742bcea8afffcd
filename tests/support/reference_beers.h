// SPDX-License-Identifier: GPL-3.0-or-later
// Inputs of the regression vectors of the reference model: a refill and a settled vessel, frozen.
#pragma once

#include "culture/vessel_state.h"

namespace staveline::reference {

/// The refill of the vectors (QF).
inline constexpr Composition refillBeer = {.lactic = .2,
                                           .acetic = .1,
                                           .sid = 16.358,
                                           .buffer = 1,
                                           .sugar = .4,
                                           .dextrin = 17,
                                           .residue = 13.7,
                                           .ethanol = 39.5,
                                           .otherExtract = 15,
                                           .glycerol = 2,
                                           .betaGlucan = .34,
                                           .arabinoxylan = .375,
                                           .isoCis = 6.8,
                                           .isoTrans = 3.2,
                                           .ferulic = 1.1,
                                           .coumaric = .6,
                                           .esters = 7.2,
                                           .vinylGuaiacol = .08,
                                           .vinylPhenol = .05,
                                           .original = 12};
/// The vessel of the vectors (SF), long on one recipe.
inline constexpr culture::VesselState settledVessel = {{.lactic = 4,
                                                        .acetic = .2,
                                                        .sid = 16.358,
                                                        .buffer = 1,
                                                        .sugar = .03,
                                                        .dextrin = .5,
                                                        .residue = 4,
                                                        .ethanol = 49.5,
                                                        .otherExtract = 15,
                                                        .glycerol = 2,
                                                        .betaGlucan = .22,
                                                        .arabinoxylan = .33,
                                                        .isoCis = 6,
                                                        .isoTrans = 1.5,
                                                        .ferulic = .1,
                                                        .coumaric = 0,
                                                        .esters = 5,
                                                        .vinylGuaiacol = .04,
                                                        .vinylPhenol = 0,
                                                        .ethylGuaiacol = 1.1,
                                                        .ethylPhenol = .26,
                                                        .original = 12},
                                                       .45,
                                                       .95,
                                                       30};

} // namespace staveline::reference
