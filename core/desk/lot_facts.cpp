// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/lot_facts.h"

#include "quantity/words.h"

#include <algorithm>

namespace staveline::desk {
namespace {

/// Only rows that name a lot are worth keeping of the lists of vessels.
template <class F>
Result<void> loadLotList(const book::Book& book, const facts::Names& names,
                         const std::set<std::pair<std::string_view, book::RowId>>& without, Facts<F>& to) {
    const auto rows = book.rows(std::string(facts::tableOf<F>));
    if (!rows)
        return fail(rows.error());
    for (const auto& row : *rows)
        if (!without.contains({facts::tableOf<F>, row.id}))
            if (F fact = facts::fromRow<F>(row, names); touchesLots(fact))
                to.push_back({row.id, std::move(fact)});
    return {};
}

/// Calls `then` with each name that beer is put under, and the day.
template <class Then> void forEachBeginning(const LotFacts& lots, Then then) {
    for (const auto& [id, draw] : lots.draws)
        then(draw.lot, draw.on);
    for (const auto& [id, move] : lots.moves)
        if (!move.to.empty())
            then(move.to, move.on);
}

} // namespace

std::optional<Day> LotFacts::begins(std::string_view lot) const {
    std::optional<Day> first;
    forEachBeginning(*this, [&](const std::string& name, Day on) {
        if (name == lot)
            first = std::min(first.value_or(on), on);
    });
    return first;
}

const facts::PackagingFact* LotFacts::packaging(std::string_view name) const {
    const auto at = std::find_if(packagings.begin(), packagings.end(),
                                 [&](const auto& stored) { return stored.fact.name == name; });
    return at == packagings.end() ? nullptr : &at->fact;
}

std::string LotFacts::lotLike(std::string_view name) const {
    for (; drawsRead_ < draws.size(); ++drawsRead_)
        likes_.emplace(nameKey(draws[drawsRead_].fact.lot), draws[drawsRead_].fact.lot);
    for (; movesRead_ < moves.size(); ++movesRead_)
        if (const std::string& to = moves[movesRead_].fact.to; !to.empty())
            likes_.emplace(nameKey(to), to);
    const auto like = likes_.find(nameKey(name));
    if (like == likes_.end())
        return {};
    return begins(name) ? std::string(name) : like->second; // of an older book two may look alike
}

std::vector<std::string> LotFacts::names() const {
    std::set<std::string> all;
    forEachBeginning(*this, [&](const std::string& name, Day) { all.insert(name); });
    return {all.begin(), all.end()};
}

Result<const LotFacts*> Cellar::lots() {
    if (auto shared = loadShared(); !shared)
        return fail(shared.error());
    if (lots_)
        return lots_.get();
    auto all = std::make_shared<LotFacts>();
    const auto load = [&]<class... F>(Facts<F>&... lists) {
        Result<void> done;
        ((done = done ? loadLotList(*book_, shared_->names, takenOut_, lists) : done), ...);
        return done;
    };
    if (auto done = load(all->draws, all->refills, all->topUps, all->readings, all->additions, all->moves,
                         all->packagings, all->opened);
        !done)
        return fail(done.error());
    lots_ = std::move(all);
    ownLots_ = true;
    return lots_.get();
}

LotFacts* Cellar::changeLots() {
    if (lots_ && !ownLots_)
        lots_ = std::make_shared<LotFacts>(*lots_);
    ownLots_ = true;
    return lots_.get();
}

} // namespace staveline::desk
