// SPDX-License-Identifier: GPL-3.0-or-later
// What the habit of a vessel comes to when it is kept for years, in words: asked while a vessel is thought over.
#pragma once

#include "facts/facts.h"
#include "quantity/message.h"

#include <vector>

namespace staveline::desk {

/// Computed for a well mixed vessel that is filled to its capacity with beer of the usual age. None: nothing is drawn.
[[nodiscard]] std::vector<Message> habitWords(const facts::VesselFact& vessel);

} // namespace staveline::desk
