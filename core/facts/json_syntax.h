// SPDX-License-Identifier: GPL-3.0-or-later
// What a JSON text must be before its fields are read.
#pragma once

#include "quantity/fault.h"

#include <string_view>

namespace staveline::facts {

/// More levels than any record has. Such a text is not to be parsed: what is made of it has no end to be freed by.
[[nodiscard]] bool isTooDeep(std::string_view text);
/// Faults: an empty text; no JSON, with line and column; a key given twice in one object, at its pointer; more levels
/// than any record has.
[[nodiscard]] Result<void> checkJson(std::string_view text);

} // namespace staveline::facts
