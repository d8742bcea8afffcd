// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/lot_waits.h"

#include "finishing/fruit.h"

#include <algorithm>
#include <cmath>

namespace staveline::desk {

namespace {

namespace waiting = constants::finishing;

Day after(Day day, double days) {
    return day + std::chrono::days{static_cast<int>(days)};
}

LotWait wait(LotWork work, Day on, Day today) {
    const int days = daysBetween(today, on);
    const std::string when = days < 0 ? "overdue" : days == 0 ? "today" : "in";
    return {work, on, days,
            say("desk.lot.wait." + std::string(wordOf(work)) + "." + when)
                .with("days", Days{std::abs(static_cast<double>(days))})};
}

/// The last fruit, as long as nobody looked at the beer after its time.
std::optional<Day> fruitReady(const LotView& lot, const LotBeers& beers) {
    std::optional<Day> ready;
    for (const auto& [id, addition] : beers.facts().additions)
        if (addition.lot == lot.name && addition.what == facts::Added::fruit && addition.on <= beers.today())
            ready = std::max(ready, std::optional(after(addition.on, waiting::contactDays)));
    for (const auto& [id, reading] : beers.facts().readings)
        if (ready && reading.lot == lot.name && reading.on >= *ready && reading.on <= beers.today())
            return {};
    return ready;
}

} // namespace

bool neverToldOf(const LotView& lot, Day today) {
    const bool drawnAlone =
        std::all_of(lot.lines.begin(), lot.lines.end(), [](const LotLine& line) { return line.table == "draw_off"; });
    return drawnAlone && !lot.lines.empty() && daysBetween(lot.lines.back().on, today) > waiting::untoldDays;
}

std::vector<LotWait> waitsOf(const LotView& lot, const finishing::BeerKnown& beer, const LotBeers& beers) {
    std::vector<LotWait> waits;
    const Day today = beers.today();
    if (lot.stage == LotStage::ageing) {
        if (const auto ready = fruitReady(lot, beers))
            waits.push_back(wait(LotWork::tasteFruit, *ready, today));
        const auto gravity = gravityNow(beer);
        const Day last = gravity ? gravity->on : beer.lastMove.value_or(lot.since);
        if (const auto proof = proofOf(beer); proof.whole())
            waits.push_back(wait(LotWork::bottle, *proof.until, today));
        else
            waits.push_back(wait(LotWork::testGravity, after(last, waiting::nextGravity), today));
    }
    for (const PackageView& package : lot.packages)
        if (package.left > 0 && !package.firstOpened)
            waits.push_back(wait(LotWork::openFirst, after(package.on, waiting::firstOpened), today));
    std::stable_sort(waits.begin(), waits.end(), [](const auto& a, const auto& b) { return a.on < b.on; });
    return waits;
}

} // namespace staveline::desk
