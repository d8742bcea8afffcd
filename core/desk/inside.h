// SPDX-License-Identifier: GPL-3.0-or-later
// The desk's own: the open book, the cache of its facts and how both change together.
#pragma once

#include "desk/brew_stock.h"
#include "desk/cellar.h"
#include "desk/coming_refill.h"
#include "desk/current_vessel.h"
#include "desk/desk.h"
#include "desk/edit_scope.h"
#include "desk/ledger_entries.h"
#include "desk/settings.h"

namespace staveline::desk {

/// Meaning, beyond fields and ranges: known malts, possible volumes, days in order.
[[nodiscard]] Result<void> checkMeaning(const facts::Fact& fact, Cellar& cellar, Day today);

struct Desk::Inside {
    struct Written {
        std::vector<book::RowKey> rows;
        std::vector<VesselNote> findings;
    };
    using WriteBody = std::function<Result<Written>(Cellar&, book::Writer&)>;

    std::unique_ptr<book::Book> book;
    Clock clock;
    DisplayUnits units; ///< of what is put in words and stored
    std::vector<std::function<void()>> observers;
    int batches = 0;     ///< that live
    bool untold = false; ///< something changed since the first of them began
    std::unique_ptr<Cellar> cellar;

    /// As it stands today. Unknown name: fault at "/vessel".
    [[nodiscard]] Result<std::shared_ptr<const CurrentVessel>> current(const facts::VesselName& name) const {
        return currentVessel(*cellar, name, clock());
    }

    /// One transaction on a working copy, which becomes the cache; a head moved by another program is reloaded and
    /// tried once more.
    Result<Recorded> write(const book::EditLabel& label, const WriteBody& body, bool readAgain = false);
    /// The vessels a stored fact belongs to, and those its replacement will belong to.
    template <class F>
    Result<std::set<book::RowId>> touchedBy(Cellar& working, const std::string& table, book::RowId id,
                                            const F* replacement = nullptr) const;
    template <class F>
    [[nodiscard]] Result<EditScope> scopeOf(const std::string& table, book::RowId id,
                                            const F* replacement = nullptr) const;
    /// Drops what an edit touched.
    void forget(const EditScope& scope);
    /// After the book took a step back or forth.
    Result<Recorded> travelled(Result<book::EditInfo> edit);
    void tell();
    [[nodiscard]] Message wordsOf(const book::Damage& damage) const;
    [[nodiscard]] std::vector<book::Damage> worded(std::vector<book::Damage> damages) const;
};

} // namespace staveline::desk
