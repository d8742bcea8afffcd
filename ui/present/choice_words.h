// SPDX-License-Identifier: GPL-3.0-or-later
// What a decision is called, in the middle of a sentence.
#pragma once

#include <QString>

namespace staveline::ui {

/// "proposal 2", "leave it alone", "your own setting"; as facts::ChoiceFact::proposal numbers them.
[[nodiscard]] QString choiceName(int proposal);
[[nodiscard]] QString usualName(); ///< "the usual recipe": stored as a setting of the brewer's own

} // namespace staveline::ui
