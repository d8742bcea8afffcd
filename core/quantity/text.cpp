// SPDX-License-Identifier: GPL-3.0-or-later
#include "quantity/text.h"

#include "quantity/language.h"
#include "quantity/pseudo_words.h"
#include "resources/resources.h"

#include <algorithm>
#include <array>
#include <fmt/core.h>
#include <mutex>

namespace staveline {
namespace {

/// The text up to `end`, which is taken off with it.
std::string_view takeUntil(std::string_view& text, char end) {
    const auto at = text.find(end);
    const auto head = text.substr(0, at);
    text.remove_prefix(at == std::string_view::npos ? text.size() : at + 1);
    return head;
}

const Argument* argument(const Message& message, std::string_view name) {
    const auto& all = message.arguments;
    const auto found = std::find_if(all.begin(), all.end(), [&](const Argument& a) { return a.name == name; });
    return found == all.end() ? nullptr : &*found;
}

Catalogue textsOf(const Language& language) {
    auto files = resources::under(fmt::format("texts/{}/", languages().front().code));
    for (const auto file : resources::under(fmt::format("texts/{}/", language.code)))
        files.push_back(file); // a later text wins
    auto texts = Catalogue::parse(files);
    if (language != pseudoLanguage())
        return texts;
    std::string lines;
    for (const auto& [key, text] : texts.all())
        lines += fmt::format("{}\t{}\n", key, pseudoWords(text));
    return Catalogue::parse(std::array{std::string_view(lines)});
}

/// The template of the message, in the form for one thing where there is such a form and one thing is meant.
std::string_view templateOf(const Message& message, const Catalogue& texts) {
    const auto* const count = argument(message, "count");
    const auto* const number = count != nullptr ? std::get_if<std::int64_t>(&count->value) : nullptr;
    if (number == nullptr || *number != 1)
        return texts.find(message.key);
    const auto ofOne = message.key + "|1";
    return texts.find(texts.has(ofOne) ? ofOne : message.key);
}

} // namespace

Catalogue Catalogue::parse(std::span<const std::string_view> files) {
    Catalogue catalogue;
    for (auto file : files)
        while (!file.empty()) {
            auto text = takeUntil(file, '\n');
            if (text.ends_with('\r'))
                text.remove_suffix(1);
            const bool entry = !text.starts_with('#') && text.find('\t') != std::string_view::npos;
            const auto key = takeUntil(text, '\t');
            if (entry)
                catalogue.texts_.insert_or_assign(std::string(key), std::string(text));
        }
    return catalogue;
}

std::string_view Catalogue::find(std::string_view key) const {
    const auto found = texts_.find(key);
    return found == texts_.end() ? key : std::string_view(found->second);
}

bool Catalogue::has(std::string_view key) const {
    return texts_.contains(key);
}

const Catalogue& builtInTexts() {
    static std::map<std::string_view, Catalogue> read;
    static std::mutex reading;
    const std::lock_guard guard(reading);
    const Language& language = spoken();
    const auto known = read.find(language.code);
    return known != read.end() ? known->second : read.emplace(language.code, textsOf(language)).first->second;
}

std::string render(const Message& message, const DisplayUnits& units, const Catalogue& texts) {
    // One pass from left to right, so that braces in what the brewer typed are never taken for placeholders.
    auto rest = templateOf(message, texts);
    std::string out;
    while (!rest.empty()) {
        const auto open = rest.find('{');
        const auto close = open == std::string_view::npos ? open : rest.find('}', open);
        if (close == std::string_view::npos)
            break;
        const auto* found = argument(message, rest.substr(open + 1, close - open - 1));
        out += rest.substr(0, open);
        out += found ? show(found->value, units) : std::string(rest.substr(open, close - open + 1));
        rest.remove_prefix(close + 1);
    }
    return out += rest;
}

} // namespace staveline
