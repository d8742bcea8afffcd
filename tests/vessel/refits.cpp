// SPDX-License-Identifier: GPL-3.0-or-later
// A vessel that changes: capacity and evaporation are those in force at each time.
#include "vessel/ledger_support.h"

using namespace staveline;
using namespace staveline::vessel;

namespace {

constexpr Day newYear = std::chrono::year{2025} / 1 / 1;

LedgerEntry at(std::int64_t id, EntryKind kind, int day, double litres) {
    LedgerEntry entry;
    entry.id = id;
    entry.kind = kind;
    entry.on = newYear + std::chrono::days{day};
    entry.rank = traitsOf(kind).rank;
    entry.volume = Litres{litres};
    return entry;
}

} // namespace

TEST_CASE("evaporation is a share of the capacity at each time", "[ledger][refit]") {
    const std::vector<LedgerEntry> entries = {at(1, EntryKind::opening, 0, 200), at(2, EntryKind::reading, 99, 0),
                                              at(3, EntryKind::reading, 100, 0), at(4, EntryKind::reading, 101, 0)};
    const double perDay = 225 * .1 / daysPerYear;
    const VesselShape small{Litres{225}, Share{.1}}, large{Litres{450}, Share{.1}}, tight{Litres{450}, Share{0}};
    const ShapeHistory shapes(small,
                              {{newYear + std::chrono::days{100}, large}, {newYear + std::chrono::days{110}, tight}});
    const Replay replayed = replay(entries, shapes, newYear + std::chrono::days{500});
    CHECK(replayed.after[1].volume.l == Approx(200 - 99 * perDay));
    CHECK(replayed.after[2].volume.l == Approx(200 - 100 * perDay)); // it changes in the morning
    CHECK(replayed.after[3].volume.l == Approx(200 - 102 * perDay));
    CHECK(replayed.now.volume.l == Approx(200 - 120 * perDay)); // changes between the entries count too
    CHECK(replayNow(entries, shapes, newYear + std::chrono::days{500}).now.volume == replayed.now.volume);
}

TEST_CASE("room is that of the capacity at the time, and a finding says how much was possible", "[ledger][refit]") {
    const std::vector<LedgerEntry> entries = {at(1, EntryKind::opening, 0, 100), at(2, EntryKind::topUp, 10, 50),
                                              at(3, EntryKind::topUp, 30, 50), at(4, EntryKind::drawOff, 40, 300)};
    const ShapeHistory shapes({Litres{120}, Share{0}}, {{newYear + std::chrono::days{20}, {Litres{220}, Share{0}}}});
    const Replay replayed = replay(entries, shapes, newYear + std::chrono::days{50});
    REQUIRE(replayed.findings.size() == 2);
    CHECK(replayed.findings[0].entry == 2);
    CHECK(replayed.findings[0].kind == FindingKind::overFull);
    CHECK(replayed.findings[0].possible.l == Approx(20));
    CHECK(replayed.findings[0].beyond.l == Approx(30));
    CHECK(replayed.after[2].volume.l == Approx(170));
    CHECK(replayed.findings[1].kind == FindingKind::drawnMore);
    CHECK(replayed.findings[1].on == newYear + std::chrono::days{40});
    CHECK(replayed.findings[1].possible.l == Approx(170));
    CHECK(replayed.findings[1].beyond.l == Approx(130));
}
