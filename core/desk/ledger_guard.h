// SPDX-License-Identifier: GPL-3.0-or-later
// What a change brings into the ledgers it touches, whatever its size: each is replayed once before and once after it,
// so that the cost of a file grows with its entries and not with their square.
#pragma once

#include "desk/cellar.h"
#include "desk/ledger_note.h"
#include "desk/lot_problems.h"
#include "vessel/ledger.h"

namespace staveline::desk {

class LedgerGuard {
public:
    LedgerGuard(Cellar& cellar, Day today) : cellar_(cellar), today_(today) {}

    /// Remembers what does not agree in a vessel's ledger. Before anything of it changes; again it does nothing.
    Result<void> watch(const facts::VesselName& vessel);
    Result<void> watch(book::RowId vessel);

    /// The same of all lots.
    Result<void> watchLots();

    struct Refusal {
        Fault fault;
        std::optional<std::size_t> row; ///< which of the changed rows is impossible; none: an entry beside them
    };
    struct Outcome {
        std::optional<Refusal> refusal;
        std::vector<VesselNote> notes; ///< that were not there before
    };
    /// After the change. A changed entry that cannot be is refused, and so is another one that could be before and
    /// cannot any more. What could not be before may stay as it is and be corrected step by step.
    [[nodiscard]] Result<Outcome> outcome(const std::vector<book::RowKey>& changed) const;
    /// After a change of many rows: those that cannot be by themselves, not because of one of the others.
    [[nodiscard]] Result<std::map<std::size_t, Fault>> roots(const std::vector<book::RowKey>& changed) const;

private:
    [[nodiscard]] Result<std::vector<LotProblem>> worseLots() const;
    using Findings = std::vector<vessel::LedgerFinding>;
    Cellar& cellar_;
    Day today_;
    std::map<book::RowId, Findings> before_;
    std::optional<std::vector<LotProblem>> lotsBefore_;
};

} // namespace staveline::desk
