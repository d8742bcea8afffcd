// SPDX-License-Identifier: GPL-3.0-or-later
// What is to be done about the coming refill of a vessel, in one word.
#pragma once

#include "advice/advise.h"
#include "desk/advice.h"

#include <optional>

namespace staveline::desk {

enum class PlanState {
    unsaid,     ///< nothing is to be decided, or nothing can be advised
    tasteFirst, ///< not tasted in this cycle
    tasteAgain, ///< one more taster would settle it
    wait,       ///< a fault or a date comes first
    helps,      ///< a proposal is better than leaving it alone
    leaveAlone,
    adopted,
    brewed
};
/// What is known without asking the adviser; none: he is to be asked.
[[nodiscard]] std::optional<PlanState> planState(const AdviceJob& job);
[[nodiscard]] PlanState planState(const advice::Advice& advice);

} // namespace staveline::desk
