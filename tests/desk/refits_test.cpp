// SPDX-License-Identifier: GPL-3.0-or-later
// What a vessel becomes counts from its day on; what was before stays as it was.
#include "desk/support.h"

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::testing;

namespace {

/// Looked at every ten days around 1 December: evaporation alone moves the level.
struct RefitFixture : DeskFixture {
    RefitFixture() {
        record(R"([{"kind": "vessel", "name": "Plover", "capacity_l": 225, "evaporation_per_year": 0.1},
                   {"kind": "opening", "vessel": "Plover", "on": "2025-11-11", "volume_l": 150, "age_years": 1,
                    "ta_g_l": 6, "ph": 3.3},
                   {"kind": "reading", "vessel": "Plover", "on": "2025-11-21", "ph": 3.31},
                   {"kind": "reading", "vessel": "Plover", "on": "2025-12-01", "ph": 3.32},
                   {"kind": "reading", "vessel": "Plover", "on": "2025-12-11", "ph": 3.33}])");
    }
    [[nodiscard]] std::vector<double> levels() const {
        std::vector<double> litres;
        const auto ledger = desk->ledger("Plover");
        for (const auto& line : ledger->lines)
            litres.push_back(line.volumeAfter.l);
        litres.push_back(desk->vessel("Plover")->now.volume.l);
        return litres;
    }
    /// Lost in each of the three spells of ten days.
    [[nodiscard]] std::vector<double> losses() const {
        const auto at = levels();
        return {at[0] - at[1], at[1] - at[2], at[2] - at[3]};
    }
    [[nodiscard]] double acidity() const { return desk->estimates("Plover")->model[Dimension::acidity].mean; }
    static constexpr double tenDays = 225 * .1 * 10 / daysPerYear;
};

} // namespace

TEST_CASE_METHOD(RefitFixture, "a larger vessel evaporates more from its day on, and not before", "[desk][refit]") {
    const auto before = levels();
    CHECK(losses()[2] == Approx(tenDays));
    record(R"({"kind": "vessel_edit", "vessel": "Plover", "capacity_l": 450, "on": "2025-12-01"})");
    CHECK(desk->vessel("Plover")->facts.capacity.l == 450);
    CHECK(desk->vessels()->front().capacity.l == 450);
    CHECK(levels()[2] == before[2]);
    CHECK(losses()[1] == Approx(tenDays)); // the day before
    CHECK(losses()[2] == Approx(2 * tenDays));
    const auto other = *Desk::open(desk->path(), [this] { return now; });
    CHECK(other->vessel("Plover")->facts == desk->vessel("Plover")->facts);
    CHECK(other->vessel("Plover")->now.volume == desk->vessel("Plover")->now.volume);
    CHECK(other->check()->sound());
    REQUIRE(desk->undo());
    CHECK(levels() == before);
    CHECK(desk->vessels()->front().capacity.l == 225);
    REQUIRE(desk->redo());
    CHECK(losses()[2] == Approx(2 * tenDays));
}

TEST_CASE_METHOD(RefitFixture, "without a day a change counts from today", "[desk][refit]") {
    const auto before = levels();
    const double sour = acidity();
    record(R"({"kind": "vessel_edit", "vessel": "Plover", "capacity_l": 2250, "temperature_c": 25, "material": "steel",
               "evaporation_per_year": 0.3})");
    CHECK(levels() == before);
    CHECK(acidity() == sour);
    CHECK(desk->vessel("Plover")->facts.material == Material::steel);
    now += std::chrono::days{10};
    CHECK(before.back() - desk->vessel("Plover")->now.volume.l == Approx(2250 * .3 * 10 / daysPerYear));
}

TEST_CASE_METHOD(RefitFixture, "the cellar's warmth counts from its day on in the model too", "[desk][refit]") {
    const double cool = acidity();
    record(R"({"kind": "vessel_edit", "vessel": "Plover", "temperature_c": 26, "on": "2026-01-01"})");
    const double late = acidity();
    REQUIRE(desk->undo());
    record(R"({"kind": "vessel_edit", "vessel": "Plover", "temperature_c": 26, "on": "2025-11-12"})");
    CHECK(std::abs(late - cool) > .001);
    CHECK(std::abs(acidity() - cool) > std::abs(late - cool));
}

