// SPDX-License-Identifier: GPL-3.0-or-later
// What the desk answers the stations with, beyond the ledger: tasting, targets, brew day, draw day, history.
#pragma once

#include "advice/board.h"
#include "brewing/brew_plan.h"
#include "facts/facts.h"

#include <optional>
#include <string>
#include <vector>

namespace staveline {

/// A stored fact with what it takes to amend or remove it.
template <class F> struct Filed {
    std::int64_t id = 0;
    F fact;
};

/// What is known about the vessel today.
struct EstimatesView {
    PerDimension<Estimate> model, combined;
    PerDimension<std::optional<DimensionReading>> sitting;
    PerDimension<std::vector<Evidence>> evidence; ///< what `combined` rests on
    std::optional<GramsPerLitre> ta;
    std::optional<Day> tastedOn;
    PerDimension<Verdict> verdicts;
    std::vector<FaultMark> faults;
};

// --- tasting -------------------------------------------------------------------------------------------------------

struct FaultAdvice {
    FaultMark mark;
    std::string name, cause, action; ///< as the sheet's table words them
    bool wanted = false;             ///< the target lists it as a trait
    bool comesFirst = false;         ///< treat it before the recipe
};
/// What a sitting says so far; complete or not, stored or not.
struct TasteView {
    SittingResult result;
    PerDimension<Message> says; ///< "6.6 ± 0.6", or what is missing, or what spoils it
    PerDimension<Message> help; ///< "one more taster would bring the error to 0.5"; empty key: nothing to say
    std::vector<FaultAdvice> faults;
    int scored = 0, wanted = 0; ///< lines of the short sheet that count, with a score and all of them
    std::vector<std::string> tasters;
};

// --- targets and promises ------------------------------------------------------------------------------------------

struct PastDraw {
    Day on{};
    std::string lot;
    PerDimension<std::optional<Estimate>> tasted; ///< the last sitting before it, this cycle's only
};
/// Windows centred on what that draw was, to the half point; the rest of the target stays.
[[nodiscard]] Target likeDraw(Target target, const PastDraw& draw);

struct PromiseKept {
    Day made{}, forDay{};
    int proposal = 0;
    PerDimension<Estimate> told;
    PerDimension<std::optional<Estimate>> tasted; ///< the sitting nearest before the draw it was for
    PerDimension<std::optional<bool>> inside;     ///< the 80 % interval told
};

// --- recipe and brew -----------------------------------------------------------------------------------------------

/// The recipe for the coming refill and where it comes from.
struct PlannedRecipe {
    Setting setting;
    /// `lastRefill`: nothing is decided for this refill, the choice made for an earlier one goes on.
    enum class From { habit, baseRecipe, choice, lastRefill } from = From::habit;
    std::optional<Day> since;       ///< of the base recipe or the choice
    int proposal = 0;               ///< of the choice
    bool usual = false;             ///< the recipe is the base recipe
    std::optional<BrewFact> brewed; ///< the brew made for this refill: the plan is locked
    std::vector<std::string> moves; ///< what changes against the last refill, with old and new values
};
/// A brew as the refill form offers it.
struct BrewStock {
    std::int64_t id = 0;
    BrewFact brew;
    std::optional<Litres> left; ///< for a vessel; none: what went into the fermenter is not recorded
    bool forThisRefill = false;
};
/// A draft recalculated; nothing is written.
struct BrewDraft {
    BrewPlan plan;
    MashTrace mash;
    RefillBeer beer;
};
struct BrewMeaning {
    std::optional<Day> wentIn;            ///< into a vessel already: then only `words` count
    PerDimension<Band> planned, asBrewed; ///< at the next draw
    std::vector<Message> words;           ///< what the difference means
};

// --- draw day ------------------------------------------------------------------------------------------------------

/// What is true on the day of the draw against what was planned: real litres, fresh tasting and titration, and what can
/// still be changed when the beer is brewed.
struct DrawDayView {
    std::optional<ChoiceFact> choice;
    std::optional<BrewFact> brewed;
    bool drawn = false;                        ///< already: plannedDraw is what was drawn
    Litres held{0}, plannedDraw{0}, refill{0}; ///< today; planned; what the vessel then takes
    std::optional<Litres> brewGives;           ///< from the fermenter of the brew, losses off
    EstimatesView estimates;
    PerDimension<std::optional<Band>> expected; ///< at the next draw, with what is brewed and today's numbers
    std::vector<Message> findings;              ///< "the brew is 6 L short: draw 54 L instead of 60 L", ...
    std::vector<Message> planB;                 ///< what to do when the tasting says no
};

// --- history -------------------------------------------------------------------------------------------------------

enum class HistoryKind { entry, movedOut, sitting, forecast };
struct HistoryRow {
    Day on{};
    HistoryKind kind = HistoryKind::entry;
    EntryKind entry = EntryKind::reading;           ///< of the ledger; for an entry
    PerDimension<std::optional<Estimate>> tasted;   ///< of a sitting; sd is its absolute error
    PerDimension<std::optional<Estimate>> forecast; ///< what was promised for this day
    std::optional<Litres> volume;                   ///< after the entry
    std::optional<Litres> moved;                    ///< in or out with the entry
    std::optional<Days> meanAge;                    ///< after the entry
    Measured measured;
    std::optional<Ibu> refillBitterness;
    std::optional<Celsius> mashTemperature;
    std::string note;
    [[nodiscard]] bool is(EntryKind wanted) const { return kind == HistoryKind::entry && entry == wanted; }
};
/// As answers and tables have it: "refill", "moved_out", "sitting".
[[nodiscard]] constexpr std::string_view wordOf(HistoryKind kind, EntryKind entry) {
    constexpr std::array<std::string_view, 3> others = {"moved_out", "sitting", "forecast"};
    return kind == HistoryKind::entry ? traitsOf(entry).word : others[static_cast<std::size_t>(kind) - 1];
}
[[nodiscard]] inline std::string_view wordOf(const HistoryRow& row) {
    return wordOf(row.kind, row.entry);
}
struct HistoryView {
    std::vector<HistoryRow> rows;    ///< oldest first
    std::vector<TargetFact> targets; ///< by day; each holds until the next
    std::vector<PromiseKept> promises;
    std::vector<Message> record; ///< "acidity: 9 of 11 promises inside their band", one a dimension
    /// The model between the entries, for the saw teeth: mean age and volume at each change and just before it.
    struct Tooth {
        Day on{};
        Litres volume{0};
        Days meanAge{0};
    };
    std::vector<Tooth> teeth;
};

} // namespace staveline
