// SPDX-License-Identifier: GPL-3.0-or-later
// What a lot waits for.
#pragma once

#include "desk/lot_beer.h"
#include "desk/lots.h"

namespace staveline::desk {

/// Drawn long ago, and not a word on it since: most likely drunk before lots were kept.
[[nodiscard]] bool neverToldOf(const LotView& lot, Day today);
/// By day. `lot` has its stage and packages.
[[nodiscard]] std::vector<LotWait> waitsOf(const LotView& lot, const finishing::BeerKnown& beer, const LotBeers& beers);

} // namespace staveline::desk