TEST_CASE_METHOD(RefitFixture, "the last word before a day is in force on it, whenever it was said", "[desk][refit]") {
    record(R"({"kind": "vessel_edit", "vessel": "Plover", "evaporation_per_year": 0.4, "on": "2025-12-01"})");
    record(R"({"kind": "vessel_edit", "vessel": "Plover", "evaporation_per_year": 0.2, "on": "2025-11-21"})");
    CHECK(losses()[0] == Approx(tenDays));
    CHECK(losses()[1] == Approx(2 * tenDays));
    CHECK(losses()[2] == Approx(4 * tenDays));
    CHECK(desk->vessel("Plover")->facts.evaporationPerYear == Share{.4});
    record(R"({"kind": "vessel_edit", "vessel": "Plover", "clear": ["evaporation_per_year"], "on": "2025-12-02"})");
    CHECK_FALSE(desk->vessel("Plover")->facts.evaporationPerYear);
}

TEST_CASE_METHOD(RefitFixture, "a change can be moved to another day and taken out", "[desk][refit][amend]") {
    const auto before = levels();
    record(R"({"kind": "refit", "vessel": "Plover", "capacity_l": 450, "on": "2025-12-01"})");
    auto refit = std::get<RefitFact>(*desk->fact("refit", 1));
    refit.on = day(2025, 11, 21);
    REQUIRE(desk->amend("refit", 1, refit));
    CHECK(losses()[1] == Approx(2 * tenDays));
    CHECK(desk->vessels()->front().capacity.l == 450);
    REQUIRE(desk->remove("refit", 1));
    CHECK(levels() == before);
    CHECK(desk->vessels()->front().capacity.l == 225);
    REQUIRE(desk->undo());
    CHECK(losses()[1] == Approx(2 * tenDays));
}

TEST_CASE_METHOD(RefitFixture, "a vessel becomes no smaller than what was in it then or came later",
                 "[desk][refit][bad]") {
    const auto smaller = [](const std::string& litres, const std::string& on) {
        return R"({"kind": "vessel_edit", "vessel": "Plover", "capacity_l": )" + litres + R"(, "on": ")" + on + "\"}";
    };
    CHECK(refused(smaller("100", "2025-12-01")).cause.key == "desk.capacity_below_held");
    CHECK(refused(smaller("500", "2026-03-03")).cause.key == "desk.future");
    record(R"([{"kind": "draw_off", "vessel": "Plover", "on": "2025-12-20", "volume_l": 100},
               {"kind": "refill", "vessel": "Plover", "on": "2026-01-20", "volume_l": 150}])");
    const Fault later = refused(smaller("60", "2025-12-20"));
    CHECK(render(later.cause).starts_with("The refill of 20 Jan 2026 brought 150.0 L, and Plover would have had room"));
    record(smaller("210", "2025-12-20"));
}

TEST_CASE_METHOD(RefitFixture, "a vessel that became smaller is filled to what it holds now", "[desk][refit]") {
    record(R"([{"kind": "refill", "vessel": "Plover", "on": "2025-12-15", "volume_l": 60},
               {"kind": "draw_off", "vessel": "Plover", "on": "2026-02-20", "volume_l": 140},
               {"kind": "refit", "vessel": "Plover", "on": "2026-02-21", "capacity_l": 100}])");
    const double held = desk->vessel("Plover")->now.volume.l;
    CHECK(desk->brewPlan("Plover")->intoVessel.l == Approx(100 - held).margin(.5));
    record(R"([{"kind": "dip", "vessel": "Plover", "on": "2026-02-25", "volume_l": 0},
               {"kind": "refit", "vessel": "Plover", "on": "2026-02-26", "capacity_l": 50}])");
    REQUIRE(desk->remove("draw_off", 1)); // emptied, not drawn for a refill
    CHECK(desk->vessel("Plover")->toFill);
    CHECK(desk->brewPlan("Plover")->intoVessel.l == Approx(47.5));
}

