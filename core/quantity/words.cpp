// SPDX-License-Identifier: GPL-3.0-or-later
#include "quantity/words.h"

#include <fmt/core.h>
#include <optional>
#include <utf8proc.h>
#include <vector>

namespace staveline {
namespace {

using Characters = std::vector<utf8proc_int32_t>;

/// None: not UTF-8.
std::optional<Characters> charactersOf(std::string_view text) {
    Characters all;
    const auto* at = reinterpret_cast<const utf8proc_uint8_t*>(text.data());
    for (auto left = static_cast<utf8proc_ssize_t>(text.size()); left > 0;) {
        utf8proc_int32_t character = 0;
        const auto taken = utf8proc_iterate(at, left, &character);
        if (taken < 0)
            return std::nullopt;
        all.push_back(character);
        at += taken;
        left -= taken;
    }
    return all;
}

/// Controls, line ends and what turns the direction of the text around it: a terminal or a list obeys them.
bool steers(utf8proc_int32_t c) {
    const auto kind = utf8proc_category(c);
    return kind == UTF8PROC_CATEGORY_CC || kind == UTF8PROC_CATEGORY_ZL || kind == UTF8PROC_CATEGORY_ZP ||
           (c >= 0x202A && c <= 0x202E) || (c >= 0x2066 && c <= 0x2069);
}

bool seen(utf8proc_int32_t c) {
    return utf8proc_category(c) != UTF8PROC_CATEGORY_ZS && utf8proc_get_property(c)->ignorable == 0;
}

bool parts(utf8proc_int32_t c) {
    return c == '\n' || c == '\t' || c == '\r';
}

Result<Characters> kept(std::string_view text, std::string_view path, std::size_t most, bool ofLines) {
    auto all = charactersOf(text);
    if (!all)
        return badInput(std::string(path), say("quantity.not_utf8"), say("quantity.not_utf8.remedy"));
    if (all->size() > most)
        return badInput(std::string(path),
                        say("quantity.too_long").with("count", static_cast<std::int64_t>(all->size())),
                        say("quantity.too_long.remedy").with("most", static_cast<std::int64_t>(most)));
    for (const auto c : *all)
        if (steers(c) && !(ofLines && parts(c)))
            return badInput(std::string(path), say("quantity.unseen").with("code", fmt::format("U+{:04X}", c)),
                            say(ofLines ? "quantity.unseen.remedy" : "quantity.unseen.line"));
    return *std::move(all);
}

Result<void> onlyWhether(const Result<Characters>& text) {
    return text ? Result<void>{} : fail(text.error());
}

} // namespace

bool isUtf8(std::string_view text) {
    return charactersOf(text).has_value();
}

Result<void> checkLine(std::string_view text, std::string_view path) {
    return onlyWhether(kept(text, path, longestLine, false));
}

Result<void> checkProse(std::string_view text, std::string_view path) {
    return onlyWhether(kept(text, path, longestProse, true));
}

Result<void> checkName(std::string_view text, std::string_view path) {
    const auto name = kept(text, path, longestName, false);
    if (!name)
        return fail(name.error());
    for (const auto c : *name)
        if (seen(c))
            return {};
    return badInput(std::string(path), say("quantity.blank_name"), say("quantity.blank_name.remedy"));
}

std::string nameKey(std::string_view name) {
    constexpr auto alike = static_cast<utf8proc_option_t>(UTF8PROC_STABLE | UTF8PROC_COMPOSE | UTF8PROC_COMPAT |
                                                          UTF8PROC_CASEFOLD | UTF8PROC_IGNORE);
    const auto* bytes = reinterpret_cast<const utf8proc_uint8_t*>(name.data());
    const auto given = static_cast<utf8proc_ssize_t>(name.size());
    const auto size = utf8proc_decompose(bytes, given, nullptr, 0, alike);
    if (size < 0)
        return std::string(name);
    Characters characters(static_cast<std::size_t>(size) + 1); // one more for the end that reencoding sets
    utf8proc_decompose(bytes, given, characters.data(), size, alike);
    const auto length = utf8proc_reencode(characters.data(), size, alike);
    std::string key(reinterpret_cast<const char*>(characters.data()), static_cast<std::size_t>(length));
    std::erase(key, ' '); // every other space is mapped to it
    return key;
}

} // namespace staveline
