// SPDX-License-Identifier: GPL-3.0-or-later
// Words that a book keeps for later readers: key and arguments, so that they are told in the language and the units of
// the day, not of the day they were written. Older books and notes of the brewer's own hold plain text.
#pragma once

#include "quantity/text.h"

#include <string>
#include <string_view>

namespace staveline::facts {

/// One line of JSON. A text argument may be kept words itself and is told with the rest.
[[nodiscard]] std::string keptWords(const Message& message);
/// What was kept, told; plain text as it stands.
[[nodiscard]] std::string toldWords(std::string_view kept, const DisplayUnits& units = {});

} // namespace staveline::facts
