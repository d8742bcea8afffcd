// SPDX-License-Identifier: GPL-3.0-or-later
// What the desk keeps in memory: the facts of the vessels looked at, each loaded once and dropped when it changes.
#pragma once

#include "desk/codec.h"
#include "desk/desk.h"
#include "desk/fields.h"
#include "vessel/schedule.h"

#include <set>
#include <tuple>

namespace staveline {

template <class F> struct Stored {
    book::RowId id = 0;
    F fact;
};
template <class F> using Facts = std::vector<Stored<F>>;

/// Everything recorded about one vessel, each list by day, then id.
struct VesselRecord {
    book::RowId id = 0;
    VesselFact facts;
    std::tuple<Facts<CultureFact>, Facts<BaseRecipeFact>, Facts<TargetFact>, Facts<OpeningFact>, Facts<SittingFact>,
               Facts<ReadingFact>, Facts<SampleFact>, Facts<DipFact>, Facts<DrawOffFact>, Facts<RefillFact>,
               Facts<TopUpFact>, Facts<LockFact>, Facts<ChoiceFact>>
        lists;
    /// What left for another vessel: refills and top-ups there that name this one as their source.
    Facts<RefillFact> refillsElsewhere;
    Facts<TopUpFact> topUpsElsewhere;

    template <class F> Facts<F>& of() { return std::get<Facts<F>>(lists); }
    template <class F> const Facts<F>& of() const { return std::get<Facts<F>>(lists); }
    /// The latest of a kind on or before `day`; none: nullptr.
    template <class F> const F* latest(Day day) const {
        const F* found = nullptr;
        for (const auto& stored : of<F>())
            if (dayOf(stored.fact) <= day)
                found = &stored.fact;
        return found;
    }
    template <class F> static Day dayOf(const F& fact) {
        if constexpr (std::is_same_v<F, SittingFact>)
            return fact.sitting.on;
        else
            return fact.on;
    }
};

template <class List, class Tuple> inline constexpr bool isIn = false;
template <class List, class... Lists>
inline constexpr bool isIn<List, std::tuple<Lists...>> = (std::same_as<List, Lists> || ...);
/// Kinds that are kept per vessel.
template <class F> inline constexpr bool perVessel = isIn<Facts<F>, decltype(VesselRecord::lists)>;

/// What all vessels share.
struct SharedFacts {
    Names names;
    Facts<VesselFact> vessels;
    Facts<BrewFact> brews; ///< by id
    Facts<EquipmentFact> equipment;
    Facts<AvailabilityFact> availability;
    Pantry pantry;
    std::set<std::string, std::less<>> kept; ///< ingredients copied into the book

    [[nodiscard]] const BrewFact* brew(std::string_view name) const;
    [[nodiscard]] EquipmentFact kit(Day day) const; ///< the latest; the default kit when none is recorded
};

/// What a vessel took of a brew, in a refill or a top-up.
struct Poured {
    std::string brew;
    VesselName into;
    Day on{};
    Litres volume{0};
};

/// A view of the book that can be changed in memory: the cache, or a working copy while a batch is validated.
/// Copies are cheap: records are shared until one is touched.
class Cellar {
public:
    explicit Cellar(const book::Book& book) : book_(&book) {}
    Cellar(const Cellar& other);
    Cellar& operator=(const Cellar&) = delete;
    ~Cellar() = default;

