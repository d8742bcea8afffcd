// SPDX-License-Identifier: GPL-3.0-or-later
// What has to be said beside the proposals.
#pragma once

#include "advice/baseline.h"
#include "quantity/constants.h"

namespace staveline::advice {

/// No recipe gives or takes so much body, because dextrin does not survive a mixed culture [points].
inline constexpr double bodyOutOfReach = constants::advice::bodyOutOfReach;

/// Faults first, what the facts contradict or leave out, what was never tasted, dates to wait for, the taster worth
/// asking, what no lever reaches. `advice`: its verdicts, proposals and value of tasting.
[[nodiscard]] std::vector<Message> notesOf(const AdviceInput& input, const Baseline& baseline, const Advice& advice);
/// Those of them that word the decision: a fault or a tasting first, one more taster and the answer without him, what
/// stands in for something. Who tells the decision in a place of its own leaves them out.
[[nodiscard]] std::vector<Message> decisionNotes(const AdviceInput& input, const Baseline& baseline,
                                                 const Advice& advice);

/// "The lock on bitterness has a price of ..."; `name`: of the lever, grain or yeast.
[[nodiscard]] Message told(const RestrictionPrice& price, const std::string& name);

} // namespace staveline::advice
