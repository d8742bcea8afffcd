// SPDX-License-Identifier: GPL-3.0-or-later
// What was found damaged since the book was opened. Private to the book.
#pragma once

#include "book/book.h"

#include <algorithm>

namespace staveline::book {

class Health {
public:
    /// Each place once.
    void report(Damage damage) {
        const auto same = [&](const Damage& d) { return d.table == damage.table && d.row == damage.row; };
        if (std::none_of(damages_.begin(), damages_.end(), same))
            damages_.push_back(std::move(damage));
    }
    void reportRow(const std::string& table, RowId row) {
        report({table, row, say("book.damage.digest").with("table", table).with("row", row)});
    }
    [[nodiscard]] bool sound() const { return damages_.empty(); }
    [[nodiscard]] const std::vector<Damage>& damages() const { return damages_; }

private:
    std::vector<Damage> damages_;
};

} // namespace staveline::book
