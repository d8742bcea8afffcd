// SPDX-License-Identifier: GPL-3.0-or-later
#include "quantity/pseudo_words.h"

#include <array>

namespace staveline {
namespace {

constexpr std::array<std::string_view, 26> accentedSmall = {"à", "ƀ", "ç", "ð", "é", "ƒ", "ğ", "ĥ", "ï",
                                                            "ĵ", "ķ", "ļ", "ɱ", "ñ", "ö", "þ", "ǫ", "ŕ",
                                                            "š", "ŧ", "û", "ṽ", "ŵ", "ẋ", "ý", "ž"};
constexpr std::array<std::string_view, 26> accentedLarge = {"À", "Ɓ", "Ç", "Ð", "É", "Ƒ", "Ğ", "Ĥ", "Ï",
                                                            "Ĵ", "Ķ", "Ļ", "Ṁ", "Ñ", "Ö", "Þ", "Ǫ", "Ŕ",
                                                            "Š", "Ŧ", "Û", "Ṽ", "Ŵ", "Ẋ", "Ý", "Ž"};

std::string_view accented(const char& letter) {
    if (letter >= 'a' && letter <= 'z')
        return accentedSmall.at(static_cast<std::size_t>(letter - 'a'));
    if (letter >= 'A' && letter <= 'Z')
        return accentedLarge.at(static_cast<std::size_t>(letter - 'A'));
    return {&letter, 1};
}

/// How much at the start of the text is no word: a placeholder, a line break, a mark of Qt's; 0: it is one.
std::size_t keptAtStart(std::string_view text) {
    if (text.front() == '{' && text.find('}') != std::string_view::npos)
        return text.find('}') + 1;
    return text.starts_with("\\n") || (text.front() == '%' && text.size() > 1 && text[1] != ' ') ? 2 : 0;
}

} // namespace

std::string pseudoWords(std::string_view english) {
    std::string words = "[";
    for (auto rest = english; !rest.empty();) {
        const auto kept = keptAtStart(rest);
        words += kept > 0 ? rest.substr(0, kept) : accented(rest.front());
        rest.remove_prefix(kept > 0 ? kept : 1);
    }
    return words + std::string(english.size() / 3, '~') + ']';
}

} // namespace staveline
