// SPDX-License-Identifier: GPL-3.0-or-later
// The pseudo-language: "Draw off {volume}" becomes "[Ðŕàŵ öƒƒ {volume} ~~~]".
#pragma once

#include <string>
#include <string_view>

namespace staveline {

/// Letters accented, a third longer, in brackets; {placeholders}, %1, & and \n are kept.
[[nodiscard]] std::string pseudoWords(std::string_view english);

} // namespace staveline
