// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "quantity/constants.h"
#include "quantity/dimension.h"

namespace staveline::estimate {

/// How estimates are joined; rows "estimate." of resources/data/rules.csv.
struct EstimateConstants {
    int freshFor = static_cast<int>(constants::estimate::freshFor); ///< a titration or a sitting speaks so long [d]
    PerDimension<double> modelSd{{constants::estimate::modelAcidity, constants::estimate::modelFunk,
                                  constants::estimate::modelBody}};  ///< of the model's scores [points]
    double titrationSd = constants::estimate::titrationSd;           ///< of a titration [g/L]
    double leastTitrationSd = constants::estimate::leastTitrationSd; ///< of the score it stands for [points]
    double mapScale = constants::estimate::mapScale;                 ///< error of the acidity map's scale [1]
    double mapExponent = constants::estimate::mapExponent;           ///< error of its exponent [1]
    double mapFrom = constants::estimate::mapFrom;                   ///< acidity from which the exponent counts [g/L]
    double gravityFall = constants::estimate::gravityFall;           ///< the beer is still fermenting [SG in 30 d]
    int gravityApart = static_cast<int>(constants::estimate::gravityApart);     ///< two gravities that tell [d]
    int arrivalStep = static_cast<int>(constants::estimate::arrivalStep);       ///< of the look ahead [d]
    int arrivalHorizon = static_cast<int>(constants::estimate::arrivalHorizon); ///< of the look ahead [d]
    double arrivalInside = constants::estimate::arrivalInside;          ///< of the band: the score has arrived [1]
    double arrivalMove = constants::estimate::arrivalMove;              ///< a smaller change is no arrival [points]
    int tasteAgain = static_cast<int>(constants::estimate::tasteAgain); ///< a draw wants fresher numbers [d]
};

} // namespace staveline::estimate
