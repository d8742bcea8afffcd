// SPDX-License-Identifier: GPL-3.0-or-later
// The ledger of drawn beer: what each lot holds, of which draws and additions, however often it was split and joined.
// Replay is total: it never fails, it reports findings, and no litre appears or vanishes in it.
#pragma once

#include "quantity/day.h"
#include "quantity/units.h"

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace staveline::finishing {

/// In the order of a day. What goes into a lot that holds beer in the morning goes in before anything leaves it.
enum class LotFlow {
    drawn,  ///< out of a vessel, into the lot
    moved,  ///< from the lot to another one, or out of the cellar
    added,  ///< to the lot
    noted,  ///< moves nothing
    poured, ///< into a vessel
    packed  ///< with what is lost in filling
};
struct LotEntry {
    std::int64_t id = 0; ///< of the caller; in one day and flow lower ones come first
    LotFlow flow = LotFlow::noted;
    Day on{};
    std::string lot;
    std::string to; ///< of what is moved; empty: out of the cellar
    Litres volume{0};
};

/// Of one draw or one addition.
struct LotPart {
    std::int64_t entry = 0;
    Litres litres{0};
};
struct LotState {
    std::vector<LotPart> parts; ///< by entry
    std::optional<Day> since;   ///< something was put in first; none: never
    std::optional<Day> stirred; ///< beer last went in, or something was added
    [[nodiscard]] Litres volume() const;
};

enum class LotFindingKind {
    notThere, ///< nothing was put into the lot by then
    tooMuch   ///< more is taken than it holds
};
struct LotFinding {
    std::int64_t entry = 0;
    LotFindingKind kind = LotFindingKind::notThere;
    std::string lot;
    Day on{};
    Litres held{0}, wanted{0};
    [[nodiscard]] Litres beyond() const { return wanted - held; }
};

struct LotsReplay {
    std::map<std::string, LotState, std::less<>> lots; ///< in the evening of the last day
    std::map<std::int64_t, LotState> given;            ///< by entry that takes out of a lot: what it took of it
    std::map<std::int64_t, Litres> after;              ///< by entry: what its lot holds then
    std::map<std::int64_t, Litres> received;           ///< by move: what the other lot holds then
    std::vector<LotFinding> findings;
};
/// Entries in any order, up to the evening of `until`. What is not there cannot be taken: it clamps, with a finding.
[[nodiscard]] LotsReplay replayLots(std::vector<LotEntry> entries, Day until = Day::max());

} // namespace staveline::finishing
