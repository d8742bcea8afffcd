// SPDX-License-Identifier: GPL-3.0-or-later
// What speaks against a fact of drawn beer by itself and beside the names in use. That there is as much as it takes is
// judged by the ledger (desk/lot_problems.h).
#pragma once

#include "desk/lot_facts.h"

namespace staveline::desk {

/// A name under which beer is put: no vessel's, and not one that only looks like another lot's. Faults at `path`.
[[nodiscard]] Result<void> canBeLot(const std::string& name, const char* path, Cellar& cellar);
template <class F>
inline constexpr bool goesIntoLot = std::is_same_v<F, facts::LotAdditionFact> || std::is_same_v<F, facts::LotMoveFact>;
/// Empty: none, it leaves the cellar.
[[nodiscard]] inline const std::string& lotFilledBy(const facts::LotAdditionFact& fact) {
    return fact.lot;
}
[[nodiscard]] inline const std::string& lotFilledBy(const facts::LotMoveFact& fact) {
    return fact.to;
}
/// What is closed already cannot get anything more, and of one day nobody could say what came first: nothing was filled
/// from the lot on that day or after it. Fault at "/on".
[[nodiscard]] Result<void> canStillGoInto(const std::string& lot, Day on, Cellar& cellar);
/// A name for a vessel: no lot's. Fault at "/name".
[[nodiscard]] Result<void> isNoLot(const std::string& vessel, Cellar& cellar);
/// There is such a lot by that day. Faults at "/lot".
[[nodiscard]] Result<void> isLot(const std::string& lot, Day on, Cellar& cellar);

/// The very same is on record: most likely a file given twice.
template <class F> [[nodiscard]] Result<void> isNew(const F& fact, Cellar& cellar) {
    const auto lots = cellar.lots();
    if (!lots)
        return fail(lots.error());
    for (const auto& stored : (*lots)->template of<F>())
        if (stored.fact == fact)
            return badInput("", say("desk.lot.on_record").with("on", fact.on), say("desk.on_record.remedy"));
    return {};
}

[[nodiscard]] Result<void> canBe(const facts::LotReadingFact& fact, Cellar& cellar);
[[nodiscard]] Result<void> canBe(const facts::LotAdditionFact& fact, Cellar& cellar);
[[nodiscard]] Result<void> canBe(const facts::LotMoveFact& fact, Cellar& cellar);
[[nodiscard]] Result<void> canBe(const facts::PackagingFact& fact, Cellar& cellar);
[[nodiscard]] Result<void> canBe(const facts::OpenedFact& fact, Cellar& cellar);

} // namespace staveline::desk
