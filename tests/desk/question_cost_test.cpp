// SPDX-License-Identifier: GPL-3.0-or-later
// A question about a vessel replays its ledger once, and not again until a fact or the day changes.
#include "desk/ledger_entries.h"
#include "desk/support.h"

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::testing;

namespace {

struct CostFixture : DeskFixture {
    CostFixture() {
        addPlover();
        record(R"([{"kind": "draw_off", "vessel": "Plover", "on": "2025-09-01", "volume_l": 60},
                   {"kind": "refill", "vessel": "Plover", "on": "2025-09-01", "volume_l": 60},
                   {"kind": "sitting", "vessel": "Plover", "on": "2026-02-20",
                    "scores": [{"taster": "Rook", "attribute": "TA1", "cold": 6, "cellar": 6}]}])");
    }
    template <class Question> std::int64_t cost(Question question) {
        const auto before = ledgersReplayed();
        question();
        return ledgersReplayed() - before;
    }
    std::int64_t costOfAdvice() {
        return cost([&] { REQUIRE(desk->adviceJob({"Plover", {}, {}})); });
    }
    std::int64_t costOfVessel() {
        return cost([&] { REQUIRE(desk->vessel("Plover")); });
    }
};

} // namespace

TEST_CASE_METHOD(CostFixture, "a question replays the ledger of its vessel once", "[desk][cost]") {
    CHECK(costOfAdvice() == 1);
    CHECK(costOfVessel() == 0);
    CHECK(costOfAdvice() == 0);
    CHECK(cost([&] {
              REQUIRE(desk->drawDay("Plover"));
              REQUIRE(desk->brewPlan("Plover"));
              REQUIRE(desk->history("Plover"));
              REQUIRE(desk->ledger("Plover"));
          }) == 0);
}

TEST_CASE_METHOD(CostFixture, "a fact or another day makes the ledger be replayed anew", "[desk][cost]") {
    REQUIRE(costOfVessel() == 1);
    record(R"({"kind": "draw_off", "vessel": "Plover", "on": "2026-03-01", "volume_l": 20})");
    CHECK(costOfVessel() == 1);
    const auto held = desk->vessel("Plover")->now.volume;
    REQUIRE(desk->undo());
    CHECK(costOfVessel() == 1);
    CHECK(desk->vessel("Plover")->now.volume > held);
    now += std::chrono::days{30};
    CHECK(costOfVessel() == 1);
    CHECK(desk->vessel("Plover")->now.on == now);
}

TEST_CASE_METHOD(CostFixture, "what another vessel's question leaves behind is not taken for this one's",
                 "[desk][cost]") {
    record(R"([{"kind": "vessel", "name": "Knot", "capacity_l": 100, "material": "steel"},
               {"kind": "opening", "vessel": "Knot", "on": "2025-06-01", "volume_l": 90}])");
    CHECK(desk->vessel("Plover")->name == "Plover");
    CHECK(desk->vessel("Knot")->name == "Knot");
    CHECK(desk->vessel("Plover")->name == "Plover");
}
