// SPDX-License-Identifier: GPL-3.0-or-later
#include "quantity/text.h"

#include "resources/resources.h"

#include <algorithm>

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
    static const Catalogue catalogue = Catalogue::parse(resources::under("texts/"));
    return catalogue;
}

std::string render(const Message& message, const DisplayUnits& units, const Catalogue& texts) {
    // One pass from left to right, so that braces in what the brewer typed are never taken for placeholders.
    auto rest = texts.find(message.key);
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
