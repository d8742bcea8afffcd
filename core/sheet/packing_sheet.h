// SPDX-License-Identifier: GPL-3.0-or-later
// The packaging day sheet: what is packed, whether it holds, sugar by weight, steps in their order with their cautions,
// blanks for what came out. What the guard refuses has no steps: the sheet says why and what would clear it.
#pragma once

#include "finishing/carbonation.h"
#include "finishing/guard.h"
#include "finishing/priming.h"
#include "sheet/document.h"

namespace staveline::sheet {

/// What is poured, in the order in which it is.
struct PackedPart {
    std::string source;
    Litres takes{0};
};
/// For what goes into a keg.
struct KegSetting {
    GaugePressure pressure{0};
    Celsius temperature{0};
};

struct PackingSheetInput {
    std::string name; ///< of what is packed
    Day on{};
    std::vector<PackedPart> parts; ///< at least one
    Litres lost{0};
    Co2Volumes wanted{0};
    finishing::PrimingSugar sugar;
    Plato extract{12}; ///< of wort and young beer
    finishing::Residual residual;
    finishing::Priming priming;
    finishing::Package package;
    finishing::GuardVerdict verdict;
    std::optional<KegSetting> keg;
    std::vector<Message> yeast;    ///< advice; none: ordinary yeast does
    std::vector<Message> cautions; ///< by their steps: blend, ready, prime, fill, keep; others stand at the top
};
[[nodiscard]] Document packingSheet(const PackingSheetInput& input, const DisplayUnits& units,
                                    const Catalogue& texts = builtInTexts());

} // namespace staveline::sheet
