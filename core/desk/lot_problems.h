// SPDX-License-Identifier: GPL-3.0-or-later
// What cannot be in the ledgers of drawn beer as they are recorded.
#pragma once

#include "desk/cellar.h"

namespace staveline::desk {

struct LotProblem {
    book::RowKey row;  ///< that cannot be
    std::string kind;  ///< of the problem, to tell it from another one of the row
    double beyond = 0; ///< how much more than there is
    Fault itself;      ///< if it is this row that changed
    Fault beside;      ///< if another one did
};
[[nodiscard]] Result<std::vector<LotProblem>> lotProblems(Cellar& cellar);
/// New in `now`, or worse than it was.
[[nodiscard]] std::vector<LotProblem> worsened(const std::vector<LotProblem>& before, std::vector<LotProblem> now);

} // namespace staveline::desk
