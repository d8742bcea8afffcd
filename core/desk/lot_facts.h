// SPDX-License-Identifier: GPL-3.0-or-later
// All that is recorded of drawn beer, from whatever vessel; loaded together, since lots join and split.
#pragma once

#include "desk/cellar.h"

namespace staveline::desk {

struct LotFacts {
    Facts<facts::DrawOffFact> draws;  ///< that name a lot
    Facts<facts::RefillFact> refills; ///< out of one
    Facts<facts::TopUpFact> topUps;
    Facts<facts::LotReadingFact> readings;
    Facts<facts::LotAdditionFact> additions;
    Facts<facts::LotMoveFact> moves;
    Facts<facts::PackagingFact> packagings;
    Facts<facts::OpenedFact> opened;

    template <class F> Facts<F>& of() {
        if constexpr (std::is_same_v<F, facts::DrawOffFact>)
            return draws;
        else if constexpr (std::is_same_v<F, facts::RefillFact>)
            return refills;
        else if constexpr (std::is_same_v<F, facts::TopUpFact>)
            return topUps;
        else if constexpr (std::is_same_v<F, facts::LotReadingFact>)
            return readings;
        else if constexpr (std::is_same_v<F, facts::LotAdditionFact>)
            return additions;
        else if constexpr (std::is_same_v<F, facts::LotMoveFact>)
            return moves;
        else if constexpr (std::is_same_v<F, facts::PackagingFact>)
            return packagings;
        else
            return opened;
    }
    template <class F> const Facts<F>& of() const { return const_cast<LotFacts*>(this)->of<F>(); }
    /// The first day on which something is put into a lot; none: there is no such lot.
    [[nodiscard]] std::optional<Day> begins(std::string_view lot) const;
    [[nodiscard]] const facts::PackagingFact* packaging(std::string_view name) const;
    /// The name in use that a reader cannot tell from this one; empty: none.
    [[nodiscard]] std::string lotLike(std::string_view name) const;
    [[nodiscard]] std::vector<std::string> names() const;
    void forgetNames() { likes_.clear(), drawsRead_ = movesRead_ = 0; } ///< after one was taken out

private:
    mutable std::map<std::string, std::string> likes_; ///< key -> name, of so many of each
    mutable std::size_t drawsRead_ = 0, movesRead_ = 0;
};

/// Facts that lots are made of, by their kind.
template <class F> inline constexpr bool mayTouchLots = requires(const F& f) {
    f.lot;
}
|| requires(const F& f) {
    f.packaging;
};
template <class F> [[nodiscard]] bool touchesLots(const F& fact) {
    if constexpr (!mayTouchLots<F>)
        return false;
    else if constexpr (facts::perVessel<F>)
        return !fact.lot.empty();
    else
        return true;
}

/// Into what was loaded already; what was not is read when it is asked for.
template <class F> void addToLots(Cellar& cellar, book::RowId id, const F& fact) {
    if constexpr (mayTouchLots<F>)
        if (touchesLots(fact))
            if (LotFacts* lots = cellar.changeLots())
                lots->template of<F>().push_back({id, fact});
}
template <class F> void takeFromLots(Cellar& cellar, book::RowId id) {
    if constexpr (mayTouchLots<F>)
        if (LotFacts* lots = cellar.changeLots()) {
            std::erase_if(lots->template of<F>(), [&](const auto& stored) { return stored.id == id; });
            lots->forgetNames();
        }
}

} // namespace staveline::desk
