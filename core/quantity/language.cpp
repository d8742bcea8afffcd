// SPDX-License-Identifier: GPL-3.0-or-later
#include "quantity/language.h"

#include "quantity/pseudo_words.h"
#include "quantity/text.h"

#include <algorithm>
#include <array>

namespace staveline {
namespace {

constexpr std::array all = {Language{"en", "English", '.', false}, Language{"de", "Deutsch", ',', true}};
constexpr Language pseudo{"en-XA", "[Ёñĝļíšĥ]", '.', true};

const Language*& inUse() {
    static const Language* language = all.data();
    return language;
}

} // namespace

std::span<const Language> languages() {
    return all;
}

const Language& pseudoLanguage() {
    return pseudo;
}

bool isLanguage(std::string_view code) {
    return code == pseudo.code ||
           std::any_of(all.begin(), all.end(), [code](const Language& language) { return language.code == code; });
}

const Language& languageFor(std::string_view wish) {
    if (wish == pseudo.code)
        return pseudo;
    const auto code = wish.substr(0, wish.find_first_of("_-.@"));
    const auto* const found =
        std::find_if(all.begin(), all.end(), [code](const Language& language) { return language.code == code; });
    return found == all.end() ? all.front() : *found;
}

void speak(const Language& language) {
    inUse() = &language;
}

const Language& spoken() {
    return *inUse();
}

std::string inLanguage(std::string_view english) {
    const Catalogue& texts = builtInTexts();
    if (spoken() == pseudo && !texts.has(english))
        return pseudoWords(english);
    return std::string(texts.find(english));
}

std::string inLanguage(std::string_view english, long long count) {
    const auto ofOne = std::string(english) + "|1";
    return count == 1 && builtInTexts().has(ofOne) ? inLanguage(ofOne) : inLanguage(english);
}

std::string inSentence(std::string_view name) {
    std::string word(name);
    if (!spoken().capitalNouns && !word.empty() && word.front() >= 'A' && word.front() <= 'Z')
        word.front() = static_cast<char>(word.front() - 'A' + 'a');
    return word;
}

} // namespace staveline
