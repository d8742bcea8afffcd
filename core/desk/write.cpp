// SPDX-License-Identifier: GPL-3.0-or-later
// Recording, amending, removing: validated against a working copy, then written in one transaction.
#include "desk/inside.h"

#include <algorithm>
#include <set>

namespace staveline::desk {

using facts::BrewFact;
using facts::checkFields;
using facts::Fact;
using facts::perVessel;
using facts::tableOf;
using facts::VesselFact;
using vessel::Replay;

namespace {

/// One of factWords::clearable.
void clear(VesselFact& vessel, std::string_view field) {
    if (field == "evaporation_per_year")
        vessel.evaporationPerYear.reset();
    else if (field == "oxygen_mg_l_year")
        vessel.oxygenPerYear.reset();
    else
        vessel.cultureHeldBack.reset();
}

/// Facts with a recipe: what it names is kept in the book.
template <class F>
inline constexpr bool bringsIngredients =
    std::is_same_v<F, facts::BaseRecipeFact> || std::is_same_v<F, BrewFact> || std::is_same_v<F, facts::ChoiceFact>;

/// Applies facts one after the other, to the book and to the working copy that later facts of the batch are checked by.
class Recorder {
public:
    Recorder(Cellar& cellar, book::Writer& writer, Day today) : cellar_(cellar), writer_(writer), today_(today) {}

    /// Of the facts, in their order.
    [[nodiscard]] const std::vector<book::RowKey>& rows() const { return rows_; }

