// SPDX-License-Identifier: GPL-3.0-or-later
// What packing says: the sugar to weigh, the pressure to come, and the guard's answer.
#pragma once

#include "desk/packing.h"

namespace staveline::desk {

/// The answer with its reasons, and what it rests on.
[[nodiscard]] std::vector<Message> verdictWords(const finishing::GuardVerdict& verdict);
[[nodiscard]] std::vector<Message> packingWords(const PackingAnswer& answer, const PackingRequest& request);

} // namespace staveline::desk
