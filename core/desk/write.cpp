// SPDX-License-Identifier: GPL-3.0-or-later
// Recording, amending, removing: validated against a working copy, then written in one transaction.
#include "brewing/as_brewed.h"
#include "desk/inside.h"
#include "desk/lot_checks.h"
#include "desk/own_ingredients.h"
#include "desk/packed_beer.h"
#include "desk/recorder.h"
#include "desk/refits.h"
#include "desk/rooms.h"
#include "desk/turns.h"
#include "facts/kept_words.h"

#include <algorithm>
#include <iterator>
#include <set>

namespace staveline::desk {

using facts::BrewFact;
using facts::checkFields;
using facts::Fact;
using facts::perVessel;
using facts::tableOf;
using vessel::Replay;

namespace {

/// What it says stands in the list of its vessel and nowhere else. A refit also shows in the list of all vessels.
template <class F> inline constexpr bool ofVesselAlone = perVessel<F> && !std::is_same_v<F, facts::RefitFact>;

/// "rye_malt" as it is read out.
std::string inWords(std::string id) {
    std::replace(id.begin(), id.end(), '_', ' ');
    return id;
}

template <class F> std::string subjectName(const F& f) {
    constexpr bool atVessel = requires {
        f.vessel;
    };
    if constexpr (atVessel && !std::is_same_v<F, BrewFact>)
        return f.vessel;
    else if constexpr (requires { f.packaging; })
        return f.packaging;
    else if constexpr (requires { f.name; })
        return f.name;
    else if constexpr (requires { f.lot; })
        return f.lot;
    else if constexpr (requires { f.item.name; })
        return f.item.name;
    else if constexpr (std::is_same_v<F, facts::AvailabilityFact>)
        return inWords(f.item);
    else
        return {};
}

/// What the text of an edit is told by beside its kind: by the word of an event or of the work, by what is wanted of a
/// sitting, by a permission or a wanted age that is changed alone.
template <class F> std::string tellingPart(const F&) {
    return {};
}
std::string tellingPart(const facts::EventFact& f) {
    return "." + std::string(wordOf(f.what));
}
std::string tellingPart(const facts::WorkDateFact& f) {
    return "." + std::string(wordOf(f.work));
}
std::string tellingPart(const facts::LotMoveFact& f) {
    return "." + std::string(wordOf(f.why));
}
std::string tellingPart(const facts::SittingUseFact& f) {
    return f.learn ? ".learn" : ".leave";
}
std::string tellingPart(const facts::VesselEditFact& f) {
    facts::VesselEditFact draw, interval, age;
    draw.vessel = interval.vessel = age.vessel = f.vessel;
    draw.drawMayMove = f.drawMayMove;
    interval.intervalMayMove = f.intervalMayMove;
    age.wantedAgeYears = f.wantedAgeYears;
    age.on = f.on;
    if (f.drawMayMove && f == draw)
        return *f.drawMayMove ? ".draw_may_move" : ".draw_stays";
    if (f.intervalMayMove && f == interval)
        return *f.intervalMayMove ? ".interval_may_move" : ".interval_stays";
    if (f.wantedAgeYears && f == age)
        return ".wanted_age";
    return {};
}

/// Kept words.
std::string editText(const Fact& fact) {
    return std::visit(
        [&]<class F>(const F& f) {
            const std::string key = "desk.edit." + std::string(facts::kindOf<F>) + tellingPart(f);
            Message message = say(key).with("name", subjectName(f));
            if constexpr (requires { f.volume.l; })
                message.arguments.push_back({"volume", f.volume, {}});
            return facts::keptWords(message);
        },
        fact);
}

EditScope scopeOf(const std::vector<Fact>& facts, const facts::Names& names) {
    EditScope scope;
    const auto vessel = [&](const std::string& name) {
        if (name.empty())
            return;
        if (const auto at = names.vessels.find(name); at != names.vessels.end())
            scope.vessels.insert(at->second);
        else
            scope.everything = true; // one that comes with this edit
    };
    for (const auto& fact : facts)
        std::visit(
            [&]<class F>(const F& f) {
                if constexpr (requires { f.vessel; })
                    vessel(f.vessel);
                if constexpr (requires { f.from; })
                    vessel(f.from);
                constexpr bool changesSitting = facts::factTraits<F>.kept == facts::Kept::inSitting;
                if constexpr (std::is_same_v<F, facts::RefitFact> || std::is_same_v<F, facts::RoomFact>)
                    scope.everything = true;
                if constexpr (!perVessel<F> && !changesSitting)
                    (facts::factTraits<F>.kept == facts::Kept::byAll ? scope.shared : scope.everything) = true;
                if constexpr (bringsIngredients<F>)
                    scope.shared = true;
            },
            fact);
    return scope;
}

bool renames(const Fact& fact) {
    const auto* edit = std::get_if<facts::VesselEditFact>(&fact);
    return edit && edit->name;
}

/// As it is kept: what was weighed says the shares.
Fact asKept(Fact fact) {
    if (auto* brew = std::get_if<BrewFact>(&fact))
        brew->recipe = asWeighed(std::move(brew->recipe));
    return fact;
}

Fault readOnlyFault() {
    return {FaultKind::storage, "", say("desk.read_only"), say("desk.read_only.remedy")};
}

template <class F>
Result<Fact> readStored(const book::Book& book, Cellar& cellar, const std::string& table, book::RowId id) {
    auto row = book.row(table, id);
    if (!row)
        return fail(row.error());
    return Fact{facts::fromRow<F>(*row, cellar.shared().names)};
}

/// Adds the vessels a fact names: where it happened and where the beer came from.
template <class F> void addVesselsOf(const F& fact, const facts::Names& names, std::set<book::RowId>& vessels) {
    const auto add = [&](const std::string& name) {
        if (const auto at = names.vessels.find(name); at != names.vessels.end())
            vessels.insert(at->second);
    };
    if constexpr (requires { fact.vessel; })
        add(fact.vessel);
    if constexpr (requires { fact.from; })
        add(fact.from);
}

/// A row changed in place: what it belongs to is read again.
void forgetAfter(Cellar& working, const std::set<book::RowId>& vessels, bool vesselsOnly) {
    for (auto id : vessels)
        working.drop(id);
    if (!vesselsOnly)
        working.dropShared();
}

/// An amended fact at its place in memory. What other vessels hold too is read again.
template <class F> void putBack(Cellar& working, const std::set<book::RowId>& vessels, book::RowId id, const F& fact) {
    if constexpr (ofVesselAlone<F> && !requires { fact.from; }) {
        auto record = working.vessel(fact.vessel);
        if (record && vessels.contains((*record)->id)) {
            const auto before = [](const Stored<F>& a, const Stored<F>& b) {
                return std::pair(dayOf(a.fact), a.id) < std::pair(dayOf(b.fact), b.id);
            };
            auto& list = (*record)->template of<F>();
            const Stored<F> amended{id, fact};
            list.insert(std::lower_bound(list.begin(), list.end(), amended, before), amended);
            (*record)->seen.add(fact);
            return;
        }
        if (record)
            working.drop((*record)->id);
    }
    forgetAfter(working, vessels, ofVesselAlone<F>);
}

template <class F> const book::TableSpec& specOf() {
    const auto& tables = facts::cellarSchema().tables;
    return *std::find_if(tables.begin(), tables.end(),
                         [](const book::TableSpec& table) { return table.name == tableOf<F>; });
}

/// An ingredient of one's own that was changed in place or is gone: no brew is another one by it, and no recipe lacks
/// it.
template <class F> Result<void> keepsWhatUses(const SharedFacts& before, Cellar& working) {
    if constexpr (requires(F f) { f.like; }) {
        if (auto kept = keepsRecipes(before, working); !kept)
            return kept;
        return keepsBrews(before, working.shared());
    }
    return {};
}

/// Calls `then` with the type of fact a table holds.
template <class Then>
auto withTable(const std::string& table, Then then) -> decltype(then(std::type_identity<facts::DipFact>{})) {
    decltype(then(std::type_identity<facts::DipFact>{})) result =
        badInput("/table", say("desk.unknown_table").with("table", table), say("desk.unknown_table.remedy"));
    facts::forEachFact([&]<class F>(std::type_identity<F> type) {
        if constexpr (facts::factTraits<F>.amendable())
            if (table == tableOf<F>)
                result = then(type);
    });
    return result;
}

/// A new vessel with what is said of it at once: one thing to undo, named as the vessel.
bool describesNewVessel(const std::vector<Fact>& facts) {
    const auto* vessel = std::get_if<facts::VesselFact>(&facts.front());
    return vessel && std::all_of(facts.begin() + 1, facts.end(), [&](const Fact& fact) {
               const auto* culture = std::get_if<facts::CultureFact>(&fact);
               const auto* target = std::get_if<facts::TargetFact>(&fact);
               return std::holds_alternative<facts::EquipmentFact>(fact) ||
                      (culture && culture->vessel == vessel->name) || (target && target->vessel == vessel->name);
           });
}

} // namespace

namespace {

/// The rows with what they bring; or what they make impossible. `single`: a fault in one of several facts is found at
/// "/<index>/<field>".
template <class Written>
Result<Written> unlessImpossible(const LedgerGuard& guard, std::vector<book::RowKey> rows, bool single) {
    auto outcome = guard.outcome(rows);
    if (!outcome)
        return fail(outcome.error());
    if (const auto& refusal = outcome->refusal)
        return fail(single || !refusal->row ? refusal->fault
                                            : under("/" + std::to_string(*refusal->row), refusal->fault));
    return Written{std::move(rows), std::move(outcome->notes)};
}

/// An entry moved to another day or vessel goes after what is there; elsewhere it keeps its turn.
template <class F> Result<void> placeAgain(F& fact, const F& old, Cellar& working) {
    if constexpr (requires { fact.turn; }) {
        if (fact.on == old.on && fact.vessel == old.vessel) {
            fact.turn = fact.turn ? fact.turn : old.turn;
            return {};
        }
        if (fact.turn == old.turn)
            fact.turn.reset();
        return Turns(working).give(fact);
    }
    return {};
}

/// A filling that is another one now is judged again; else what was said of it stays. What goes into a lot is not put
/// right behind its filling; words are.
template <class F> Result<F> judgedAgain(F fact, const F& old, Cellar& working) {
    if constexpr (goesIntoLot<F>) {
        F same = old;
        same.note = fact.note;
        if (fact != same)
            if (auto ok = canStillGoInto(lotFilledBy(fact), fact.on, working); !ok)
                return fail(ok.error());
    }
    if constexpr (std::is_same_v<F, facts::PackagingFact>) {
        fact.verdict = old.verdict;
        fact.until = old.until;
        F same = old;
        same.note = fact.note;
        if (fact != same)
            return guarded(std::move(fact), working);
    }
    return fact;
}

Result<void> watchAll(LedgerGuard& guard, const std::set<book::RowId>& vessels) {
    for (const auto vessel : vessels)
        if (auto watched = guard.watch(vessel); !watched)
            return watched;
    return {};
}

/// The fact as it is stored, taken out of a working copy whose ledgers are watched as they were with it. Only after
/// touchedBy().
template <class F>
Result<F> takeOut(const book::Book& book, Cellar& working, LedgerGuard& guard, const std::set<book::RowId>& touched,
                  const std::string& table, book::RowId id) {
    auto old = readStored<F>(book, working, table, id);
    if (!old)
        return fail(old.error());
    F fact = std::get<F>(*std::move(old));
    if (auto watched = watchAll(guard, touched); !watched)
        return fail(watched.error());
    if (auto watched = touchesLots(fact) ? guard.watchLots() : Result<void>{}; !watched)
        return fail(watched.error());
    working.without<F>(touched, id);
    return fact;
}

} // namespace

Result<Recorded> Desk::record(const Fact& fact, const EditNote& note) {
    return recordNamed({fact}, note);
}

Result<Recorded> Desk::record(const std::vector<Fact>& given, const Progress& progress) {
    return recordNamed(given, {}, progress);
}

Result<Recorded> Desk::recordNamed(const std::vector<Fact>& given, const EditNote& note, const Progress& progress) {
    if (readOnly())
        return fail(readOnlyFault());
    if (given.empty())
        return badInput("", say("desk.no_facts"), say("desk.no_facts.remedy"));
    std::vector<Fact> facts;
    std::transform(given.begin(), given.end(), std::back_inserter(facts), asKept);
    for (auto& fact : facts)
        if (auto* choice = std::get_if<facts::ChoiceFact>(&fact); choice && !choice->forecast) {
            auto made = promise(choice->vessel, choice->proposal, choice->on);
            if (!made)
                return fail(made.error());
            *choice = *made;
        }
    const bool single = facts.size() == 1 || describesNewVessel(facts);
    book::EditLabel label{
        single ? editText(facts.front())
               : facts::keptWords(say("desk.edit.many").with("count", static_cast<std::int64_t>(facts.size()))),
        single ? std::string(facts::traitsOf(facts.front()).kind) : "many", "", note.mergeKey};
    if (!note.text.empty())
        label.text = note.text;
    for (std::size_t i = 0; i < facts.size(); ++i) {
        auto checked = std::visit([](const auto& f) { return checkFields(f); }, facts[i]);
        if (!checked)
            return fail(single ? checked.error() : under("/" + std::to_string(i), checked.error()));
    }
    if (auto shared = inside_->cellar->loadShared(); !shared)
        return fail(shared.error());
    label.subject = toText(scopeOf(facts, inside_->cellar->shared().names));
    // Other vessels hold the names of those they were filled from.
    const bool readAgain = std::any_of(facts.begin(), facts.end(), renames);
    const auto body = [&](Cellar& working, book::Writer& writer) -> Result<Inside::Written> {
        Recorder recorder(working, writer, today());
        for (std::size_t i = 0; i < facts.size(); ++i) {
            if (auto done = recorder.apply(facts[i]); !done)
                return fail(single || ofStorage(done.error().kind) ? done.error()
                                                                   : under("/" + std::to_string(i), done.error()));
            if (progress)
                progress(i + 1, facts.size());
        }
        return unlessImpossible<Inside::Written>(recorder.guard(), recorder.rows(), single);
    };
    return inside_->write(label, body, readAgain);
}

namespace {

/// Facts that are tried together, less those that turned out impossible.
class Trial {
public:
    Trial(const std::vector<Fact>& facts, Day today, const GoOn& goOn) : facts_(facts), today_(today), goOn_(goOn) {}

