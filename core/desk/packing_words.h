// SPDX-License-Identifier: GPL-3.0-or-later
// What packing says: the sugar to weigh, the pressure to come, and the guard's answer.
#pragma once

#include "desk/packing.h"

namespace staveline::desk {

[[nodiscard]] std::vector<Message> packingWords(const PackingAnswer& answer);

} // namespace staveline::desk
