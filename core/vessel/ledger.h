// SPDX-License-Identifier: GPL-3.0-or-later
// The vessel's ledger: facts in, volume, age and shares out. Replay is total: it never fails, it reports findings.
#pragma once

#include "quantity/day.h"

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace staveline {

enum class EntryKind { opening, drawOff, refill, topUp, sample, dip, reading };

/// One fact about one vessel's liquid. Ordered by (day, minute, rank, id).
struct LedgerEntry {
    std::int64_t id = 0;
    EntryKind kind = EntryKind::reading;
    Day on{};
    int minute = 0;                   ///< of the day
    int rank = 0;                     ///< draw before refill on the same minute
    Litres volume{0};                 ///< moved; for opening and dip: what the vessel holds then
    bool outOfThisVessel = false;     ///< a transfer seen from its source
    std::optional<std::int64_t> brew; ///< the brew a refill or top-up came from
    std::optional<Days> age;          ///< opening: mean age of the liquid; refill: age of what goes in
    std::optional<Days> ageSd;        ///< opening
};

struct VesselShape {
    Litres capacity{225};
    Share evaporationPerYear{0.04}; ///< of capacity; 0 for steel
};

/// A generation: the liquid that went in at one entry.
struct Generation {
    std::int64_t entry = 0;
    Day on{};
    Share share{0};   ///< of what is in the vessel now
    Days birthAge{0}; ///< age when it went in
};

struct LedgerState {
    Day on{};
    Litres volume{0};
    Days meanAge{0};
    Days ageSd{0};
    std::vector<Generation> generations; ///< newest first; shares sum to 1
    std::optional<Day> lastDraw, lastRefill, opened;
    int cycle = 0; ///< refills since the opening
};

struct LedgerFinding {
    std::int64_t entry = 0;
    Message message; ///< e.g. "drawn 80 L of 60 L held"
};

struct Replay {
    std::vector<LedgerState> after; ///< one per entry, in order
    LedgerState now;                ///< aged and evaporated to `today`
    std::vector<LedgerFinding> findings;
};

/// Entries need not be sorted. Impossible facts (a draw larger than the content, an entry before the opening) become
/// findings; volumes clamp at 0 and at what is there.
[[nodiscard]] Replay replay(std::span<const LedgerEntry> entries, const VesselShape& shape, Day today);

/// Share of the present volume older than `age`.
[[nodiscard]] Share olderThan(const LedgerState& state, Days age);

struct ScheduleRule {
    Days interval{240};
    Days sampleBefore{30};
    Days primary{14};
};
struct Schedule {
    Day sample, brew, draw, nextSample, nextDraw; ///< the refill goes in on the draw day
};
/// From the last refill (or opening); the draw is never planned before `today`.
[[nodiscard]] Schedule schedule(const LedgerState& now, const ScheduleRule& rule, Day today);

} // namespace staveline
