// SPDX-License-Identifier: GPL-3.0-or-later
// The litres of a brew balance over the vessels it fed.
#include "desk/measured_brew.h"
#include "desk/support.h"

#include <fmt/format.h>

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::testing;

namespace {

constexpr double giving = 97.5; ///< L for a vessel, of 100 L in the fermenter of this kit

struct StockFixture : DeskFixture {
    StockFixture() {
        addPlover();
        record(R"([{"kind": "equipment", "on": "2025-01-01", "name": "kit", "fermenter_loss_share": 0.02,
                    "transfer_loss_l": 0.5},
                   {"kind": "vessel", "name": "Knot", "capacity_l": 225, "material": "steel"},
                   {"kind": "opening", "vessel": "Knot", "on": "2025-06-01", "volume_l": 120},
                   {"kind": "draw_off", "vessel": "Plover", "on": "2026-02-01", "volume_l": 120}])");
    }
    void brew(const std::string& name, const std::string& on, const std::string& vessel = "",
              const std::string& more = R"(, "into_fermenter_l": 100)") {
        record(brewJson(name, on, vessel, more));
    }
    static std::string brewJson(const std::string& name, const std::string& on, const std::string& vessel,
                                const std::string& more) {
        return fmt::format(R"({{"kind": "brew", "name": "{}", "vessel": "{}", "on": "{}",
            "grist": [{{"grain": "pilsner", "share": 1}}], "mash": [{{"temperature_c": 66, "minutes": 60}}],
            "original_gravity_p": 12, "bitterness_ibu": 8, "yeast": "ale_clean"{}}})",
                           name, vessel, on, more);
    }
    static std::string pour(const std::string& kind, const std::string& vessel, double litres, const std::string& on,
                            const std::string& brew = "Brew 1") {
        return fmt::format(R"({{"kind": "{}", "vessel": "{}", "on": "{}", "volume_l": {}, "brew": "{}"}})", kind,
                           vessel, on, litres, brew);
    }
    [[nodiscard]] std::vector<BrewStock> stock() const {
        auto stock = desk->brewsToPour("Plover");
        REQUIRE(stock);
        return *stock;
    }
};

} // namespace

TEST_CASE_METHOD(StockFixture, "what a vessel took of a brew is no longer there", "[desk][brew_stock]") {
    brew("Brew 1", "2026-01-10");
    CHECK(stock()[0].left->l == Approx(giving));
    record(pour("refill", "Plover", 60, "2026-02-01"));
    CHECK(stock()[0].left->l == Approx(giving - 60));
    record(pour("top_up", "Knot", 20, "2026-02-02"));
    CHECK(stock()[0].left->l == Approx(giving - 80));
}

TEST_CASE_METHOD(StockFixture, "more than is left of a brew is refused, whichever vessel took the rest",
                 "[desk][brew_stock][bad]") {
    brew("Brew 1", "2026-01-10");
    record(pour("refill", "Knot", 70, "2026-02-01"));
    const Fault fault = refused(pour("refill", "Plover", 60, "2026-02-02"));
    CHECK(fault.path == "/volume_l");
    CHECK(render(fault.cause) == "60.0 L is more than is left of Brew 1 (27.5 L).");
    CHECK(render(fault.remedy).find("Take at most 27.5 L") == 0);
    CHECK(refused(pour("top_up", "Plover", 60, "2026-02-02")).path == "/volume_l");
    record(pour("refill", "Plover", 27.5, "2026-02-02"));
    CHECK(render(refused(pour("top_up", "Plover", 5, "2026-02-03")).cause) == "Nothing is left of Brew 1.");
}

TEST_CASE_METHOD(StockFixture, "two gauges need not agree to the litre", "[desk][brew_stock]") {
    brew("Brew 1", "2026-01-10");
    CHECK(refused(pour("refill", "Plover", 101.5, "2026-02-01")).path == "/volume_l");
    record(pour("refill", "Plover", 100, "2026-02-01"));
    CHECK(stock()[0].left->l == 0);
}

TEST_CASE_METHOD(StockFixture, "a brew whose litres nobody recorded is not limited", "[desk][brew_stock]") {
    brew("Brew 1", "2026-01-10", "", "");
    record(pour("refill", "Plover", 110, "2026-02-01"));
    record(pour("refill", "Knot", 100, "2026-02-01"));
    CHECK_FALSE(stock()[0].left);
}

