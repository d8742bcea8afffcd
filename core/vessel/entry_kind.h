// SPDX-License-Identifier: GPL-3.0-or-later
// The kinds of entries a ledger has: one row each, from which order, flow, table and words follow.
#pragma once

#include <algorithm>
#include <array>
#include <string_view>

namespace staveline::vessel {

enum class EntryKind { opening, drawOff, refill, topUp, sample, dip, reading, event };

/// What an entry does with the liquid of its vessel.
enum class Flow {
    opens, ///< says what is in it at the beginning
    out,
    in,
    level, ///< says how much is in it
    loss,  ///< out, where it says how much
    none
};

struct EntryTraits {
    EntryKind kind;
    std::string_view word; ///< in record files, as its table and in the keys of its texts
    int rank; ///< on one day: opening, then what measures, then samples and draws, then what goes in, then events
    Flow flow;
};
inline constexpr auto entryKinds = std::to_array<EntryTraits>({
    {EntryKind::opening, "opening", 0, Flow::opens},
    {EntryKind::drawOff, "draw_off", 3, Flow::out},
    {EntryKind::refill, "refill", 5, Flow::in},
    {EntryKind::topUp, "top_up", 6, Flow::in},
    {EntryKind::sample, "sample", 2, Flow::out},
    {EntryKind::dip, "dip", 1, Flow::level},
    {EntryKind::reading, "reading", 1, Flow::none},
    {EntryKind::event, "event", 7, Flow::loss},
});

/// On its day, of beer that is lost in racking or moving: after the draw, before the vessel is filled again.
inline constexpr int beforeFilling = 4;

[[nodiscard]] constexpr const EntryTraits& traitsOf(EntryKind kind) {
    return entryKinds[static_cast<std::size_t>(kind)];
}
static_assert(std::all_of(entryKinds.begin(), entryKinds.end(),
                          [](const EntryTraits& row) { return traitsOf(row.kind).word == row.word; }),
              "a row for each kind, in the order of the kinds");

} // namespace staveline::vessel
