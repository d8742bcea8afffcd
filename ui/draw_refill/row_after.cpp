// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/draw_refill/row_after.h"
#include "desk/ledger.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace staveline::ui {
namespace {

auto said(const LedgerLine& line) {
    return std::tie(line.on, line.kind, line.text, line.measured, line.note);
}

/// What went to another vessel has no table: it is news there.
int newsIn(const LedgerModel& now, const std::vector<LedgerLine>& before) {
    std::map<std::pair<std::string, std::int64_t>, const LedgerLine*> known;
    for (const LedgerLine& line : before)
        known[{line.table, line.id}] = &line;
    for (int row = 0; row < now.rowCount(); ++row) {
        const LedgerLine& line = *now.at(row);
        const auto old = known.find({line.table, line.id});
        if (!line.table.empty() && (old == known.end() || said(*old->second) != said(line)))
            return row;
    }
    return -1;
}

} // namespace

int rowAfter(const LedgerPlace& before, const LedgerModel& now, bool toNews) {
    if (const int news = toNews ? newsIn(now, before.lines) : -1; news >= 0)
        return news;
    if (before.row < 0)
        return -1;
    const LedgerLine& selected = before.lines[before.lines.size() - 1 - static_cast<std::size_t>(before.row)];
    const int same = now.rowOf(selected.id, selected.table);
    return same >= 0 ? same : std::min(before.row, now.rowCount() - 1);
}

} // namespace staveline::ui
