// SPDX-License-Identifier: GPL-3.0-or-later
// C++ source as text: without comments, and its string literals. Knows escapes, raw strings and digit separators.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace staveline::layers {

struct Literal {
    std::size_t begin = 0, end = 0; ///< in the code, quotes included
    std::string text;               ///< between the quotes, escapes as written
};
struct CppText {
    std::string code; ///< same length as the source; comments are blanks
    std::vector<Literal> literals;
};
[[nodiscard]] CppText scanCpp(std::string_view source);

struct Include {
    std::string path;
    bool angled = false; ///< <...>
    int line = 0;
};
[[nodiscard]] std::vector<Include> includesOf(std::string_view source);

/// Line of position `at`, counted from 1.
[[nodiscard]] int lineOf(std::string_view text, std::size_t at);

} // namespace staveline::layers
