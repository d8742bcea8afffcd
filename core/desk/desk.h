// SPDX-License-Identifier: GPL-3.0-or-later
// The application service: window and command line do everything through it. Queries return value snapshots;
// each answer has its header: ledger, tasting, advice, brew, draw_day, history, full_answer.
// One thread writes; advise() works on a snapshot and may run on any thread.
#pragma once

#include "book/book.h"
#include "desk/ledger_note.h"
#include "facts/fact_list.h"
#include "quantity/message.h"
#include "quantity/text.h"

#include <filesystem>
#include <functional>
#include <map>
#include <memory>
#include <optional>

namespace staveline::advice {
struct Advice;
struct Setting;
struct Trial;
} // namespace staveline::advice

namespace staveline::brewing {
struct BrewPlan;
} // namespace staveline::brewing

namespace staveline::estimate {
struct Estimates;
} // namespace staveline::estimate

namespace staveline::ingredient {
class Pantry;
} // namespace staveline::ingredient

namespace staveline::facts {
struct TextFile;
} // namespace staveline::facts

namespace staveline::sheet {
struct Document;
} // namespace staveline::sheet

namespace staveline::desk {

struct AdviceJob;
struct AdviceRequest;
struct AtHand;
struct BlendAnswer;
struct BlendRequest;
struct BrewDraft;
struct BrewMeaning;
struct BrewStock;
struct DayEfficiency;
struct DrawDayView;
struct FirstSteps;
struct HistoryView;
struct HopOffer;
struct LedgerPreview;
struct LedgerView;
struct LotView;
struct PackingAnswer;
struct PackingRequest;
struct PastDraw;
struct PlannedRecipe;
struct RoomView;
struct Prospect;
struct Start;
struct TasteView;
struct VesselLife;
struct VesselSummary;
struct WhatIf;
template <class F> struct Filed;
using EstimatesView = estimate::Estimates;

using Clock = std::function<Day()>;
/// The civil day of this machine.
[[nodiscard]] Day systemToday();

/// How an edit is named and merged; empty parts: as the desk names it, never merged.
struct EditNote {
    std::string text;     ///< "score for sour length, Plover"
    std::string mergeKey; ///< typing with the same key within 2 s is one edit
};

/// Told after each of many facts: how many are checked and written, of how many.
using Progress = std::function<void(std::size_t done, std::size_t all)>;

/// The same of work that can be broken off: false says so.
using GoOn = std::function<bool(std::size_t done, std::size_t all)>;

/// What an edit did.
struct Recorded {
    std::string edit; ///< its name
    std::vector<book::RowKey>
        rows; ///< stored, in the order of the facts; of undo and redo what changed, some of it gone
    std::vector<VesselNote> findings = {};       ///< new ones; not of undo and redo
    std::vector<facts::VesselName> vessels = {}; ///< of undo and redo: whose edit it was; none: the whole book's
};
/// What became of many facts of which some cannot be.
struct RecordedSome {
    Recorded recorded;
    std::map<std::size_t, Fault> refused; ///< by place among the facts
};
/// A decision as it was stored, with its promise.
struct Chosen {
    facts::ChoiceFact choice;
    Recorded recorded;
};

class Desk {
public:
    /// While one lives no observer is told of anything; when the last ends they are told once of all that changed.
    class Batch {
    public:
        explicit Batch(Desk& desk);
        ~Batch();
        Batch(const Batch&) = delete;
        Batch& operator=(const Batch&) = delete;

    private:
        Desk& desk_;
    };

    static Result<std::unique_ptr<Desk>> create(const std::filesystem::path& path, Clock clock = systemToday);
    static Result<std::unique_ptr<Desk>> open(const std::filesystem::path& path, Clock clock = systemToday,
                                              book::OpenMode mode = book::OpenMode::readWrite);
    ~Desk();

