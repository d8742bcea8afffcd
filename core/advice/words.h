// SPDX-License-Identifier: GPL-3.0-or-later
// The final word for each dimension. It follows from the plan that is proposed, so that words and proposals cannot
// contradict each other.
#pragma once

#include "advice/search.h"

namespace staveline::advice {

/// `plan`: the one proposed first; null: leaving alone is the answer. A fault, a wait and what was never tasted keep
/// their words; the rest is taste again where that is worth it, else move where the plan lowers the loss, else hold or
/// leave alone.
[[nodiscard]] PerDimension<tasting::Verdict> wordsOf(const AdviceInput& input, const Scored& alone, const Scored* plan,
                                                     const TastingValue& value);

} // namespace staveline::advice
