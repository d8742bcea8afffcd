// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/edit_scope.h"

#include <algorithm>
#include <charconv>

namespace staveline::desk {
namespace {

constexpr std::string_view sharedWord = "shared", everythingWord = "*";

void take(std::string_view part, EditScope& scope) {
    book::RowId vessel = 0;
    const auto read = std::from_chars(part.data(), part.data() + part.size(), vessel);
    if (part == sharedWord)
        scope.shared = true;
    else if (read.ec == std::errc{} && read.ptr == part.data() + part.size())
        scope.vessels.insert(vessel);
    else
        scope.everything = true;
}

} // namespace

std::string toText(const EditScope& scope) {
    if (scope.everything)
        return std::string(everythingWord);
    std::string text;
    const auto add = [&](std::string_view part) { (text += text.empty() ? "" : ",") += part; };
    for (const auto vessel : scope.vessels)
        add(std::to_string(vessel));
    if (scope.shared)
        add(sharedWord);
    return text;
}

EditScope editScopeFrom(std::string_view text) {
    EditScope scope;
    for (std::size_t at = 0; at <= text.size();) {
        const std::size_t end = std::min(text.find(',', at), text.size());
        take(text.substr(at, end - at), scope);
        at = end + 1;
    }
    return scope.everything ? EditScope{{}, false, true} : scope;
}

} // namespace staveline::desk
