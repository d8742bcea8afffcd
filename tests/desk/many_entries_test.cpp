// SPDX-License-Identifier: GPL-3.0-or-later
// A file of many entries costs as much for each of them as a short one: work is counted, not time.
#include "desk/ledger_entries.h"
#include "desk/support.h"

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::testing;

namespace {

const Day begun = day(1990, 1, 1);

struct ManyFixture : DeskFixture {
    ManyFixture() {
        record(R"([{"kind": "vessel", "name": "Plover", "capacity_l": 225, "material": "steel"},
                   {"kind": "opening", "vessel": "Plover", "on": "1990-01-01", "volume_l": 200}])");
    }
    /// Dips and readings in turn, `every` of them on one day.
    [[nodiscard]] static std::vector<Fact> entries(int count, int every) {
        std::vector<Fact> facts;
        for (int i = 0; i < count; ++i) {
            const Day on = begun + std::chrono::days{i / every};
            ReadingFact reading{.vessel = "Plover", .on = on, .measured = {}, .note = std::to_string(i)};
            reading.measured.ph = Ph{3.2};
            if (i % 2 == 0)
                facts.emplace_back(DipFact{
                    .vessel = "Plover", .on = on, .volume = Litres{199 - i % 7 * .1}, .note = std::to_string(i)});
            else
                facts.emplace_back(reading);
        }
        return facts;
    }
    std::int64_t cost(const std::vector<Fact>& facts) {
        const auto before = entriesReplayed();
        const auto done = desk->record(facts);
        if (!done)
            FAIL(done.error().path << ": " << render(done.error().cause));
        return entriesReplayed() - before;
    }
};

} // namespace

TEST_CASE_METHOD(ManyFixture, "twice the entries in a file are twice the work", "[desk][cost]") {
    const auto half = cost(entries(1000, 2));
    REQUIRE(desk->undo());
    const auto whole = cost(entries(2000, 2));
    CHECK(half > 1000);
    CHECK(whole <= 2 * half);
}

TEST_CASE_METHOD(ManyFixture, "ten thousand entries in one file, a hundred of them on a day", "[desk][cost]") {
    std::size_t told = 0, all = 0;
    const auto recorded = desk->record(entries(10000, 100), [&](std::size_t done, std::size_t of) {
        CHECK(done == told + 1);
        told = done;
        all = of;
    });
    REQUIRE(recorded);
    CHECK(told == 10000);
    CHECK(all == 10000);
    CHECK(desk->ledger("Plover")->lines.size() == 10001);
    CHECK(desk->ledger("Plover")->lines.back().on == begun + std::chrono::days{99});
    CHECK(refused(R"({"kind": "reading", "vessel": "Plover", "on": "1990-01-01", "ph": 3.2, "note": "1"})").cause.key ==
          "desk.on_record");
    REQUIRE(desk->undo());
    CHECK(desk->ledger("Plover")->lines.size() == 1);
}

TEST_CASE_METHOD(ManyFixture, "the same entry twice in a long file is found, however late", "[desk][bad][cost]") {
    auto facts = entries(3000, 1000);
    facts.push_back(facts[17]);
    const auto done = desk->record(facts);
    REQUIRE_FALSE(done);
    CHECK(done.error().path == "/3000");
    CHECK(done.error().cause.key == "desk.on_record");
}