TEST_CASE_METHOD(DeskFixture, "an entry of the past is judged by the vessel's size on its day", "[desk][refit][bad]") {
    record(R"([{"kind": "vessel", "name": "Keg", "capacity_l": 50, "material": "steel"},
               {"kind": "opening", "vessel": "Keg", "on": "2025-01-10", "volume_l": 45},
               {"kind": "refit", "vessel": "Keg", "on": "2025-04-01", "capacity_l": 1200}])");
    const Fault full = refused(R"({"kind": "top_up", "vessel": "Keg", "on": "2025-02-10", "volume_l": 40})");
    CHECK(full.path == "/volume_l");
    CHECK(full.cause.key == "desk.does_not_fit");
    record(R"({"kind": "draw_off", "vessel": "Keg", "on": "2025-02-10", "volume_l": 5})");
    CHECK(refused(R"({"kind": "draw_off", "vessel": "Keg", "on": "2025-04-10", "volume_l": 5})").cause.key ==
          "desk.thimble");
}

TEST_CASE_METHOD(DeskFixture, "a vessel that became smaller keeps what was measured in it before", "[desk][refit]") {
    record(R"([{"kind": "vessel", "name": "Plover", "capacity_l": 225, "material": "steel"},
               {"kind": "refit", "vessel": "Plover", "on": "2025-04-01", "capacity_l": 100},
               {"kind": "opening", "vessel": "Plover", "on": "2025-01-10", "volume_l": 216},
               {"kind": "dip", "vessel": "Plover", "on": "2025-02-10", "volume_l": 215},
               {"kind": "draw_off", "vessel": "Plover", "on": "2025-03-10", "volume_l": 150}])");
    DipFact dip = std::get<DipFact>(*desk->fact("dip", 1));
    dip.volume = Litres{214};
    REQUIRE(desk->amend("dip", 1, dip));
    const Fault above = refused(R"({"kind": "dip", "vessel": "Plover", "on": "2025-05-10", "volume_l": 110})");
    CHECK(above.path == "/volume_l");
    CHECK(render(above.cause) == "110.0 L is more than the vessel holds (100.0 L).");
    record(R"([{"kind": "vessel", "name": "Knot", "capacity_l": 225}])");
    const Fault opening = refused(R"({"kind": "opening", "vessel": "Knot", "on": "2025-05-10", "volume_l": 240})");
    CHECK(opening.path == "/volume_l");
    CHECK(render(opening.cause) == "240.0 L is more than the vessel holds (225.0 L).");
}

TEST_CASE_METHOD(RefitFixture, "a change of the cellar that is corrected is the brewer's word like a new one",
                 "[desk][refit][choice]") {
    record(R"({"kind": "refit", "vessel": "Plover", "on": "2026-02-20", "temperature_c": 14, "capacity_l": 225})");
    adopt([](advice::Setting& setting) { setting.temperature = Celsius{18}; });
    RefitFact refit = std::get<RefitFact>(*desk->fact("refit", 1));
    refit.capacity = Litres{230};
    REQUIRE(desk->amend("refit", 1, refit));
    CHECK(desk->setting("Plover")->temperature.c == 18); // it says nothing new of the temperature
    refit.temperature = Celsius{13};
    REQUIRE(desk->amend("refit", 1, refit));
    CHECK(desk->setting("Plover")->temperature.c == 13);
    REQUIRE(desk->undo());
    CHECK(desk->setting("Plover")->temperature.c == 18);
}

TEST_CASE_METHOD(RefitFixture, "an old change of the cellar does not overrule a plan made under a later one",
                 "[desk][refit][choice]") {
    record(R"({"kind": "refit", "vessel": "Plover", "on": "2026-02-20", "temperature_c": 14})");
    adopt([](advice::Setting& setting) { setting.temperature = Celsius{18}; });
    const auto choice = [&] { return *desk->lastChoice("Plover"); };
    REQUIRE_FALSE(choice().temperatureOverruled);
    record(R"({"kind": "refit", "vessel": "Plover", "on": "2026-01-01", "temperature_c": 20})");
    CHECK_FALSE(choice().temperatureOverruled);
    record(R"({"kind": "vessel_edit", "vessel": "Plover", "on": "2026-01-02", "temperature_c": 21})");
    CHECK_FALSE(choice().temperatureOverruled);
    CHECK(desk->setting("Plover")->temperature.c == 18);
    record(R"({"kind": "vessel_edit", "vessel": "Plover", "temperature_c": 15})");
    CHECK(choice().temperatureOverruled);
    CHECK(desk->setting("Plover")->temperature.c == 15);
}
