// SPDX-License-Identifier: GPL-3.0-or-later
// What to do when the answer is not a recipe: treat the fault, wait, taste again, or leave everything as it is.
#pragma once

#include "quantity/message.h"
#include "tasting/verdict.h"
#include "vessel/schedule.h"

#include <vector>

namespace staveline::desk {

/// One thing to say: "What to do: Leave it alone; Brettanomyces clears it in time."
struct AnswerLine {
    Message head, words;
};
struct FullAnswer {
    tasting::Verdict verdict;
    Message title;
    std::vector<AnswerLine> lines;
};
/// Fault first alone when there is one; else wait, taste first, taste again and hold, in this order, for the dimensions
/// concerned. Nothing when every dimension has a recipe answer.
[[nodiscard]] std::vector<FullAnswer> answersOf(const PerDimension<tasting::Verdict>& verdicts,
                                                const std::vector<tasting::FaultMark>& faults,
                                                const vessel::Schedule& dates);

} // namespace staveline::desk
