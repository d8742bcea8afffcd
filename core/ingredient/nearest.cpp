// SPDX-License-Identifier: GPL-3.0-or-later
#include "ingredient/nearest.h"

#include "quantity/parse.h"

#include <algorithm>
#include <numeric>

namespace staveline::ingredient {
namespace {

/// Compared are the first characters only: no id is longer, and a pasted page must not cost time.
constexpr std::size_t compared = 64;

std::string folded(std::string_view text) {
    std::string out(text.substr(0, compared));
    for (char& c : out)
        c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    return out;
}

/// "rye" stands in "rye malt" and counts as one slip, although many letters are missing.
bool standsIn(std::string_view typed, std::string_view known) {
    return typed.size() > 2 && folded(known).find(folded(typed)) != std::string::npos;
}

/// A word with more slips than one in three letters was another word.
std::size_t slipsIn(std::string_view typed) {
    return (std::min(typed.size(), compared) + 1) / 3;
}

std::size_t distance(std::string_view typed, const Known& known) {
    const auto edits = std::min(editDistance(typed, known.id), editDistance(typed, known.name));
    const bool part = standsIn(typed, known.id) || standsIn(typed, known.name);
    return part ? std::min(edits, std::size_t{1}) : edits;
}

} // namespace

std::size_t editDistance(std::string_view first, std::string_view second) {
    const auto a = folded(first), b = folded(second);
    std::vector<std::size_t> before(b.size() + 1), last(b.size() + 1), now(b.size() + 1);
    std::iota(last.begin(), last.end(), std::size_t{0});
    for (std::size_t i = 1; i <= a.size(); ++i) {
        now[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t replaced = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
            now[j] = std::min({last[j] + 1, now[j - 1] + 1, replaced});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                now[j] = std::min(now[j], before[j - 2] + 1);
        }
        std::swap(before, last);
        std::swap(last, now);
    }
    return last[b.size()];
}

const Known* nearest(std::string_view typed, const std::vector<Known>& known) {
    const auto closest = std::min_element(known.begin(), known.end(), [&](const Known& a, const Known& b) {
        return distance(typed, a) < distance(typed, b);
    });
    if (closest == known.end() || distance(typed, *closest) > slipsIn(typed))
        return nullptr;
    return &*closest;
}

Message offer(std::string_view typed, const std::vector<Known>& known) {
    if (const Known* meant = nearest(typed, known)) {
        const bool named = !meant->name.empty() && folded(meant->name) != folded(meant->id);
        return say(named ? "ingredient.nearest.named" : "ingredient.nearest")
            .with("nearest", std::string(meant->id))
            .with("name", std::string(meant->name));
    }
    std::string all;
    for (const Known& each : known)
        all += (all.empty() ? "" : ", ") + excerpt(each.id);
    return say("ingredient.use_one_of").with("known", std::move(all));
}

} // namespace staveline::ingredient