TEST_CASE_METHOD(StockFixture, "beer is poured after it is brewed", "[desk][brew_stock][bad]") {
    brew("Brew 1", "2026-02-20");
    const Fault fault = refused(pour("refill", "Plover", 60, "2026-02-19"));
    CHECK(fault.path == "/brew");
    CHECK(render(fault.cause) == "Brew 1 was brewed on 20 Feb 2026, after 19 Feb 2026.");
    record(pour("refill", "Plover", 60, "2026-02-20"));
}

TEST_CASE_METHOD(StockFixture, "facts of one file count in their order", "[desk][brew_stock]") {
    const std::string made = brewJson("Brew 1", "2026-01-10", "Plover", R"(, "into_fermenter_l": 100)");
    const std::string first = pour("refill", "Plover", 60, "2026-02-01"),
                      second = pour("top_up", "Knot", 60, "2026-02-01");
    CHECK(refused("[" + made + "," + first + "," + second + "]").path == "/2/volume_l");
    record("[" + made + "," + first + "," + pour("top_up", "Knot", 30, "2026-02-01") + "]");
    CHECK(stock()[0].left->l == Approx(giving - 90));
}

TEST_CASE_METHOD(StockFixture, "an amended refill is measured without its old litres", "[desk][brew_stock]") {
    brew("Brew 1", "2026-01-10");
    record(pour("refill", "Plover", 70, "2026-02-01"));
    record(pour("top_up", "Knot", 20, "2026-02-01"));
    const auto ledger = desk->ledger("Plover");
    const auto line = std::find_if(ledger->lines.begin(), ledger->lines.end(),
                                   [](const LedgerLine& each) { return each.table == "refill"; });
    REQUIRE(line != ledger->lines.end());
    const std::int64_t id = line->id;
    RefillFact fact = std::get<RefillFact>(*desk->fact("refill", id));
    fact.volume = Litres{77};
    CHECK(desk->preview("refill", id, Fact{fact}));
    REQUIRE(desk->amend("refill", id, Fact{fact}));
    CHECK(stock()[0].left->l == Approx(giving - 97));
    fact.volume = Litres{90};
    CHECK(desk->preview("refill", id, Fact{fact}).error().path == "/volume_l");
    CHECK(desk->amend("refill", id, Fact{fact}).error().path == "/volume_l");
    CHECK(desk->preview(Fact{RefillFact{"Plover", now, Litres{40}, "Brew 1", "", {}, ""}}).error().path == "/volume_l");
}

TEST_CASE_METHOD(StockFixture, "an undone refill gives its litres back", "[desk][brew_stock]") {
    brew("Brew 1", "2026-01-10");
    record(pour("refill", "Plover", 70, "2026-02-01"));
    REQUIRE(desk->undo());
    CHECK(stock()[0].left->l == Approx(giving));
}

TEST_CASE_METHOD(StockFixture, "the brew made for this refill stands first, then the newest", "[desk][brew_stock]") {
    brew("Brew 1", "2026-01-10");
    brew("Brew 2", "2026-02-10", "Plover");
    brew("Brew 3", "2026-02-20");
    brew("Brew 4", "2026-02-20");
    std::vector<std::string> names;
    for (const auto& each : stock())
        names.push_back(each.brew.name);
    CHECK(names == std::vector<std::string>{"Brew 2", "Brew 4", "Brew 3", "Brew 1"});
    CHECK(stock()[0].forThisRefill);
    CHECK_FALSE(stock()[1].forThisRefill);
    CHECK(desk->brews().at(1).name == "Brew 2");
    CHECK(desk->fact("brew", stock()[0].id));
}

TEST_CASE_METHOD(StockFixture, "a brew gives what the kit of its day leaves of it", "[desk][brew_stock]") {
    brew("Brew 1", "2026-01-10");
    record(R"({"kind": "equipment", "on": "2026-02-15", "name": "kit", "fermenter_loss_share": 0.2})");
    CHECK(stock()[0].left->l == Approx(giving));
    CHECK(desk->brewsToPour("Nobody").error().path == "/vessel");
}
