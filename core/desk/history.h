// SPDX-License-Identifier: GPL-3.0-or-later
// A vessel across its cycles: what happened, what was tasted, what was promised and how that came out.
#pragma once

#include "desk/ledger_note.h"
#include "desk/vessel_life.h"
#include "estimate/learning.h"
#include "facts/fact_list.h"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace staveline::desk {

struct PastDraw {
    Day on{};
    std::string lot;
    PerDimension<std::optional<tasting::Estimate>> tasted; ///< the last sitting before it, this cycle's only
};
/// Windows centred on what that draw was, to the half point; the rest of the target stays.
[[nodiscard]] tasting::Target likeDraw(tasting::Target target, const PastDraw& draw);

struct PromiseOutcome {
    Day made{}, forDay{};
    int proposal = 0;
    PerDimension<tasting::Estimate> told;
    PerDimension<std::optional<tasting::Estimate>> tasted; ///< the sitting nearest before the draw it was for
    PerDimension<std::optional<bool>> inside;              ///< the 80 % interval told
    PerDimension<std::optional<tasting::Estimate>> before; ///< the last sitting up to the day it was made
    /// Nearer to what was tasted than if nothing had changed since `before`.
    [[nodiscard]] std::optional<bool> nearer(Dimension dimension) const;
};

enum class HistoryKind { entry, movedOut, sitting, forecast, round };
struct HistoryRow {
    Day on{};
    HistoryKind kind = HistoryKind::entry;
    vessel::EntryKind entry = vessel::EntryKind::reading;    ///< of the ledger; for an entry
    PerDimension<std::optional<tasting::Estimate>> tasted;   ///< of a sitting; sd is its absolute error
    PerDimension<std::optional<tasting::Estimate>> forecast; ///< what was promised for this day
    PerDimension<std::optional<tasting::Estimate>> expected; ///< of a sitting: before it; sd without the sitting's own
    PerDimension<std::optional<tasting::Estimate>> offset;   ///< of the vessel from the model, after a sitting
    std::optional<Litres> volume;                            ///< after the entry
    std::optional<Litres> moved;                             ///< in or out with the entry
    std::optional<Days> meanAge;                             ///< after the entry
    facts::Measured measured;
    std::optional<Ibu> refillBitterness;
    std::optional<Celsius> mashTemperature;
    std::optional<facts::Happening> happened; ///< of an event
    bool learn = true;                        ///< of a sitting
    std::string learnReason;                  ///< why a sitting is not learned from
    std::string at;                           ///< time of day; empty: not said
    std::string lot, brew;                    ///< the name of what was drawn; of what went in
    facts::VesselName other;                  ///< where beer came from or went to
    std::vector<tasting::FaultMark> faults;   ///< of a sitting
    std::vector<tasting::Score> scores;       ///< of a sitting, as they were given
    std::optional<facts::RoundFact> round;    ///< what a round saw
    std::string note;
    [[nodiscard]] bool is(vessel::EntryKind wanted) const { return kind == HistoryKind::entry && entry == wanted; }
};
/// As answers and tables have it: "refill", "moved_out", "sitting".
[[nodiscard]] constexpr std::string_view wordOf(HistoryKind kind, vessel::EntryKind entry) {
    constexpr std::array<std::string_view, 4> others = {"moved_out", "sitting", "forecast", "round"};
    return kind == HistoryKind::entry ? vessel::traitsOf(entry).word : others[static_cast<std::size_t>(kind) - 1];
}
[[nodiscard]] inline std::string_view wordOf(const HistoryRow& row) {
    return wordOf(row.kind, row.entry);
}
struct HistoryView {
    std::vector<HistoryRow> rows;           ///< oldest first
    std::vector<facts::TargetFact> targets; ///< by day; each holds until the next
    std::vector<PromiseOutcome> promises;
    std::vector<Message> record; ///< "acidity: 9 of 11 promises inside their band", and against no change
    /// "9 of 11 sittings were inside what was expected", one-sided runs, what it taught.
    struct LearnedLine {
        Message words;
        bool run = false; ///< the last sittings all came out on one side: a drift
    };
    std::vector<LearnedLine> learned;
    PerDimension<std::optional<tasting::Estimate>> offsetToday; ///< from the model; none: never tasted
    /// The model between the entries, for the sawtooth: mean age and volume at each change and just before it.
    struct SawtoothPoint {
        Day on{};
        Litres volume{0};
        Days meanAge{0};
    };
    std::vector<SawtoothPoint> sawtooth;
    std::vector<LedgerNote> findings; ///< what does not agree in the ledger
    VesselLife life;
};

} // namespace staveline::desk
