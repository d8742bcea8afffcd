// SPDX-License-Identifier: GPL-3.0-or-later
// What a sitting says so far, and the faults it shows.
#pragma once

#include "quantity/message.h"
#include "tasting/sitting.h"

#include <string>
#include <vector>

namespace staveline::desk {

struct FaultAdvice {
    tasting::FaultMark mark;
    std::string name, cause, action; ///< as the sheet's table words them
    bool wanted = false;             ///< the target lists it as a trait
    bool comesFirst = false;         ///< treat it before the recipe
};
/// What a sitting says so far; complete or not, stored or not.
struct TasteView {
    tasting::SittingResult result;
    PerDimension<Message> says; ///< "6.6 ± 0.6", or what is missing, or what spoils it
    PerDimension<Message> help; ///< "one more taster would bring the error to 0.5"; empty key: nothing to say
    std::vector<FaultAdvice> faults;
    int scored = 0, wanted = 0; ///< lines of the short sheet that count, with a score and all of them
    std::vector<std::string> tasters;
};

} // namespace staveline::desk
