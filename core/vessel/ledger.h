// SPDX-License-Identifier: GPL-3.0-or-later
// The vessel's ledger: facts in, volume, age and shares out. Replay is total: it never fails, it reports findings.
// Age is weighted by volume: what evaporates is as old as what stays. 1 year = 365.25 d.
#pragma once

#include "quantity/constants.h"
#include "quantity/day.h"
#include "vessel/entry_kind.h"

#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

namespace staveline::vessel {

/// A generation: the liquid that went in at one entry. The oldest also holds what is too little to tell apart.
struct Generation {
    std::int64_t entry = 0;
    Day on{};
    Share share{0};     ///< of what is in the vessel now
    Days birthAge{0};   ///< mean age when it went in
    Days birthAgeSd{0}; ///< spread of that age
};

/// One fact about one vessel's liquid. Ordered by (day, minute, turn, rank, id).
struct LedgerEntry {
    std::int64_t id = 0;
    EntryKind kind = EntryKind::reading;
    Day on{};
    int minute = 0;                   ///< of the day
    int rank = 0;                     ///< draw before refill, where the brewer said no more
    Litres volume{0};                 ///< moved; for opening and dip: what the vessel holds then
    bool outOfThisVessel = false;     ///< a transfer seen from its source
    std::optional<std::int64_t> brew; ///< the brew a refill or top-up came from
    std::optional<Days> age;          ///< opening: mean age of the liquid; refill: age of what goes in; none: 0
    std::optional<Days> ageSd;        ///< opening, or a refill from another vessel; none: 0
    std::vector<Generation> brought =
        {};       ///< by beer from another vessel, oldest last, as old as they go in; else by age
    int turn = 0; ///< of what came without a time, as it was recorded
};
/// The order in which a ledger is read.
[[nodiscard]] bool before(const LedgerEntry& a, const LedgerEntry& b);

struct VesselShape {
    Litres capacity{225};
    Share evaporationPerYear{0.04}; ///< of capacity; 0 for steel
    bool operator==(const VesselShape&) const = default;
};
struct ShapeSince {
    Day from{};
    VesselShape shape;
};
/// A vessel through the years: as it was at first, and what it became, by day. A change counts from the morning of its
/// day on.
struct ShapeHistory {
    ShapeHistory(const VesselShape& always) // one that never changed
        : first(always) {}
    ShapeHistory(Litres capacity, Share evaporationPerYear) : first{capacity, evaporationPerYear} {}
    ShapeHistory(const VesselShape& begin, std::vector<ShapeSince> since) : first(begin), changes(std::move(since)) {}
    VesselShape first;
    std::vector<ShapeSince> changes;
};

/// Since the opening: volume = in - out - evaporated + unexplained, whatever the entries say.
struct LedgerTotals {
    Litres in{0}, out{0}, evaporated{0};
    Litres unexplained{0}; ///< booked by dips and overfilling; negative: a loss
};

struct LedgerState {
    Day on{};
    Litres volume{0};
    Days meanAge{0};
    Days ageSd{0};
    std::vector<Generation> generations; ///< newest first; shares sum to 1; none in an empty vessel
    std::optional<Day> lastDraw, lastRefill, opened;
    int cycle = 0; ///< refills since the opening
    LedgerTotals totals;
    Litres lastFilled{0}; ///< held after the last refill
};

enum class FindingKind { drawnMore, overFull, dipAbove, dipDiffers, beforeOpening, secondOpening, notPositive, future };
struct LedgerFinding {
    std::int64_t entry = 0;
    FindingKind kind = FindingKind::notPositive;
    Message message; ///< e.g. "drawn 80 L of 60 L held"
    Day on{};        ///< the entry's
    bool outOfThisVessel = false;
    // drawnMore: what was held; overFull: the room there was; dipAbove: the capacity then; and how much more it says.
    Litres possible{0}, beyond{0};
    Litres capacity{0}; ///< on its day
};

struct Replay {
    std::vector<LedgerState> after; ///< one per entry, in order
    LedgerState now;                ///< aged and evaporated to `today`; entries after `today` do not count
    std::vector<LedgerFinding> findings;
};

// Limits with their reasons: resources/data/rules.csv.
inline constexpr double roundingOfCapacity =
    constants::ledger::rounding; ///< differences below it are the rounding of what was written down
inline constexpr double dipFindingOfCapacity = constants::ledger::dip; ///< a dip this far off wants an explanation

/// Entries need not be sorted. Impossible facts (a draw larger than the content, an entry before the opening) become
/// findings; volumes clamp at 0 and at what is there. Less than the rounding is no finding. Without an opening the
/// first filling opens the vessel, or a dip that finds beer in it. Overfilling: what went in is trusted, the old beer
/// must have been less.
[[nodiscard]] Replay replay(std::span<const LedgerEntry> entries, const ShapeHistory& shapes, Day today);
/// The same with `after` left empty: time and memory do not grow with the length of the generation lists.
[[nodiscard]] Replay replayNow(std::span<const LedgerEntry> entries, const ShapeHistory& shapes, Day today);

/// One ledger taken entry by entry, where several are walked side by side. Entries in their order.
class LedgerWalk {
public:
    /// `ledger`: all of its entries, so that what lies before the opening does not count.
    LedgerWalk(ShapeHistory shapes, std::span<const LedgerEntry> ledger);
    ~LedgerWalk();
    LedgerWalk(LedgerWalk&&) noexcept;
    void apply(const LedgerEntry& entry);
    [[nodiscard]] LedgerState on(Day day); ///< not before the last entry

private:
    struct Inside;
    std::unique_ptr<Inside> inside_;
};

/// Share of the present volume older than `age`. A generation with a spread counts with its normal tail.
[[nodiscard]] Share olderThan(const LedgerState& state, Days age);
[[nodiscard]] Days ageOf(const Generation& generation, Day on);

/// What is held on a later day if nothing happens until then but evaporation.
[[nodiscard]] Litres volumeOn(const LedgerState& state, const VesselShape& shape, Day later);

} // namespace staveline::vessel
