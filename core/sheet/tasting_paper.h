// SPDX-License-Identifier: GPL-3.0-or-later
// A blank tasting sheet to print and fill in, one a taster.
#pragma once

#include "sheet/document.h"
#include "tasting/sitting.h"

#include <optional>
#include <string>

namespace staveline::sheet {

struct TastingPaperInput {
    std::string vessel;     ///< empty: any
    std::optional<Day> on;  ///< none: a space to write in
    bool shortSheet = true; ///< the lines that count; false: all
    Celsius cold{5};        ///< 4..6
    Celsius cellar{13};     ///< 12..14
};
[[nodiscard]] Document tastingPaper(const TastingPaperInput& input, const DisplayUnits& units = {},
                                    const tasting::TastingSheet& sheet = tasting::builtInSheet(),
                                    const Catalogue& texts = builtInTexts());

} // namespace staveline::sheet