    Result<void> apply(const Fact& fact) {
        if (auto ok = checkMeaning(fact, cellar_, today_); !ok)
            return ok;
        return std::visit([&](const auto& f) { return store(f); }, fact);
    }
    /// Built-in ingredients are copied on first use, so that a later data table does not rewrite history.
    template <class F> Result<void> keepIngredientsOf(const F& fact) {
        if constexpr (requires { fact.recipe; })
            return keepIngredients(fact.recipe);
        if constexpr (std::is_same_v<F, facts::ChoiceFact>)
            if (fact.forecast)
                return keepIngredients(fact.forecast->recipe);
        return {};
    }

private:
    Result<void> store(const facts::VesselEditFact& f) {
        if (auto done = overruleChoices(f); !done)
            return done;
        return changeVessel(f.vessel, [&](VesselFact& v) {
            const auto take = [](auto& to, const auto& from) {
                if (from)
                    to = *from;
            };
            take(v.name, f.name);
            take(v.shape, f.shape);
            take(v.material, f.material);
            take(v.note, f.note);
            take(v.capacity, f.capacity);
            take(v.temperature, f.temperature);
            take(v.canChangeTemperature, f.canChangeTemperature);
            take(v.interval, f.interval);
            take(v.sampleBefore, f.sampleBefore);
            take(v.drawShare, f.drawShare);
            take(v.drawMayMove, f.drawMayMove);
            take(v.intervalMayMove, f.intervalMayMove);
            if (f.evaporationPerYear)
                v.evaporationPerYear = f.evaporationPerYear;
            if (f.cultureHeldBack)
                v.cultureHeldBack = f.cultureHeldBack;
            if (f.oxygenPerYear)
                v.oxygenPerYear = f.oxygenPerYear;
            for (const std::string& field : f.clear)
                clear(v, field);
        });
    }
    /// What is said of the vessel itself holds from now on, whatever was chosen for a refill before. The mark is kept
    /// with the choice, so that taking the edit back takes it off again.
    Result<void> overruleChoices(const facts::VesselEditFact& f) {
        if (!f.drawShare && !f.interval && !f.temperature)
            return {};
        auto record = cellar_.vessel(f.vessel);
        if (!record)
            return fail(record.error());
        for (Stored<facts::ChoiceFact>& stored : (*record)->of<facts::ChoiceFact>()) {
            facts::ChoiceFact& choice = stored.fact;
            choice.drawOverruled |= f.drawShare.has_value();
            choice.intervalOverruled |= f.interval.has_value();
            choice.temperatureOverruled |= f.temperature.has_value();
            auto row = toRow(choice, cellar_.shared().names);
            if (!row)
                return fail(row.error());
            if (auto done = writer_.update(std::string(tableOf<facts::ChoiceFact>), stored.id, *row); !done)
                return done;
        }
        return {};
    }
    Result<void> store(const facts::RetireFact& f) {
        return changeVessel(f.vessel, [&](VesselFact& v) {
            v.retired = f.on;
            v.retiredReason = f.reason;
        });
    }
    Result<void> store(const facts::SittingUseFact& f) {
        auto record = cellar_.vessel(f.vessel);
        if (!record)
            return fail(record.error());
        auto& sittings = (*record)->of<facts::SittingFact>();
        int which = 0;
        const auto at = std::find_if(sittings.begin(), sittings.end(), [&](const auto& stored) {
            return stored.fact.sitting.on == f.sitting && ++which == f.which;
        });
        at->fact.learn = f.learn;
        at->fact.learnReason = f.reason;
        auto row = toRow(at->fact, cellar_.shared().names);
        if (!row)
            return fail(row.error());
        rows_.push_back({std::string(tableOf<facts::SittingFact>), at->id});
        return writer_.update(rows_.back().table, at->id, *row);
    }
    Result<void> store(const VesselFact& f) {
        auto id = insert(f);
        if (!id)
            return fail(id.error());
        cellar_.changeShared().names.addVessel(*id, f.name);
        cellar_.changeShared().vessels.push_back({*id, f});
        return {};
    }
    Result<void> store(const BrewFact& f) {
        if (auto kept = keepIngredientsOf(f); !kept)
            return kept;
        auto id = insert(f);
        if (!id)
            return fail(id.error());
        cellar_.changeShared().names.addBrew(*id, f.name);
        cellar_.changeShared().brews.push_back({*id, f});
        return {};
    }
    Result<void> store(const facts::EquipmentFact& f) { return storeShared(f, cellar_.changeShared().equipment); }
    Result<void> store(const facts::AvailabilityFact& f) { return storeShared(f, cellar_.changeShared().availability); }
    template <class F> static void insertByDay(Facts<F>& list, Stored<F> stored) {
        const auto at = std::upper_bound(list.begin(), list.end(), stored, [](const auto& a, const auto& b) {
            return VesselRecord::dayOf(a.fact) < VesselRecord::dayOf(b.fact);
        });
        list.insert(at, std::move(stored));
    }
    template <class F> Result<void> storeShared(const F& f, Facts<F>& list) {
        auto id = insert(f);
        if (!id)
            return fail(id.error());
        insertByDay(list, {*id, f});
        return {};
    }
    template <class F>
    requires perVessel<F> Result<void> store(const F& f) {
        if (auto kept = keepIngredientsOf(f); !kept)
            return kept;
        auto record = cellar_.vessel(f.vessel);
        if (!record)
            return fail(record.error());
        auto id = insert(f);
        if (!id)
            return fail(id.error());
        insertByDay((*record)->template of<F>(), {*id, f});
        if constexpr (requires { f.from; })
            if (!f.from.empty())
                return storeElsewhere(*id, f);
        return {};
    }
    Result<void> storeElsewhere(book::RowId id, const facts::RefillFact& f) {
        return atSource(f.from, [&](VesselRecord& source) { source.refillsElsewhere.push_back({id, f}); });
    }
    Result<void> storeElsewhere(book::RowId id, const facts::TopUpFact& f) {
        return atSource(f.from, [&](VesselRecord& source) { source.topUpsElsewhere.push_back({id, f}); });
    }
    Result<void> atSource(const facts::VesselName& name, auto add) {
        auto source = cellar_.vessel(name);
        if (!source)
            return fail(source.error());
        add(**source);
        return {};
    }
    template <class F> Result<book::RowId> insert(const F& f) {
        auto row = toRow(f, cellar_.shared().names);
        if (!row)
            return fail(row.error());
        auto id = writer_.insert(std::string(tableOf<F>), *row);
        if (id && !facts::kindOf<F>.empty())
            rows_.push_back({std::string(tableOf<F>), *id});
        return id;
    }
    template <class Change> Result<void> changeVessel(const facts::VesselName& name, Change change) {
        auto record = cellar_.vessel(name);
        if (!record)
            return fail(record.error());
        VesselFact facts = (*record)->facts;
        change(facts);
        auto row = toRow(facts, cellar_.shared().names);
        if (!row)
            return fail(row.error());
        if (auto done = writer_.update("vessel", (*record)->id, *row); !done)
            return done;
        rows_.push_back({"vessel", (*record)->id});
        (*record)->facts = facts;
        for (auto& stored : cellar_.changeShared().vessels)
            if (stored.id == (*record)->id)
                stored.fact = facts;
        cellar_.changeShared().names.addVessel((*record)->id, facts.name);
        return {};
    }
    Result<void> keepIngredients(const brewing::Recipe& recipe) {
        for (const auto& part : recipe.grist)
            if (auto grain = cellar_.shared().pantry.grain(part.grain))
                if (auto done = keep(*grain); !done)
                    return done;
        if (recipe.sugarShare.of1 > 0)
            if (auto sugar = cellar_.shared().pantry.grain(recipe.sugar))
                if (auto done = keep(*sugar); !done)
                    return done;
        if (auto yeast = cellar_.shared().pantry.yeast(recipe.yeast))
            return keep(*yeast);
        return {};
    }
    template <class T> Result<void> keep(const T& ingredient) {
        if (cellar_.shared().kept.contains(ingredient.id))
            return {};
        auto id = insert(ingredient);
        if (!id)
            return fail(id.error());
        cellar_.changeShared().kept.insert(ingredient.id);
        return {};
    }

