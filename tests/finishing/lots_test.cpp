// SPDX-License-Identifier: GPL-3.0-or-later
// The ledger of drawn beer: over any history no litre appears or vanishes.
#include "finishing/lots.h"

#include "support/catch.h"
#include "support/property.h"

#include <algorithm>
#include <cmath>
#include <numeric>

using namespace staveline;
using namespace staveline::finishing;

namespace {

Day dayAt(int days) {
    return Day{std::chrono::year{2026} / 1 / 1} + std::chrono::days{days};
}

struct History {
    std::vector<LotEntry> entries;
    double in = 0;
};

History anyHistory() {
    const std::vector<std::string> names = {"A", "B", "C", "D"};
    const auto name = [&] { return names[*rc::gen::inRange<std::size_t>(0, names.size())]; };
    History history;
    const int count = *rc::gen::inRange(1, 40);
    for (int i = 0; i < count; ++i) {
        LotEntry entry;
        entry.id = i;
        entry.flow = static_cast<LotFlow>(*rc::gen::inRange(0, 6));
        entry.on = dayAt(*rc::gen::inRange(0, 12));
        entry.lot = name();
        if (entry.flow == LotFlow::moved && *rc::gen::arbitrary<bool>())
            entry.to = name();
        if (entry.flow != LotFlow::noted)
            entry.volume = Litres{*rc::gen::inRange(0, 500) / 10.0};
        history.entries.push_back(entry);
    }
    return history;
}

double held(const LotsReplay& replay) {
    return std::accumulate(replay.lots.begin(), replay.lots.end(), 0.0,
                           [](double sum, const auto& lot) { return sum + lot.second.volume().l; });
}

} // namespace

TEST_CASE("a lot is what its draws brought, and gives an even part of all of them", "[finishing][lots]") {
    const auto replay = replayLots({{1, LotFlow::drawn, dayAt(0), "A", "", Litres{30}},
                                    {2, LotFlow::drawn, dayAt(3), "A", "", Litres{10}},
                                    {3, LotFlow::moved, dayAt(4), "A", "B", Litres{8}},
                                    {4, LotFlow::added, dayAt(5), "B", "", Litres{2}},
                                    {5, LotFlow::packed, dayAt(6), "B", "", Litres{5}}});
    CHECK(replay.findings.empty());
    CHECK(replay.lots.at("A").volume().l == Approx(32));
    CHECK(replay.lots.at("A").since == dayAt(0));
    CHECK(replay.lots.at("A").stirred == dayAt(3));
    const LotState& bottled = replay.given.at(5);
    REQUIRE(bottled.parts.size() == 3);
    CHECK(bottled.parts[0].litres.l == Approx(3)); // 6 of 10 L
    CHECK(bottled.parts[1].litres.l == Approx(1));
    CHECK(bottled.parts[2].litres.l == Approx(1));
    CHECK(replay.lots.at("B").stirred == dayAt(5));
    CHECK(replay.after.at(5).l == Approx(5));
}

TEST_CASE("what goes into a lot of the morning goes in before anything leaves it that day", "[finishing][lots]") {
    const std::vector<LotEntry> entries = {{1, LotFlow::drawn, dayAt(0), "A", "", Litres{30}},
                                           {2, LotFlow::added, dayAt(1), "A", "", Litres{6}},
                                           {3, LotFlow::moved, dayAt(1), "A", "B", Litres{36}},
                                           {4, LotFlow::added, dayAt(1), "B", "", Litres{4}},
                                           {5, LotFlow::packed, dayAt(1), "B", "", Litres{40}}};
    const auto replay = replayLots(entries);
    CHECK(replay.findings.empty());
    CHECK(held(replay) == Approx(0).margin(1e-9));
    CHECK(held(replayLots(entries, dayAt(0))) == Approx(30));
}

TEST_CASE("what is not there cannot be taken", "[finishing][lots]") {
    const auto replay = replayLots({{1, LotFlow::drawn, dayAt(1), "A", "", Litres{30}},
                                    {2, LotFlow::noted, dayAt(0), "A", "", {}},
                                    {3, LotFlow::moved, dayAt(2), "A", "B", Litres{30.04}},
                                    {4, LotFlow::poured, dayAt(3), "B", "", Litres{31}}});
    REQUIRE(replay.findings.size() == 2);
    CHECK(replay.findings[0].kind == LotFindingKind::notThere);
    CHECK(replay.findings[0].entry == 2);
    CHECK(replay.findings[1].kind == LotFindingKind::tooMuch);
    CHECK(replay.findings[1].beyond().l == Approx(1));
    CHECK(held(replay) == 0);
}

TEST_CASE("no litre appears or vanishes over any history of lots", "[finishing][lots][property]") {
    CHECK_PROPERTY("litres in are litres held and litres given out of the cellar", [] {
        const auto history = anyHistory();
        const auto replay = replayLots(history.entries);
        double in = 0, out = 0;
        std::map<std::int64_t, double> byOrigin;
        const auto lost = [&](std::int64_t entry) {
            return std::any_of(replay.findings.begin(), replay.findings.end(), [&](const LotFinding& finding) {
                return finding.entry == entry && finding.kind == LotFindingKind::notThere;
            });
        };
        for (const LotEntry& entry : history.entries) {
            const bool enters = entry.flow == LotFlow::drawn || (entry.flow == LotFlow::added && !lost(entry.id));
            if (enters) {
                in += entry.volume.l;
                byOrigin[entry.id] += entry.volume.l;
            }
            const bool leaves = entry.flow == LotFlow::poured || entry.flow == LotFlow::packed ||
                                (entry.flow == LotFlow::moved && entry.to.empty());
            if (const auto given = replay.given.find(entry.id); leaves && given != replay.given.end()) {
                out += given->second.volume().l;
                RC_ASSERT(given->second.volume().l <= entry.volume.l + 1e-9);
                for (const LotPart& part : given->second.parts)
                    byOrigin[part.entry] -= part.litres.l;
            }
        }
        RC_ASSERT(std::abs(in - out - held(replay)) < 1e-6);
        for (const auto& [name, lot] : replay.lots)
            for (const LotPart& part : lot.parts) {
                RC_ASSERT(part.litres.l >= 0);
                byOrigin[part.entry] -= part.litres.l;
            }
        for (const auto& [entry, left] : byOrigin) // of each draw and addition too
            RC_ASSERT(std::abs(left) < 1e-6);
    });
}
