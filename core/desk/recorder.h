// SPDX-License-Identifier: GPL-3.0-or-later
// Applies facts one after the other: to the book, and to the working copy that later facts of the batch are checked by.
#pragma once

#include "desk/cellar.h"
#include "desk/ledger_guard.h"
#include "desk/lot_facts.h"
#include "desk/turns.h"

#include <algorithm>
#include <functional>

namespace staveline::desk {

/// Facts with a recipe: what it names is kept in the book.
template <class F>
inline constexpr bool bringsIngredients = std::is_same_v<F, facts::BaseRecipeFact> ||
                                          std::is_same_v<F, facts::BrewFact> || std::is_same_v<F, facts::ChoiceFact>;

class Recorder {
public:
    Recorder(Cellar& cellar, book::Writer& writer, Day today)
        : cellar_(cellar), writer_(writer), today_(today), guard_(cellar, today), turns_(cellar) {}

    /// Of the facts, in their order.
    [[nodiscard]] const std::vector<book::RowKey>& rows() const { return rows_; }

    Result<void> apply(const facts::Fact& fact);
    /// The brewer's word on the temperature goes before what was chosen with a plan.
    Result<void> overruleBy(const facts::RefitFact& f);
    /// Of the ledgers they touch.
    [[nodiscard]] const LedgerGuard& guard() const { return guard_; }
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
    Result<void> store(const facts::VesselEditFact& f);
    Result<void> store(const facts::RefitFact& f);
    struct Overruled {
        bool draw, interval, temperature;
    };
    Result<void> overruleChoices(const facts::VesselName& vessel, Overruled what);
    /// Of a refit on record: none after it says another.
    [[nodiscard]] bool decidesTemperature(const facts::RefitFact& f);
    Result<book::RowId> addRefit(const facts::RefitFact& f);
    void stands(VesselRecord& record);
    Result<void> store(const facts::RetireFact& f);
    Result<void> store(const facts::BringBackFact& f);
    Result<void> store(const facts::SittingUseFact& f);
    Result<void> store(const facts::VesselFact& f);
    Result<void> store(const facts::BrewFact& f);
    Result<void> store(const facts::RoomFact& f);
    Result<void> store(const facts::EquipmentFact& f);
    Result<void> store(const facts::AvailabilityFact& f);
    template <class F>
    requires requires(const F& f) { f.like; }
    Result<void> store(const F& f);
    template <class F>
    requires facts::perVessel<F> Result<void> store(const F& f);
    Result<void> store(const facts::PackagingFact& f);
    template <class F>
    requires(mayTouchLots<F> && !facts::perVessel<F>) Result<void> store(const F& f);
    template <class F> Result<void> storeOfLot(const F& f);
    template <class F> Result<void> storeShared(const F& f, Facts<F>& list);
    template <class F> Result<book::RowId> insert(const F& f);
    template <class F> Result<book::RowId> insertBeside(const F& f);
    Result<void> changeVessel(const facts::VesselName& name, const std::function<void(facts::VesselFact&)>& change);
    Result<void> keepIngredients(const brewing::Recipe& recipe);
    template <class T> Result<void> keep(const T& ingredient);

    Cellar& cellar_;
    book::Writer& writer_;
    Day today_;
    LedgerGuard guard_;
    Turns turns_;
    std::vector<book::RowKey> rows_;
};

template <class F> void insertByDay(Facts<F>& list, Stored<F> stored) {
    const auto at = std::upper_bound(list.begin(), list.end(), stored,
                                     [](const auto& a, const auto& b) { return dayOf(a.fact) < dayOf(b.fact); });
    list.insert(at, std::move(stored));
}
/// A fact of one vessel into a working copy; in both ledgers when beer comes from another one.
template <class F> Result<void> addFact(Cellar& cellar, book::RowId id, const F& fact) {
    auto record = cellar.vessel(fact.vessel);
    if (!record)
        return fail(record.error());
    insertByDay((*record)->template of<F>(), {id, fact});
    (*record)->seen.add(fact);
    addToLots(cellar, id, fact);
    if constexpr (requires { fact.from; })
        if (!fact.from.empty()) {
            auto source = cellar.vessel(fact.from);
            if (!source)
                return fail(source.error());
            insertByDay((*source)->template elsewhere<F>(), {id, fact});
        }
    return {};
}
/// Before an entry is added, amended or removed: of the vessels it names.
Result<void> watchLedgersOf(LedgerGuard& guard, const facts::Fact& fact);

} // namespace staveline::desk
