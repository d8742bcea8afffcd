// SPDX-License-Identifier: GPL-3.0-or-later
#include "finishing/lots.h"

#include "quantity/constants.h"

#include <algorithm>
#include <numeric>
#include <span>
#include <tuple>

namespace staveline::finishing {

Litres LotState::volume() const {
    return std::accumulate(parts.begin(), parts.end(), Litres{0},
                           [](Litres sum, const LotPart& part) { return sum + part.litres; });
}

namespace {

constexpr Litres roundedAway{constants::finishing::lotRounding};

void pour(const std::vector<LotPart>& from, LotState& into, Day on) {
    for (const LotPart& part : from) {
        const auto at = std::lower_bound(into.parts.begin(), into.parts.end(), part.entry,
                                         [](const LotPart& known, std::int64_t entry) { return known.entry < entry; });
        if (at != into.parts.end() && at->entry == part.entry)
            at->litres += part.litres;
        else
            into.parts.insert(at, part);
    }
    into.since = into.since.value_or(on);
    into.stirred = on;
}

/// An even part of all that is in it.
std::vector<LotPart> tap(LotState& from, Litres volume) {
    const Litres held = from.volume();
    const double share = held.l > 0 ? std::min(1.0, volume / held) : 0;
    std::vector<LotPart> taken = from.parts;
    if (share >= 1) {
        from.parts.clear();
        return taken;
    }
    for (std::size_t i = 0; i < taken.size(); ++i) {
        taken[i].litres = taken[i].litres * share;
        from.parts[i].litres -= taken[i].litres;
    }
    return taken;
}

class LotsWalk {
public:
    LotsReplay replay;

    void walkDay(std::span<const LotEntry> day) {
        std::vector<bool> early(day.size());
        for (std::size_t i = 0; i < day.size(); ++i)
            early[i] = day[i].flow == LotFlow::added && holds(day[i].lot);
        const auto pass = [&](auto isNow) {
            for (std::size_t i = 0; i < day.size(); ++i)
                if (isNow(day[i], early[i]))
                    apply(day[i]);
        };
        pass([](const LotEntry& e, bool) { return e.flow == LotFlow::drawn; });
        pass([](const LotEntry&, bool first) { return first; });
        pass([](const LotEntry& e, bool first) { return !first && e.flow != LotFlow::drawn; });
    }

private:
    [[nodiscard]] bool holds(const std::string& lot) const {
        const auto at = replay.lots.find(lot);
        return at != replay.lots.end() && !at->second.parts.empty();
    }
    void apply(const LotEntry& entry) {
        if (entry.flow == LotFlow::drawn)
            pour({{entry.id, entry.volume}}, replay.lots[entry.lot], entry.on);
        else if (const auto lot = replay.lots.find(entry.lot); lot != replay.lots.end())
            change(entry, lot->second);
        else
            replay.findings.push_back(
                {entry.id, LotFindingKind::notThere, entry.lot, entry.on, Litres{0}, entry.volume});
        if (const auto lot = replay.lots.find(entry.lot); lot != replay.lots.end())
            replay.after[entry.id] = lot->second.volume();
    }
    void change(const LotEntry& entry, LotState& lot) {
        if (entry.flow == LotFlow::noted)
            return;
        if (entry.flow == LotFlow::added) {
            pour(entry.volume.l > 0 ? std::vector<LotPart>{{entry.id, entry.volume}} : std::vector<LotPart>{}, lot,
                 entry.on);
            return;
        }
        const Litres held = lot.volume();
        if (entry.volume.l > (held + roundedAway).l)
            replay.findings.push_back({entry.id, LotFindingKind::tooMuch, entry.lot, entry.on, held, entry.volume});
        LotState& given = replay.given[entry.id];
        given = {tap(lot, entry.volume), lot.since, lot.stirred};
        if (entry.flow != LotFlow::moved || entry.to.empty() || given.parts.empty())
            return;
        LotState& to = replay.lots[entry.to];
        pour(given.parts, to, entry.on);
        replay.received[entry.id] = to.volume();
    }
};

} // namespace

LotsReplay replayLots(std::vector<LotEntry> entries, Day until) {
    std::erase_if(entries, [&](const LotEntry& entry) { return entry.on > until; });
    std::sort(entries.begin(), entries.end(), [](const LotEntry& a, const LotEntry& b) {
        return std::tie(a.on, a.flow, a.id) < std::tie(b.on, b.flow, b.id);
    });
    LotsWalk walk;
    for (auto first = entries.begin(); first != entries.end();) {
        const auto last =
            std::find_if(first, entries.end(), [&](const LotEntry& entry) { return entry.on != first->on; });
        walk.walkDay(std::span(first, last));
        first = last;
    }
    return std::move(walk.replay);
}

} // namespace staveline::finishing