    Result<void> loadShared();
    /// Only after loadShared().
    [[nodiscard]] const SharedFacts& shared() const { return *shared_; }
    SharedFacts& changeShared();
    /// Loads on first use. Unknown name: fault at "/vessel".
    Result<VesselRecord*> vessel(const VesselName& name);
    Result<VesselRecord*> vesselById(book::RowId id);
    Result<void> loadAll();
    /// What any vessel took of a brew, or of all of them; read from the book, so that no vessel is loaded.
    [[nodiscard]] Result<std::vector<Poured>> pourings(const std::optional<std::string>& brew = {}) const;
    /// Where a brew went first.
    [[nodiscard]] std::optional<Poured> poured(const std::string& brew) const;
    /// Takes one fact out of a working copy, as if it were not there.
    template <class F> void without(const std::set<book::RowId>& vessels, book::RowId row);
    void drop(book::RowId id) { records_.erase(id); }
    void dropShared() { shared_.reset(); } ///< read again on next use; vessels stay
    void clear();
    /// A working copy becomes the cache: nothing is shared with another copy any more.
    void adopt();

private:
    Result<VesselRecord> load(book::RowId id) const;
    const book::Book* book_;
    std::shared_ptr<SharedFacts> shared_;
    std::map<book::RowId, std::shared_ptr<VesselRecord>> records_;
    std::set<std::pair<std::string_view, book::RowId>> takenOut_; ///< by without(): still in the book
    bool copied_ = false;                                         ///< what is not in own_ belongs to the original too
    std::set<book::RowId> own_;
    bool ownShared_ = true;
};

inline constexpr int lastRank = 9;
/// On one day: opening, then what measures, then samples and draws, then what goes in.
[[nodiscard]] constexpr int rankOf(EntryKind kind) {
    switch (kind) {
    case EntryKind::opening:
        return 0;
    case EntryKind::dip:
    case EntryKind::reading:
        return 1;
    case EntryKind::sample:
        return 2;
    case EntryKind::drawOff:
        return 3;
    case EntryKind::refill:
        return 4;
    case EntryKind::topUp:
        return 5;
    }
    return lastRank;
}
/// The order in which replay reads: day, minute, rank, id.
[[nodiscard]] bool ledgerOrder(const LedgerEntry& a, const LedgerEntry& b);
/// Ledger entry ids join row id and table, so that they are unique across tables.
[[nodiscard]] std::int64_t entryId(EntryKind kind, book::RowId row);
[[nodiscard]] book::RowId rowOf(std::int64_t entry);
[[nodiscard]] EntryKind kindOfEntry(std::int64_t entry);
[[nodiscard]] std::string_view tableOfEntry(EntryKind kind);

[[nodiscard]] std::vector<LedgerEntry> ledgerEntries(const VesselRecord& record, const SharedFacts& shared);
[[nodiscard]] VesselShape shapeOf(const VesselFact& facts);
[[nodiscard]] Replay replayOf(const VesselRecord& record, const SharedFacts& shared, Day today);

/// Meaning, beyond fields and ranges: known malts, possible volumes, days in order.
[[nodiscard]] Result<void> checkMeaning(const Fact& fact, Cellar& cellar, Day today);

/// What was drawn for the refill that is still to come; none: the draw is still to come too.
[[nodiscard]] std::optional<Litres> drawnForRefill(const VesselRecord& record, const LedgerState& now);
[[nodiscard]] Recipe defaultRecipe(); ///< until one is recorded

// A choice belongs to its refill: its draw is the one that makes room for it, its recipe, interval and temperature act
// from that refill on, until a later choice's. Of a recipe the later one counts, base recipe or choice; a base recipe
// says nothing about the rest. Once it is drawn, the draw is what was drawn.

/// The choice made for the refill that is due; none after that refill went in.
[[nodiscard]] const ChoiceFact* openChoice(const VesselRecord& record, const LedgerState& now);
/// The choice that the refill in the vessel went in by; none: the vessel's own interval, draw and temperature.
[[nodiscard]] const ChoiceFact* choiceInForce(const VesselRecord& record, const LedgerState& now);
/// For the coming refill: what is chosen for it, or what goes on if nothing is.
[[nodiscard]] Setting settingInUse(const VesselRecord& record, const LedgerState& now);
/// What goes on if nothing is chosen for the coming refill. The cycle that runs has this interval.
[[nodiscard]] Setting settingLeftAlone(const VesselRecord& record, const LedgerState& now);
/// What `to` changes against `from`, each with its old and new value: lever by lever, then what no lever speaks of.
[[nodiscard]] std::vector<std::string> changesBetween(const Setting& from, const Setting& to, const Pantry& pantry,
                                                      const DisplayUnits& units);
/// What the plan for the coming refill changes against that of the last one, named with old and new values; what was
/// drawn is no part of a plan.
[[nodiscard]] std::vector<std::string> changesSinceLastRefill(const VesselRecord& record, const Pantry& pantry,
                                                              const LedgerState& now, const DisplayUnits& units);
/// The same for a setting that may come into use.
[[nodiscard]] std::vector<std::string> changesSinceLastRefill(const VesselRecord& record, const Pantry& pantry,
                                                              const LedgerState& now, const Setting& to,
                                                              const DisplayUnits& units);

[[nodiscard]] ScheduleRule ruleOf(const VesselRecord& record, const Cellar& cellar, const LedgerState& now, Day today,
                                  const Setting& coming);
[[nodiscard]] Schedule datesOf(const VesselRecord& record, const Cellar& cellar, const LedgerState& now, Day today);
/// As they would be if the refill were planned like this.
[[nodiscard]] Schedule datesOf(const VesselRecord& record, const Cellar& cellar, const LedgerState& now, Day today,
                               const Setting& coming);
[[nodiscard]] Due dueOf(const VesselRecord& record, const Cellar& cellar, const LedgerState& now, Day today);

[[nodiscard]] Parameters parametersFor(const VesselRecord& record, Day day);
[[nodiscard]] Result<EstimatesView> estimatesOf(const VesselRecord& record, Cellar& cellar, Day today);
struct MeasuredOn {
    Day on{};
    const Measured* values = nullptr;
};
/// What was measured up to a day, with readings, with samples and of what was drawn; by day.
[[nodiscard]] std::vector<MeasuredOn> measuredUpTo(const VesselRecord& record, Day until);
[[nodiscard]] double oxygenOf(const VesselFact& facts);

/// The brew made for the coming refill: for this vessel, since its last refill or its opening, in no vessel yet; the
/// latest.
[[nodiscard]] const BrewFact* brewForRefill(const VesselRecord& record, const Cellar& cellar, const LedgerState& now,
                                            Day today);
/// What a brew gives the vessels it is poured into, by the kit of its day; none: its litres are not recorded.
[[nodiscard]] std::optional<Litres> givesOf(const BrewFact& brew, const SharedFacts& shared);
/// Beer is poured after it is brewed, and no more of it than there is left. No brew, or an unknown one: fine.
[[nodiscard]] Result<void> checkPouring(const std::string& brew, Day on, Litres volume, const Cellar& cellar);
/// Refuses, with the name of the brew, to change the recipe of a refill that is brewed already.
[[nodiscard]] Result<void> notBrewedYet(const VesselRecord& record, const Cellar& cellar, Day day);
/// What the vessel holds on the draw day, evaporation taken off; what is drawn already counts as still in it.
[[nodiscard]] Litres volumeOnDraw(const VesselRecord& record, const SharedFacts& shared, const LedgerState& now,
                                  Day draw);
/// Filled to what it held after the last refill; before the first, to its capacity.
[[nodiscard]] Litres usualFill(const VesselRecord& record, const SharedFacts& shared, Day today);
/// In force on `today`: the latest of each lever, if it locks.
[[nodiscard]] std::vector<LockFact> locksInForce(const VesselRecord& record, Day today);
/// The latest of each item up to `today`.
[[nodiscard]] std::vector<AvailabilityFact> availabilityOn(const SharedFacts& shared, Day today);
/// Litres the next refill must bring, for this setting.
[[nodiscard]] Litres refillWanted(const Setting& setting, const VesselRecord& record, const Cellar& cellar, Day today);
[[nodiscard]] Result<BrewPlan> sizedFor(const BrewInput& input, const RefillBeer& beer, const EquipmentFact& kit,
                                        Litres intoVessel);

struct Desk::Inside {
    using WriteBody = std::function<Result<void>(Cellar&, book::Writer&)>;

    std::unique_ptr<book::Book> book;
    Clock clock;
    DisplayUnits units; ///< of what is put in words and stored
    std::vector<std::function<void()>> observers;
    std::unique_ptr<Cellar> cellar;

    /// One transaction on a working copy, which becomes the cache; a head moved by another program is reloaded and
    /// tried once more. Returns the edit's name.
    Result<std::string> write(const book::EditLabel& label, const WriteBody& body, bool readAgain = false);
    /// The vessels a stored fact belongs to, and those its replacement will belong to.
    template <class F>
    Result<std::set<book::RowId>> touchedBy(Cellar& working, const std::string& table, book::RowId id,
                                            const F* replacement = nullptr) const;
    template <class F>
    [[nodiscard]] Result<std::string> subjectOf(const std::string& table, book::RowId id,
                                                const F* replacement = nullptr) const;
    /// Drops what an edit's subject names: vessel ids, "shared" or "*" for all.
    void forget(const std::string& subject);
    void tell() const;
};

} // namespace staveline
