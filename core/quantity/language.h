// SPDX-License-Identifier: GPL-3.0-or-later
// The language of all that is said: its words, its decimal mark, its months. Chosen once, before the first word, since
// tables and texts are read once; a folder of resources/texts is a language.
#pragma once

#include <span>
#include <string>
#include <string_view>

namespace staveline {

struct Language {
    std::string_view code; ///< of ISO 639-1, and the name of its folder
    std::string_view name; ///< as its speakers write it
    char decimalMark;      ///< of what is shown; what is typed may have either
    bool capitalNouns;     ///< also within a sentence
    bool operator==(const Language&) const = default;
};

/// All that there are; the first is what the others are written after, and stands in for what they lack.
[[nodiscard]] std::span<const Language> languages();
/// Every word accented, bracketed and longer: what is not, was never looked up. For tests and for those who translate.
[[nodiscard]] const Language& pseudoLanguage();

/// "de", "de_AT.UTF-8", "en-XA" (the pseudo-language). The first language for what there is no folder for.
[[nodiscard]] const Language& languageFor(std::string_view wish);
[[nodiscard]] bool isLanguage(std::string_view code);

void speak(const Language& language);
[[nodiscard]] const Language& spoken();

/// A text that is its own key: names in data tables, words of the window and of the command line.
[[nodiscard]] std::string inLanguage(std::string_view english);
/// The same, in the form for so many where a language has one of its own.
[[nodiscard]] std::string inLanguage(std::string_view english, long long count);
/// A name of a thing within a sentence: "barrel" of "Barrel", where nouns are not capitalised.
[[nodiscard]] std::string inSentence(std::string_view name);

} // namespace staveline