    // --- writing -----------------------------------------------------------------------------------------------
    /// The units of the names that edits get from now on and of the words kept with a choice.
    void speakIn(const DisplayUnits& units);
    /// All or nothing: one transaction, one undo. Faults carry "/<index>/<field>" when there are several facts,
    /// "/<field>" when there is one.
    Result<Recorded> record(const std::vector<facts::Fact>& facts, const Progress& progress = {});
    Result<Recorded> record(const facts::Fact& fact, const EditNote& note = {});
    /// Those of many entries, tastings or brews that can be, in one edit; the others are told. A `trial` stores nothing
    /// and answers the same. Refused when an entry on record would become impossible, or `goOn` says so.
    Result<RecordedSome> recordSome(const std::vector<facts::Fact>& facts, const EditNote& note, bool trial,
                                    const GoOn& goOn = {});
    /// Replaces a recorded ledger fact (same kind, same table), or removes it. Audited by the edit log.
    Result<Recorded> amend(const std::string& table, std::int64_t id, const facts::Fact& fact,
                           const EditNote& note = {});
    Result<Recorded> remove(const std::string& table, std::int64_t id, const EditNote& note = {});
    /// For what is in force until it is set anew (target, base recipe, kit): takes the place of today's fact of its
    /// kind and vessel, or is the first of the day. A proposal's promise stays as it was made: only one's own is
    /// replaced.
    Result<Recorded> setToday(const facts::Fact& fact, const EditNote& note = {});
    [[nodiscard]] Result<facts::Fact> fact(const std::string& table, std::int64_t id) const;
    /// Stores the forecast of proposal `number` (1-based; 0: leave it alone) and makes its recipe the planned one.
    /// Refused when the refill is brewed already (notPossible).
    Result<Chosen> choose(const AdviceJob& job, const advice::Advice& advice, int number);
    /// The same for a setting of the brewer's own, from the try board or edited by hand (proposal ChoiceFact::own).
    Result<Chosen> adopt(const AdviceJob& job, const advice::Setting& setting);
    /// The recipe for the coming refill, edited: a new promise when a choice is open, else the base recipe of today.
    /// Typing within 2 s merges. Refused when it is brewed already; a base recipe as such can always be recorded.
    Result<Recorded> revise(const facts::VesselName& vessel, const advice::Setting& setting, const EditNote& note = {});

    /// Puts the tables of an exported folder into an empty book, row for row as they were; fields and references are
    /// checked, at "/<file>/<line or id>/<column>", the ledgers are taken as they stand. One edit.
    Result<Recorded> restore(const std::vector<facts::TextFile>& files);

    Result<Recorded> undo();
    Result<Recorded> redo();
    [[nodiscard]] std::string undoText() const; ///< empty: nothing to undo
    [[nodiscard]] std::string redoText() const;

