// SPDX-License-Identifier: GPL-3.0-or-later
// What stands in a table of the window, as a table of a paper.
#pragma once

#include "sheet/document.h"

#include <vector>

class QAbstractItemModel;

namespace staveline::ui {

/// The columns asked for, in that order. Rows that say nothing beyond the first `leading` of them are left out.
[[nodiscard]] sheet::Table tableOf(const QAbstractItemModel& model, const std::vector<int>& columns, int leading);

} // namespace staveline::ui
