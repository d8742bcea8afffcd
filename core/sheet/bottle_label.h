// SPDX-License-Identifier: GPL-3.0-or-later
// The text of a bottle's label, a page full of it: what is in the bottle and since when, and room for what local law
// asks.
#pragma once

#include "sheet/document.h"
#include "vessel/ledger.h"

namespace staveline::sheet {

struct BottleLabel {
    std::string name;
    Day packed{};
    Millilitres size{330};
    std::vector<vessel::Generation> generations; ///< newest first; none: not known
    PercentVol alcohol{0};
    PercentVol spread{0};         ///< half of the 80 % interval
    bool alcoholMeasured = false; ///< before priming; else computed, and marked so
};
[[nodiscard]] Document bottleLabels(const BottleLabel& label, const DisplayUnits& units,
                                    const Catalogue& texts = builtInTexts());

} // namespace staveline::sheet
