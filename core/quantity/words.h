// SPDX-License-Identifier: GPL-3.0-or-later
// Texts as they come from outside: what can be kept and shown, and which names a reader cannot tell apart.
#pragma once

#include "quantity/fault.h"

#include <string>
#include <string_view>

namespace staveline {

// The most characters that fit a list of vessels, a line of a table, a page.
inline constexpr std::size_t longestName = 80;
inline constexpr std::size_t longestLine = 400;
inline constexpr std::size_t longestProse = 20000;

[[nodiscard]] bool isUtf8(std::string_view text);

/// A text of one line. Faults at `path`: not UTF-8, a character that cannot be shown, longer than longestLine.
[[nodiscard]] Result<void> checkLine(std::string_view text, std::string_view path);
/// As a line, longer, and with line breaks and tabs.
[[nodiscard]] Result<void> checkProse(std::string_view text, std::string_view path);
/// As a line, shorter, and with something to see in it.
[[nodiscard]] Result<void> checkName(std::string_view text, std::string_view path);

/// The same for names that look the same: case, composition of accents, spaces and invisible characters do not count.
/// Bytes that are no UTF-8 are their own key.
[[nodiscard]] std::string nameKey(std::string_view name);

} // namespace staveline