    Cellar& cellar_;
    book::Writer& writer_;
    Day today_;
    std::vector<book::RowKey> rows_;
};

template <class F> std::string subjectName(const F& f) {
    constexpr bool atVessel = requires {
        f.vessel;
    };
    if constexpr (atVessel && !std::is_same_v<F, BrewFact>)
        return f.vessel;
    else if constexpr (requires { f.name; })
        return f.name;
    else
        return {};
}

/// What the text of an edit is told by beside its kind: by the word of an event, by what is wanted of a sitting, by a
/// permission that is changed alone.
template <class F> std::string tellingPart(const F&) {
    return {};
}
std::string tellingPart(const facts::EventFact& f) {
    return "." + std::string(wordOf(f.what));
}
std::string tellingPart(const facts::SittingUseFact& f) {
    return f.learn ? ".learn" : ".leave";
}
std::string tellingPart(const facts::VesselEditFact& f) {
    facts::VesselEditFact draw, interval;
    draw.vessel = interval.vessel = f.vessel;
    draw.drawMayMove = f.drawMayMove;
    interval.intervalMayMove = f.intervalMayMove;
    if (f.drawMayMove && f == draw)
        return *f.drawMayMove ? ".draw_may_move" : ".draw_stays";
    if (f.intervalMayMove && f == interval)
        return *f.intervalMayMove ? ".interval_may_move" : ".interval_stays";
    return {};
}

std::string editText(const Fact& fact, const DisplayUnits& units) {
    return std::visit(
        [&]<class F>(const F& f) {
            const std::string key = "desk.edit." + std::string(facts::kindOf<F>) + tellingPart(f);
            Message message = say(key).with("name", subjectName(f));
            if constexpr (requires { f.volume; })
                message.arguments.push_back({"volume", f.volume, {}});
            return render(message, units);
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
    if constexpr (perVessel<F> && !requires { fact.from; }) {
        auto record = working.vessel(fact.vessel);
        if (record && vessels.contains((*record)->id)) {
            const auto before = [](const Stored<F>& a, const Stored<F>& b) {
                return std::pair(VesselRecord::dayOf(a.fact), a.id) < std::pair(VesselRecord::dayOf(b.fact), b.id);
            };
            auto& list = (*record)->template of<F>();
            const Stored<F> amended{id, fact};
            list.insert(std::lower_bound(list.begin(), list.end(), amended, before), amended);
            return;
        }
        if (record)
            working.drop((*record)->id);
    }
    forgetAfter(working, vessels, perVessel<F>);
}

template <class F> const book::TableSpec& specOf() {
    const auto& tables = facts::cellarSchema().tables;
    return *std::find_if(tables.begin(), tables.end(),
                         [](const book::TableSpec& table) { return table.name == tableOf<F>; });
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

} // namespace

Result<Recorded> Desk::record(const Fact& fact, const EditNote& note) {
    return recordNamed({fact}, note);
}

Result<Recorded> Desk::record(const std::vector<Fact>& given) {
    return recordNamed(given, {});
}

Result<Recorded> Desk::recordNamed(const std::vector<Fact>& given, const EditNote& note) {
    if (readOnly())
        return fail(readOnlyFault());
    if (given.empty())
        return badInput("", say("desk.no_facts"), say("desk.no_facts.remedy"));
    std::vector<Fact> facts = given;
    for (auto& fact : facts)
        if (auto* choice = std::get_if<facts::ChoiceFact>(&fact); choice && !choice->forecast) {
            auto made = promise(choice->vessel, choice->proposal, choice->on);
            if (!made)
                return fail(made.error());
            *choice = *made;
        }
    const bool single = facts.size() == 1;
    book::EditLabel label{single ? editText(facts.front(), inside_->units)
                                 : render(say("desk.edit.many").with("count", static_cast<std::int64_t>(facts.size()))),
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
    const auto body = [&](Cellar& working, book::Writer& writer) -> Result<Inside::Rows> {
        Recorder recorder(working, writer, today());
        for (std::size_t i = 0; i < facts.size(); ++i)
            if (auto done = recorder.apply(facts[i]); !done)
                return fail(single || ofStorage(done.error().kind) ? done.error()
                                                                   : under("/" + std::to_string(i), done.error()));
        return recorder.rows();
    };
    return inside_->write(label, body, readAgain);
}

Result<Recorded> Desk::Inside::write(const book::EditLabel& label, const WriteBody& body, bool readAgain) {
    for (int attempt = 0;; ++attempt) {
        if (auto shared = cellar->loadShared(); !shared)
            return fail(shared.error());
        auto working = std::make_unique<Cellar>(*cellar);
        Rows rows;
        auto done = book->commit(label, [&](book::Writer& writer) -> Result<void> {
            auto stored = body(*working, writer);
            if (!stored)
                return fail(stored.error());
            rows = *std::move(stored);
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
        return Recorded{label.text, std::move(rows)};
    }
}

Result<Fact> Desk::fact(const std::string& table, std::int64_t id) const {
    if (auto shared = inside_->cellar->loadShared(); !shared)
        return fail(shared.error());
    return withTable(table, [&]<class F>(std::type_identity<F>) -> Result<Fact> {
        return readStored<F>(*inside_->book, *inside_->cellar, table, id);
    });
}

Result<Recorded> Desk::amend(const std::string& table, std::int64_t id, const Fact& fact, const EditNote& note) {
    if (readOnly())
        return fail(readOnlyFault());
    if (auto checked = std::visit([](const auto& f) { return checkFields(f); }, fact); !checked)
        return fail(checked.error());
    const std::string what =
        note.text.empty() ? render(say("desk.edit.amend").with("what", editText(fact, inside_->units))) : note.text;
    return withTable(table, [&]<class F>(std::type_identity<F>) -> Result<Recorded> {
        const F* replacement = std::get_if<F>(&fact);
        if (!replacement)
            return badInput("/kind", say("desk.kind_differs"), say("desk.kind_differs.remedy"));
        auto scope = inside_->scopeOf<F>(table, id, replacement);
        if (!scope)
            return fail(scope.error());
        return inside_->write(
            {what, table, toText(*scope), note.mergeKey},
            [&](Cellar& working, book::Writer& writer) -> Result<Inside::Rows> {
                auto touched = inside_->touchedBy<F>(working, table, id, replacement);
                if (!touched)
                    return fail(touched.error());
                working.without<F>(*touched, id);
                if (auto ok = checkMeaning(fact, working, today()); !ok)
                    return fail(ok.error());
                if (auto kept = Recorder(working, writer, today()).keepIngredientsOf(*replacement); !kept)
                    return fail(kept.error());
                auto row = toRow(*replacement, working.shared().names);
                if (!row)
                    return fail(row.error());
                putBack(working, *touched, id, *replacement);
                if (auto done = writer.update(table, id, *row); !done)
                    return fail(done.error());
                return Inside::Rows{{table, id}};
            },
            !perVessel<F>);
    });
}

Result<Recorded> Desk::remove(const std::string& table, std::int64_t id, const EditNote& note) {
    if (readOnly())
        return fail(readOnlyFault());
    auto old = fact(table, id);
    if (!old)
        return fail(old.error());
    const std::string what =
        note.text.empty() ? render(say("desk.edit.remove").with("what", editText(*old, inside_->units))) : note.text;
    return withTable(table, [&]<class F>(std::type_identity<F>) -> Result<Recorded> {
        auto scope = inside_->scopeOf<F>(table, id);
        if (!scope)
            return fail(scope.error());
        return inside_->write(
            {what, table, toText(*scope), note.mergeKey},
            [&](Cellar& working, book::Writer& writer) -> Result<Inside::Rows> {
                auto touched = inside_->touchedBy<F>(working, table, id);
                if (!touched)
                    return fail(touched.error());
                forgetAfter(working, *touched, perVessel<F>);
                if (auto done = writer.remove(table, id); !done)
                    return fail(done.error());
                return Inside::Rows{};
            },
            !perVessel<F>);
    });
}

/// What to read again when a change in place is undone: the vessels it belongs to; everything for what all share.
template <class F>
Result<EditScope> Desk::Inside::scopeOf(const std::string& table, book::RowId id, const F* replacement) const {
    if constexpr (!perVessel<F> || requires(F f) { f.from; })
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
    if constexpr (perVessel<F>) {
        const auto takeOut = [&](Facts<F>& list) {
            std::erase_if(list, [&](const auto& stored) { return stored.id == row; });
        };
        for (auto vessel : vessels)
            if (auto record = vesselById(vessel)) {
                takeOut((*record)->of<F>());
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
    }
}

Result<Recorded> Desk::Inside::travelled(Result<book::EditInfo> edit) {
    if (!edit)
        return fail(edit.error());
    const EditScope scope = editScopeFrom(edit->label.subject);
    forget(scope);
    Recorded done{edit->label.text, std::move(edit->rows)};
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
    return edit ? edit->label.text : std::string();
}
std::string Desk::redoText() const {
    const auto edit = inside_->book->redoable();
    return edit ? edit->label.text : std::string();
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

/// `working` is without the fact that is replaced; `before` is how things stand.
template <class F> Result<LedgerPreview> previewIn(Cellar& working, const F& fact, const Replay& before, Day today) {
    if (auto ok = checkMeaning(Fact{fact}, working, today); !ok)
        return fail(ok.error());
    auto record = working.vessel(fact.vessel);
    if (!record)
        return fail(record.error());
    if (auto row = toRow(fact, working.shared().names); !row) // a brew that is not there
        return fail(row.error());
    constexpr book::RowId asNewest = 1LL << 40;
    (*record)->template of<F>().push_back({asNewest, fact});
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
                return previewIn(working, f, before, today());
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
            working.without<F>(*touched, id);
            return previewIn(working, *replacement, before, today());
        } else {
            return badInput("/kind", say("desk.no_preview"), say("desk.no_preview.remedy"));
        }
    });
}

} // namespace staveline::desk
