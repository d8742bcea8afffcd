// SPDX-License-Identifier: GPL-3.0-or-later
// A published mean age: L. M. Garshol, "The solera paradox", Larsblog, 24 December 2014,
// https://www.garshol.priv.no/blog/312.html. The Swedish hundred-year beer: half the cask is taken every second year
// and replaced by fresh beer; what is bottled is 4.0 years old on average.
#include "support/catch.h"
#include "vessel/ledger.h"

using namespace staveline;
using namespace staveline::vessel;

TEST_CASE("the hundred-year beer is four years old (Garshol 2014)") {
    const Day first{std::chrono::year(1900) / 1 / 1};
    std::vector<LedgerEntry> entries;
    const auto add = [&](EntryKind kind, int years, double litres) {
        LedgerEntry entry;
        entry.id = static_cast<std::int64_t>(entries.size());
        entry.kind = kind;
        entry.on = Day{(std::chrono::year(1900) + std::chrono::years(years)) / 1 / 1};
        entry.volume = {litres};
        entries.push_back(entry);
    };
    add(EntryKind::refill, 0, 200);
    for (int years = 2; years <= 100; years += 2) {
        add(EntryKind::drawOff, years, 100);
        add(EntryKind::refill, years, 100);
    }
    const Day bottled{std::chrono::year(2002) / 1 / 1};
    const auto now = replay(entries, {Litres{200}, Share{0}}, bottled).now;
    CHECK(now.meanAge.d / daysPerYear == Approx(4.0).margin(.005)); // civil years are not all 365.25 d long
    CHECK(daysBetween(first, bottled) / daysPerYear == Approx(102).margin(.01));
    // his point: a hundred years on, next to nothing is old
    CHECK(olderThan(now, {50 * daysPerYear}).of1 < 1e-6);
    CHECK(olderThan(now, {3 * daysPerYear}).of1 == Approx(.5).margin(1e-9));
}
