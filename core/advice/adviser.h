// SPDX-License-Identifier: GPL-3.0-or-later
// advise() with the forward model handed in.
#pragma once

#include "advice/forecaster.h"
#include "quantity/constants.h"

namespace staveline::advice {

/// Less is not worth a change, and in one dimension no move [squared bands, mean over the coming draws].
inline constexpr double clearlyBetter = constants::advice::clearlyBetter;
/// So many plans are predicted in full for the first proposal; half of them for each further one.
inline constexpr std::size_t predictedInFull = static_cast<std::size_t>(constants::advice::predictedInFull);

/// Something was observed of at least one dimension; else there is nothing to plan by.
[[nodiscard]] bool anySeen(const AdviceInput& input);
[[nodiscard]] bool any(const PerDimension<tasting::Verdict>& verdicts, tasting::VerdictKind kind);
/// Its word is to wait: it carries no plan and asks for no taster.
[[nodiscard]] inline bool waits(const AdviceInput& input, Dimension d) {
    return input.verdicts[d].kind == tasting::VerdictKind::waitUntil;
}

[[nodiscard]] Result<Advice> adviseWith(Forecaster& forecaster, const AdviceInput& input, std::stop_token stop = {});

} // namespace staveline::advice