    // --- reading -----------------------------------------------------------------------------------------------
    [[nodiscard]] Result<std::vector<VesselSummary>> cellar() const;
    /// What is recorded of each vessel itself, in the order of cellar(): quick in any book, no ledger is read.
    [[nodiscard]] Result<std::vector<facts::VesselFact>> vessels() const;
    [[nodiscard]] Result<VesselSummary> vessel(const facts::VesselName& name) const;
    /// The vessel whose work comes first, one to fill among them; of very many only the first are looked at. None:
    /// there is nothing to do.
    [[nodiscard]] Result<std::optional<VesselSummary>> firstDue() const;
    /// `withRounds`: what was seen at the vessel stands among its entries, as an event does.
    [[nodiscard]] Result<LedgerView> ledger(const facts::VesselName& name, bool withRounds = false) const;
    /// Refuses what `record` would refuse, with the same faults.
    [[nodiscard]] Result<LedgerPreview> preview(const facts::Fact& fact) const;
    /// The same for a fact that would replace a recorded one.
    [[nodiscard]] Result<LedgerPreview> preview(const std::string& table, std::int64_t id,
                                                const facts::Fact& fact) const;
    [[nodiscard]] Result<EstimatesView> estimates(const facts::VesselName& name) const;
    [[nodiscard]] Result<AdviceJob> adviceJob(const AdviceRequest& request) const;
    /// adviceJob + advise in one call.
    [[nodiscard]] Result<advice::Advice> advise(const AdviceRequest& request) const;
    /// The planned recipe (last choice, else the base recipe), sized and scheduled.
    [[nodiscard]] Result<brewing::BrewPlan> brewPlan(const facts::VesselName& name) const;
    [[nodiscard]] Result<sheet::Document> brewSheet(const facts::VesselName& name,
                                                    const DisplayUnits& units = {}) const;
    /// A card for this vessel, for all in use without a name. Fault where none is in use.
    [[nodiscard]] Result<sheet::Document> vesselCards(const facts::VesselName& name = {},
                                                      const DisplayUnits& units = {}) const;
    /// The work to come of this vessel, of all of them and of the lots without a name, as an iCalendar file.
    [[nodiscard]] Result<std::string> calendar(const facts::VesselName& name = {},
                                               const DisplayUnits& units = {}) const;
    /// What a vessel would become, run in another way (desk/what_if.h); nothing is written.
    [[nodiscard]] Result<Prospect> whatIf(const facts::VesselName& name, const WhatIf& what) const;
    /// Beers of vessels and lots as they stand, blended to a target (desk/blending.h), and beer of one packed with what
    /// makes it safe (desk/packing.h); nothing is written.
    [[nodiscard]] Result<BlendAnswer> blend(const BlendRequest& request) const;
    [[nodiscard]] Result<PackingAnswer> pack(const PackingRequest& request) const;
    /// Drawn beer (desk/lots.h): what is left first, then what is packed, then what is gone; newest first. Unknown
    /// name: fault at "/lot".
    [[nodiscard]] Result<std::vector<LotView>> lots() const;
    [[nodiscard]] Result<LotView> lot(const facts::LotName& name) const;
    /// The same without what they are like, so that it is quick.
    [[nodiscard]] Result<std::vector<LotView>> lotsInBrief() const;
    /// Those that wait for something in brief, what comes first before.
    [[nodiscard]] Result<std::vector<LotView>> lotsWaiting() const;
    /// Of what pack() answered today. The sheet of what the guard refused says so and has no steps; there are no labels
    /// for it (notPossible).
    [[nodiscard]] sheet::Document packingSheet(const PackingAnswer& answer, const DisplayUnits& units = {}) const;
    [[nodiscard]] Result<sheet::Document> bottleLabels(const PackingAnswer& answer,
                                                       const DisplayUnits& units = {}) const;
    [[nodiscard]] Result<Start> startOf(const facts::VesselName& name) const;
    /// What the adviser expects of a setting: the same numbers and bands, so leftAlone() gives "leave it alone".
    [[nodiscard]] Result<advice::Trial> predict(const facts::VesselName& name, const advice::Setting& setting) const;
    /// What "leave it alone" brews: the last refill without its one-cycle aids, with what is locked.
    [[nodiscard]] Result<advice::Setting> leftAlone(const facts::VesselName& name) const;
    [[nodiscard]] Result<HistoryView> history(const facts::VesselName& name) const;
    [[nodiscard]] Result<VesselLife> life(const facts::VesselName& name) const;
    /// Of a new book, up to the first tasting; no vessel yet: `name` is empty.
    [[nodiscard]] Result<FirstSteps> firstSteps(const facts::VesselName& name) const;
    /// Newest first.
    [[nodiscard]] Result<std::vector<Filed<facts::SittingFact>>> sittings(const facts::VesselName& name) const;
    [[nodiscard]] Result<TasteView> taste(const facts::SittingFact& sitting) const;
    [[nodiscard]] sheet::Document tastingPaper(const facts::VesselName& name, bool shortSheet,
                                               const DisplayUnits& units = {}) const;
    /// To be filled in on the way through the cellar; the vessels in the order of cellar().
    [[nodiscard]] sheet::Document walkSheet(const DisplayUnits& units = {}) const;
    /// None: never set; the adviser then works with a default one.
    [[nodiscard]] Result<std::optional<Filed<facts::TargetFact>>> target(const facts::VesselName& name) const;
    [[nodiscard]] Result<std::vector<PastDraw>> pastDraws(const facts::VesselName& name) const; ///< newest first
    [[nodiscard]] std::optional<facts::CultureFact>
    culture(const facts::VesselName& name) const; ///< none: never described
    [[nodiscard]] Result<std::vector<facts::LockFact>> locks(const facts::VesselName& name) const; ///< in force today
    [[nodiscard]] std::vector<HopOffer> hops() const;          ///< with their alpha acids of today (desk/stock.h)
    [[nodiscard]] std::vector<AtHand> stock() const;           ///< the same with what is left of it (desk/stock.h)
    [[nodiscard]] Result<std::vector<RoomView>> rooms() const; ///< as they are today, by name
    [[nodiscard]] Result<DrawDayView> drawDay(const facts::VesselName& name) const;
    [[nodiscard]] Result<PlannedRecipe> planned(const facts::VesselName& name) const;
    /// A setting and a kit as they are being edited; faults point into the recipe ("/mash/0/temperature_c") or the kit
    /// ("/equipment/efficiency").
    [[nodiscard]] Result<BrewDraft> draft(const facts::VesselName& name, const advice::Setting& setting,
                                          const facts::EquipmentFact& kit) const;
    /// What a brew, recorded or about to be, means for the next draw; of one that went into a vessel, where, and what
    /// came out against its own recipe.
    [[nodiscard]] Result<BrewMeaning> meaning(const facts::BrewFact& brew) const;
    [[nodiscard]] std::string nextBrewName() const; ///< "Brew 32"
    /// In use today for a vessel, or for all that have none of their own; the default kit when none is recorded.
    [[nodiscard]] facts::EquipmentFact kit(const facts::VesselName& vessel = {}) const;
    /// Extract won on the day of a brew against what its mash could give, and the kit it speaks of; none: it was not
    /// weighed or measured.
    [[nodiscard]] std::optional<DayEfficiency> efficiency(const facts::BrewFact& brew) const;
    [[nodiscard]] Result<advice::Setting>
    setting(const facts::VesselName& name) const; ///< in use for the coming refill
    [[nodiscard]] std::optional<facts::ChoiceFact> lastChoice(const facts::VesselName& name) const;
    [[nodiscard]] std::vector<facts::BrewFact> brews() const;
    [[nodiscard]] std::vector<Filed<facts::BrewFact>> brewsFor(const facts::VesselName& vessel) const; ///< newest first
    /// What a refill of this vessel can be taken from: the brew made for it first, then the newest; used up ones too.
    [[nodiscard]] Result<std::vector<BrewStock>> brewsToPour(const facts::VesselName& vessel) const;
    [[nodiscard]] const ingredient::Pantry& pantry() const; ///< with ingredients of one's own, as they are now
    /// The grains, yeasts and hops of one's own in this order, each as it is now, by name.
    [[nodiscard]] std::vector<Filed<facts::Fact>> ownIngredients() const;

