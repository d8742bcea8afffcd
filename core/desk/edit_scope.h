// SPDX-License-Identifier: GPL-3.0-or-later
// What an edit touched, so that taking it back or making it again reads no more than that anew.
#pragma once

#include "book/book.h"

#include <set>
#include <string>
#include <string_view>

namespace staveline::desk {

struct EditScope {
    std::set<book::RowId> vessels;
    bool shared = false;     ///< what all vessels share: brews, kits, ingredients, what is at hand
    bool everything = false; ///< names changed, or it is not known
    bool operator==(const EditScope&) const = default;
};

/// As the book keeps it beside the edit: "3,7,shared", or "*" for everything.
[[nodiscard]] std::string toText(const EditScope& scope);
/// What cannot be read means everything: too much read anew is never wrong.
[[nodiscard]] EditScope editScopeFrom(std::string_view text);

} // namespace staveline::desk
