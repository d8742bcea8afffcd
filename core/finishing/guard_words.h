// SPDX-License-Identifier: GPL-3.0-or-later
// The guard's answer in words, for the command line, the window and the paper alike.
#pragma once

#include "finishing/carbonation.h"
#include "finishing/guard.h"

namespace staveline::finishing {

/// Cleared and until when, or refused.
[[nodiscard]] Message answerWords(const GuardVerdict& verdict);
/// The pressure with what makes it, and what the bottle has to spare where that is known.
[[nodiscard]] std::vector<Message> pressureWords(const GuardVerdict& verdict);
/// What the beer holds; where that is a guess, also what comes of it if it is wrong.
[[nodiscard]] Message residualWords(const Residual& residual, Co2Volumes wanted);

} // namespace staveline::finishing