    /// The whole book to be read without the program: a table (CSV) a kind of fact, a page (HTML) a cycle of each
    /// vessel, and what lies there. `progress` counts vessels.
    [[nodiscard]] Result<std::vector<facts::TextFile>> exported(const DisplayUnits& units = {},
                                                                const Progress& progress = {}) const;

    [[nodiscard]] Result<book::CheckReport> check() const;
    Result<void> backup(const std::filesystem::path& to) const;
    [[nodiscard]] bool readOnly() const;
    [[nodiscard]] std::vector<Message> notices() const;
    [[nodiscard]] std::vector<book::Damage> damages() const; ///< found since the book was opened
    [[nodiscard]] std::filesystem::path path() const;
    [[nodiscard]] Day today() const;

    /// Grows with every change, own or foreign; stale results are dropped by comparing it.
    [[nodiscard]] std::int64_t revision() const;
    /// Called after each change, on the writing thread, when book and memory are as the change leaves them. Whoever has
    /// to take in first what the call returns opens a batch around both.
    void observe(std::function<void()> observer);
    [[nodiscard]] Batch batch() { return Batch(*this); }
    /// Looks whether another program changed the book; if so reloads, tells the observer and returns true.
    bool poll();

private:
    Result<Recorded> recordNamed(const std::vector<facts::Fact>& facts, const EditNote& note,
                                 const Progress& progress = {});
    Result<void> requireCurrent(const AdviceJob& job);
    Result<Chosen> chosen(const facts::ChoiceFact& choice);
    /// The choice of proposal `number` with its forecast, as it would be promised on `on`; writes nothing.
    [[nodiscard]] Result<facts::ChoiceFact> promise(const facts::VesselName& vessel, int number, Day on) const;
    [[nodiscard]] Result<facts::ChoiceFact> promise(const AdviceJob& job, const advice::Advice& advice, int number,
                                                    Day on) const;
    [[nodiscard]] Result<facts::ChoiceFact> promiseOwn(const AdviceJob& job, const advice::Setting& setting) const;

    struct Inside;
    explicit Desk(std::unique_ptr<Inside> inside);
    std::unique_ptr<Inside> inside_;
};

} // namespace staveline::desk
