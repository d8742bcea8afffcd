// SPDX-License-Identifier: GPL-3.0-or-later
// Cards to hang on the vessels: what is in each, what went in last, what is due, what lives in it, what to mind.
#pragma once

#include "sheet/document.h"
#include "vessel/ledger.h"

#include <optional>
#include <string>
#include <vector>

namespace staveline::sheet {

struct VesselCard {
    std::string vessel;
    std::string kind; ///< "cask of used oak"
    Litres capacity{0};
    vessel::LedgerState now;
    std::optional<Message> lastIn; ///< "85.0 L refilled from Brew 17"
    Day lastInOn{};
    Message due;                   ///< "taste in 3 days"
    std::optional<Day> draw, fill; ///< the coming one; of an empty vessel its first fill
    std::vector<Message> culture;  ///< none: not described
    std::vector<Message> cautions;
};
/// Each card is a section; on paper four stand on a page.
[[nodiscard]] Document vesselCards(const std::vector<VesselCard>& cards, Day on, const DisplayUnits& units = {},
                                   const Catalogue& texts = builtInTexts());

} // namespace staveline::sheet
