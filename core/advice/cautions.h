// SPDX-License-Identifier: GPL-3.0-or-later
// What a plan asks to take care of, and what of it every brew asks for.
#pragma once

#include "advice/advise.h"

namespace staveline::advice {

/// Every caution of a plan, those of its moves first, each once.
[[nodiscard]] std::vector<Message> cautionsOf(const Proposal& proposal);
/// Those that leaving alone does not bring: what every brew asks for is said once, not beside each plan.
[[nodiscard]] std::vector<Message> addedCautions(const Proposal& proposal, const Proposal& leaveAlone);

} // namespace staveline::advice
