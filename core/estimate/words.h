// SPDX-License-Identifier: GPL-3.0-or-later
// What a vessel has taught and what does not fit, in words.
#pragma once

#include "estimate/estimates.h"
#include "quantity/message.h"

namespace staveline::estimate {

/// "This vessel tastes 2.5 less funky than the model says, ±0.5, from 8 sittings."; never tasted: says so.
[[nodiscard]] Message taught(Dimension dimension, const Offset& offset, int sittings);
/// A doubt with what helps: a repeat, or what happened.
[[nodiscard]] Message told(const Doubt& doubt);

} // namespace staveline::estimate
