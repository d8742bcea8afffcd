// SPDX-License-Identifier: GPL-3.0-or-later
// What the adviser is asked, detached from the book.
#pragma once

#include "advice/board.h"
#include "desk/age_steering.h"
#include "desk/ledger_note.h"
#include "facts/facts.h"
#include "ingredient/pantry.h"
#include "vessel/schedule.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace staveline::desk {

struct AdviceRequest {
    facts::VesselName vessel;
    std::vector<advice::LeverLock> locks; ///< beside the recorded ones
    std::vector<std::string> unavailable; ///< malts and yeasts by id or name, beside the recorded ones
    bool withSettled = true;
    bool withoutRecorded = false; ///< as if no lock and nothing unavailable were recorded
    static constexpr int mostLevers = static_cast<int>(constants::advice::mostLevers); ///< in one plan
    std::optional<int> maxMoved{}; ///< levers in one plan, 1..mostLevers; none: as usual
};
/// Everything advise() needs, detached from the book.
struct AdviceJob {
    advice::AdviceInput input;
    std::shared_ptr<const ingredient::Pantry> pantry; ///< what input.pantry points to
    facts::VesselName vessel;
    std::int64_t revision = 0;
    vessel::Schedule dates;
    std::optional<AgeSteering> steering; ///< drawn at an age; none: by the interval
    estimate::Estimates estimates;
    advice::Setting inUse;                               ///< for the coming refill; input.base: what goes on undecided
    std::optional<std::vector<advice::TriedValue>> open; ///< what is decided for it, as tried against input.base
    std::vector<LedgerNote> findings;                    ///< what does not agree in the ledger all this rests on
    std::optional<facts::BrewFact> brewed; ///< for this refill already: the recipe can no longer be changed
};

/// What was promised at the next draw, as it was told.
[[nodiscard]] advice::Band promisedBand(const facts::Forecast& told, Dimension d);

} // namespace staveline::desk
