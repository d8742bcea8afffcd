// SPDX-License-Identifier: GPL-3.0-or-later
// Yeast for the bottle where acid and alcohol stop the ordinary kind: Rogers et al. 2016, and what is done about it.
#pragma once

#include "finishing/cautions.h"

#include <optional>
#include <vector>

namespace staveline::finishing {

/// Beer that is to ferment in its bottles and is below the pH, or above the acid or the alcohol, that yeast stands.
[[nodiscard]] bool stopsYeast(const PackedBeer& beer);

/// Dry yeast that is used to the beer first, for a batch.
struct YeastDose {
    Grams least{0}, most{0};
};
[[nodiscard]] YeastDose yeastFor(Litres batch);

/// Why, what to do and what else: none where ordinary yeast does. Sources are told in the words.
[[nodiscard]] std::vector<Message> yeastAdvice(const PackedBeer& beer, Litres batch);

} // namespace staveline::finishing