    /// None: some turned out impossible; try again without them.
    Result<std::optional<LedgerGuard::Outcome>> run(Cellar& working, book::Writer& writer) {
        Recorder recorder(working, writer, today_);
        std::vector<std::size_t> places;
        for (std::size_t i = 0; i < facts_.size(); ++i) {
            if (goOn_ && !goOn_(i, facts_.size()))
                return fail({FaultKind::notPossible, "", say("desk.broken_off"), say("desk.broken_off.remedy")});
            if (refused.contains(i))
                continue;
            auto done = checkFact(facts_[i]) ? recorder.apply(facts_[i]) : checkFact(facts_[i]);
            if (!done && ofStorage(done.error().kind))
                return fail(done.error());
            if (!done)
                refused.emplace(i, done.error());
            else
                places.push_back(i);
        }
        rows = recorder.rows();
        const auto blamed = recorder.guard().roots(rows);
        if (!blamed)
            return fail(blamed.error());
        for (const auto& [row, why] : *blamed)
            refused.emplace(places[row], why);
        if (!blamed->empty())
            return std::nullopt;
        return recorder.guard().outcome(rows).map([](auto outcome) { return std::optional(std::move(outcome)); });
    }

    std::map<std::size_t, Fault> refused;
    std::vector<book::RowKey> rows; ///< one a fact that was taken

private:
    static Result<void> checkFact(const Fact& fact) {
        return std::visit([](const auto& f) { return checkFields(f); }, fact);
    }
    const std::vector<Fact>& facts_;
    Day today_;
    const GoOn& goOn_;
};

} // namespace

Result<RecordedSome> Desk::recordSome(const std::vector<Fact>& given, const EditNote& note, bool trial,
                                      const GoOn& goOn) {
    if (readOnly() && !trial)
        return fail(readOnlyFault());
    std::vector<Fact> facts;
    std::transform(given.begin(), given.end(), std::back_inserter(facts), asKept);
    if (auto shared = inside_->cellar->loadShared(); !shared)
        return fail(shared.error());
    Trial tried(facts, today(), goOn);
    RecordedSome some{{facts::toldWords(note.text, inside_->units), {}, {}, {}}, {}};
    const book::EditLabel label{note.text, "many", toText(scopeOf(facts, inside_->cellar->shared().names)), ""};
    for (;;) {
        bool again = false, rolledBack = false; // the latter: nothing is stored though nothing went wrong
        auto done = inside_->write(label, [&](Cellar& working, book::Writer& writer) -> Result<Inside::Written> {
            auto outcome = tried.run(working, writer);
            if (!outcome)
                return fail(outcome.error());
            again = !*outcome;
            if (!again && (*outcome)->refusal)
                return fail((*outcome)->refusal->fault);
            rolledBack = again || trial || tried.rows.empty();
            if (rolledBack)
                return fail({FaultKind::notPossible, "", {}, {}});
            return Inside::Written{tried.rows, std::move((*outcome)->notes)};
        });
        if (!done && !rolledBack)
            return fail(done.error());
        if (again)
            continue;
        some.recorded =
            done ? *std::move(done) : Recorded{facts::toldWords(note.text, inside_->units), tried.rows, {}, {}};
        some.refused = std::move(tried.refused);
        return some;
    }
}

Result<Recorded> Desk::Inside::write(const book::EditLabel& label, const WriteBody& body, bool readAgain) {
    for (int attempt = 0;; ++attempt) {
        if (auto shared = cellar->loadShared(); !shared)
            return fail(shared.error());
        auto working = std::make_unique<Cellar>(*cellar);
        Written written;
        auto done = book->commit(label, [&](book::Writer& writer) -> Result<void> {
            auto stored = body(*working, writer);
            if (!stored)
                return fail(stored.error());
            written = *std::move(stored);
            return {};
        });
        if (!done && attempt == 0 && done.error().kind == FaultKind::changedElsewhere) {
            book->reload();
            cellar->clear();
            continue;
        }
        if (!done)
            return fail(done.error());
        cellar = std::move(working);
        cellar->adopt();
        if (readAgain)
            cellar->clear();
        tell();
        return Recorded{facts::toldWords(label.text, units), std::move(written.rows), std::move(written.findings)};
    }
}

Result<Fact> Desk::fact(const std::string& table, std::int64_t id) const {
    if (auto shared = inside_->cellar->loadShared(); !shared)
        return fail(shared.error());
    return withTable(table, [&]<class F>(std::type_identity<F>) -> Result<Fact> {
        return readStored<F>(*inside_->book, *inside_->cellar, table, id);
    });
}

Result<Recorded> Desk::amend(const std::string& table, std::int64_t id, const Fact& given, const EditNote& note) {
    if (readOnly())
        return fail(readOnlyFault());
    const Fact fact = asKept(given);
    if (auto checked = std::visit([](const auto& f) { return checkFields(f); }, fact); !checked)
        return fail(checked.error());
    const std::string what =
        note.text.empty() ? facts::keptWords(say("desk.edit.amend").with("what", editText(fact))) : note.text;
    return withTable(table, [&]<class F>(std::type_identity<F>) -> Result<Recorded> {
        const F* replacement = std::get_if<F>(&fact);
        if (!replacement)
            return badInput("/kind", say("desk.kind_differs"), say("desk.kind_differs.remedy"));
        auto scope = inside_->scopeOf<F>(table, id, replacement);
        if (!scope)
            return fail(scope.error());
        return inside_->write(
            {what, table, toText(*scope), note.mergeKey},
            [&](Cellar& working, book::Writer& writer) -> Result<Inside::Written> {
                auto touched = inside_->touchedBy<F>(working, table, id, replacement);
                if (!touched)
                    return fail(touched.error());
                LedgerGuard guard(working, today());
                if (auto watched = touchesLots(*replacement) ? guard.watchLots() : Result<void>{}; !watched)
                    return fail(watched.error());
                const auto old = takeOut<F>(*inside_->book, working, guard, *touched, table, id);
                if (!old)
                    return fail(old.error());
                if (auto ok = checkMeaning(fact, working, today()); !ok)
                    return fail(ok.error());
                Recorder recorder(working, writer, today());
                if (auto kept = recorder.keepIngredientsOf(*replacement); !kept)
                    return fail(kept.error());
                auto judged = judgedAgain(*replacement, *old, working);
                if (!judged)
                    return fail(judged.error());
                F placed = *std::move(judged);
                if (auto at = placeAgain(placed, *old, working); !at)
                    return fail(at.error());
                auto row = toRow(placed, working.shared().names);
                if (!row)
                    return fail(row.error());
                putBack(working, *touched, id, placed);
                addToLots(working, id, placed);
                if (auto done = writer.update(table, id, *row); !done)
                    return fail(done.error());
                if (auto kept = keepsWhatUses<F>(inside_->cellar->shared(), working); !kept)
                    return fail(kept.error());
                if constexpr (std::is_same_v<F, facts::RefitFact>)
                    if (placed.temperature != old->temperature || placed.room != old->room)
                        if (auto done = recorder.overruleBy(placed); !done)
                            return fail(done.error());
                if constexpr (std::is_same_v<F, facts::RoomFact>)
                    if (auto ok = roomsAreThere(working, "/name"); !ok)
                        return fail(ok.error());
                return unlessImpossible<Inside::Written>(guard, {{table, id}}, true);
            },
            !ofVesselAlone<F>);
    });
}

Result<Recorded> Desk::remove(const std::string& table, std::int64_t id, const EditNote& note) {
    if (readOnly())
        return fail(readOnlyFault());
    auto old = fact(table, id);
    if (!old)
        return fail(old.error());
    const std::string what =
        note.text.empty() ? facts::keptWords(say("desk.edit.remove").with("what", editText(*old))) : note.text;
    return withTable(table, [&]<class F>(std::type_identity<F>) -> Result<Recorded> {
        auto scope = inside_->scopeOf<F>(table, id);
        if (!scope)
            return fail(scope.error());
        return inside_->write(
            {what, table, toText(*scope), note.mergeKey},
            [&](Cellar& working, book::Writer& writer) -> Result<Inside::Written> {
                auto touched = inside_->touchedBy<F>(working, table, id);
                if (!touched)
                    return fail(touched.error());
                LedgerGuard guard(working, today());
                if (auto watched = watchAll(guard, *touched); !watched)
                    return fail(watched.error());
                if (auto watched = touchesLots(std::get<F>(*old)) ? guard.watchLots() : Result<void>{}; !watched)
                    return fail(watched.error());
                takeFromLots<F>(working, id);
                forgetAfter(working, *touched, ofVesselAlone<F>);
                if (auto done = writer.remove(table, id); !done)
                    return fail(done.error());
                if (auto kept = keepsWhatUses<F>(inside_->cellar->shared(), working); !kept)
                    return fail(kept.error());
                if constexpr (std::is_same_v<F, facts::RoomFact>)
                    if (auto ok = roomsAreThere(working, ""); !ok)
                        return fail(ok.error());
                return unlessImpossible<Inside::Written>(guard, {}, true);
            },
            !ofVesselAlone<F>);
    });
}

/// What to read again when a change in place is undone: the vessels it belongs to; everything for what all share.
template <class F>
Result<EditScope> Desk::Inside::scopeOf(const std::string& table, book::RowId id, const F* replacement) const {
    if constexpr (!ofVesselAlone<F> || requires(F f) { f.from; })
        return EditScope{{}, false, true};
    if (auto shared = cellar->loadShared(); !shared)
        return fail(shared.error());
    auto touched = touchedBy<F>(*cellar, table, id, replacement);
    if (!touched)
        return fail(touched.error());
    return EditScope{*std::move(touched), bringsIngredients<F>, false};
}

template <class F>
Result<std::set<book::RowId>> Desk::Inside::touchedBy(Cellar& working, const std::string& table, book::RowId id,
                                                      const F* replacement) const {
    std::set<book::RowId> touched;
    auto row = book->row(table, id);
    if (!row)
        return fail(row.error());
    // From its references alone: a sitting of many tasters is long to read.
    const auto& columns = specOf<F>().columns;
    for (std::size_t i = 0; i < columns.size() && i < row->values.size(); ++i)
        if (const auto* vessel = std::get_if<std::int64_t>(&row->values[i]);
            vessel && columns[i].references == "vessel" && working.shared().names.vesselNames.contains(*vessel))
            touched.insert(*vessel);
    if (replacement)
        addVesselsOf(*replacement, working.shared().names, touched);
    return touched;
}

template <class F> void Cellar::without(const std::set<book::RowId>& vessels, book::RowId row) {
    takenOut_.emplace(tableOf<F>, row);
    takeFromLots<F>(*this, row);
    if constexpr (perVessel<F>) {
        const auto takeOut = [&](Facts<F>& list) {
            std::erase_if(list, [&](const auto& stored) { return stored.id == row; });
        };
        for (auto vessel : vessels)
            if (auto record = vesselById(vessel)) {
                takeOut((*record)->of<F>());
                if constexpr (std::is_same_v<F, facts::RefitFact>)
                    (*record)->facts = vesselOn(**record);
                if constexpr (std::is_same_v<F, facts::RefillFact>)
                    takeOut((*record)->refillsElsewhere);
                if constexpr (std::is_same_v<F, facts::TopUpFact>)
                    takeOut((*record)->topUpsElsewhere);
            }
    } else if constexpr (std::is_same_v<F, BrewFact>) {
        SharedFacts& shared = changeShared();
        for (const auto& stored : shared.brews)
            if (stored.id == row)
                shared.names.brews.erase(stored.fact.name);
        std::erase_if(shared.brews, [&](const auto& stored) { return stored.id == row; });
    } else if constexpr (requires(F f) { f.like; }) {
        SharedFacts& shared = changeShared();
        std::erase_if(shared.own.of<F>(), [&](const auto& stored) { return stored.id == row; });
        shared.mixPantries();
    } else if constexpr (std::is_same_v<F, facts::RoomFact>) {
        Facts<F> rooms = *shared().rooms;
        std::erase_if(rooms, [&](const auto& stored) { return stored.id == row; });
        changeRooms(std::move(rooms));
    }
}

Result<Recorded> Desk::Inside::travelled(Result<book::EditInfo> edit) {
    if (!edit)
        return fail(edit.error());
    const EditScope scope = editScopeFrom(edit->label.subject);
    forget(scope);
    Recorded done{facts::toldWords(edit->label.text, units), std::move(edit->rows)};
    if (auto shared = cellar->loadShared(); shared && !scope.everything)
        for (const auto& [id, name] : cellar->shared().names.vesselNames)
            if (scope.vessels.contains(id))
                done.vessels.push_back(name);
    tell();
    return done;
}

Result<Recorded> Desk::undo() {
    if (readOnly())
        return fail(readOnlyFault());
    return inside_->travelled(inside_->book->undo());
}

Result<Recorded> Desk::redo() {
    if (readOnly())
        return fail(readOnlyFault());
    return inside_->travelled(inside_->book->redo());
}

std::string Desk::undoText() const {
    const auto edit = inside_->book->undoable();
    return edit ? facts::toldWords(edit->label.text, inside_->units) : std::string();
}
std::string Desk::redoText() const {
    const auto edit = inside_->book->redoable();
    return edit ? facts::toldWords(edit->label.text, inside_->units) : std::string();
}

namespace {

/// Findings of `after` that `before` did not have.
std::vector<Message> newFindings(const Replay& before, const Replay& after) {
    std::vector<Message> found;
    for (const auto& finding : after.findings)
        if (std::none_of(before.findings.begin(), before.findings.end(),
                         [&](const auto& old) { return old.entry == finding.entry && old.message == finding.message; }))
            found.push_back(finding.message);
    return found;
}

/// `working` is without the fact that is replaced; `before` and `guard` are how things stand.
template <class F>
Result<LedgerPreview> previewIn(Cellar& working, book::RowId id, const F& fact, const F* old, LedgerGuard& guard,
                                const Replay& before, Day today) {
    if (auto ok = checkMeaning(Fact{fact}, working, today); !ok)
        return fail(ok.error());
    auto record = working.vessel(fact.vessel);
    if (!record)
        return fail(record.error());
    if (auto row = toRow(fact, working.shared().names); !row) // a brew that is not there
        return fail(row.error());
    if (auto watched = watchLedgersOf(guard, Fact{fact}); !watched)
        return fail(watched.error());
    F placed = fact;
    if (auto given = old ? placeAgain(placed, *old, working) : Turns(working).give(placed); !given)
        return fail(given.error());
    if (auto added = addFact(working, id, placed); !added)
        return fail(added.error());
    auto outcome = guard.outcome({{std::string(tableOf<F>), id}});
    if (!outcome)
        return fail(outcome.error());
    if (outcome->refusal)
        return fail(outcome->refusal->fault);
    const Replay after = replayOf(**record, working.shared(), today);
    return LedgerPreview{before.now, after.now, newFindings(before, after)};
}

} // namespace

Result<LedgerPreview> Desk::preview(const Fact& fact) const {
    Cellar working = *inside_->cellar;
    if (auto shared = working.loadShared(); !shared)
        return fail(shared.error());
    if (auto checked = std::visit([](const auto& f) { return checkFields(f); }, fact); !checked)
        return fail(checked.error());
    return std::visit(
        [&]<class F>(const F& f) -> Result<LedgerPreview> {
            if constexpr (perVessel<F>) {
                auto record = working.vessel(f.vessel);
                if (!record)
                    return fail(record.error());
                const Replay before = replayOf(**record, working.shared(), today());
                LedgerGuard guard(working, today());
                constexpr book::RowId asNewest = 1LL << 40;
                return previewIn<F>(working, asNewest, f, nullptr, guard, before, today());
            } else {
                return badInput("/kind", say("desk.no_preview"), say("desk.no_preview.remedy"));
            }
        },
        fact);
}

Result<LedgerPreview> Desk::preview(const std::string& table, std::int64_t id, const Fact& fact) const {
    Cellar working = *inside_->cellar;
    if (auto shared = working.loadShared(); !shared)
        return fail(shared.error());
    if (auto checked = std::visit([](const auto& f) { return checkFields(f); }, fact); !checked)
        return fail(checked.error());
    return withTable(table, [&]<class F>(std::type_identity<F>) -> Result<LedgerPreview> {
        const F* replacement = std::get_if<F>(&fact);
        if constexpr (perVessel<F>) {
            if (!replacement)
                return badInput("/kind", say("desk.kind_differs"), say("desk.kind_differs.remedy"));
            auto record = working.vessel(replacement->vessel);
            auto touched = inside_->touchedBy<F>(working, table, id);
            if (!record || !touched)
                return fail(!record ? record.error() : touched.error());
            const Replay before = replayOf(**record, working.shared(), today());
            LedgerGuard guard(working, today());
            const auto old = takeOut<F>(*inside_->book, working, guard, *touched, table, id);
            if (!old)
                return fail(old.error());
            return previewIn(working, id, *replacement, &*old, guard, before, today());
        } else {
            return badInput("/kind", say("desk.no_preview"), say("desk.no_preview.remedy"));
        }
    });
}

} // namespace staveline::desk
