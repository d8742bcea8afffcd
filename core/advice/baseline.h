// SPDX-License-Identifier: GPL-3.0-or-later
// Where every proposal starts: the settings in use, with locks and replacements put in.
#pragma once

#include "advice/lever.h"

namespace staveline::advice {

struct LeverMove {
    const Lever* lever = nullptr;
    LeverValue from, to;
};

struct Baseline {
    Setting before; ///< the settings in use, grain that is not at hand replaced
    Setting start;  ///< with every lock at its value
    std::vector<LeverMove> forced;
    std::set<std::string> locked; ///< lever ids
    std::vector<Message> notes;   ///< what was replaced by what
};

/// Faults: an unknown lever or a value outside its bounds at "/locks/<lever>"; nothing at hand in place of something
/// missing at "/recipe/..." (notPossible).
[[nodiscard]] Result<Baseline> prepare(const AdviceInput& input);

/// Levers with a larger order are applied later.
[[nodiscard]] Setting applied(const Setting& setting, std::vector<LeverMove> moves, const Stock& stock);

} // namespace staveline::advice
