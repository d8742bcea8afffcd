// SPDX-License-Identifier: GPL-3.0-or-later
// What is recorded of a vessel's culture acts in its chemistry.
#include "desk/support.h"

#include <fmt/format.h>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::testing;

namespace {

/// Casks opened on 2025-01-10 whose culture is as given.
struct CultureFixture : DeskFixture {
    void open(const std::string& name, const std::string& culture) {
        record(fmt::format(R"([{{"kind": "vessel", "name": "{0}", "capacity_l": 225, "material": "oak used"}},
                               {{"kind": "culture", "vessel": "{0}", "on": "2025-01-10", {1}}},
                               {{"kind": "opening", "vessel": "{0}", "on": "2025-01-10", "volume_l": 216,
                                 "years_running": 4}}])",
                           name, culture));
    }
    void refill(const std::string& name, const std::string& on, const std::string& more = "") {
        record(fmt::format(R"([{{"kind": "draw_off", "vessel": "{0}", "on": "{1}", "volume_l": 75}},
                               {{"kind": "refill", "vessel": "{0}", "on": "{1}", "volume_l": 75{2}}}])",
                           name, on, more));
    }
    double model(const std::string& name, Dimension d) { return desk->estimates(name)->model[d].mean; }
    double funk(const std::string& name) { return model(name, Dimension::funk); }
};

} // namespace

TEST_CASE_METHOD(CultureFixture, "no Brettanomyces, no funk from it, refill after refill", "[desk][culture]") {
    open("Plover", R"("brettanomyces": "none")");
    open("Knot", R"("brettanomyces": "established")");
    CHECK(funk("Plover") < 1);
    CHECK(funk("Knot") > 4);
    refill("Plover", "2025-06-01");
    refill("Plover", "2026-01-01");
    CHECK(funk("Plover") < 1);
}

TEST_CASE_METHOD(CultureFixture, "young Brettanomyces starts at the opening and grows", "[desk][culture]") {
    open("Plover", R"("brettanomyces": "young")");
    open("Knot", R"("brettanomyces": "established")");
    now = day(2025, 1, 20);
    CHECK(funk("Plover") < 1);
    now = day(2026, 3, 2);
    CHECK(funk("Plover") > 2);
    CHECK(funk("Plover") < funk("Knot"));
}

TEST_CASE_METHOD(CultureFixture, "Brettanomyces comes with the day it is said to be there", "[desk][culture]") {
    open("Plover", R"("brettanomyces": "none")");
    record(R"({"kind": "culture", "vessel": "Plover", "on": "2025-04-01", "brettanomyces": "young"})");
    now = day(2025, 3, 31);
    CHECK(funk("Plover") < 1);
    now = day(2026, 3, 2);
    CHECK(funk("Plover") > 2);
}

TEST_CASE_METHOD(CultureFixture, "beer out of a vessel with Brettanomyces brings it along",
                 "[desk][culture][transfer]") {
    open("Plover", R"("brettanomyces": "none")");
    open("Knot", R"("brettanomyces": "established")");
    open("Dunlin", R"("brettanomyces": "none")");
    refill("Plover", "2025-02-01", R"(, "from": "Knot")");
    refill("Dunlin", "2025-02-01");
    CHECK(funk("Dunlin") < 1);
    CHECK(funk("Plover") > funk("Knot") - 1.5); // more than the third that was funky already
}

TEST_CASE_METHOD(CultureFixture, "a cask that loses water grows sourer than one that does not", "[desk][culture]") {
    open("Plover", R"("brettanomyces": "established")");
    open("Knot", R"("brettanomyces": "established")");
    record(R"([{"kind": "vessel_edit", "vessel": "Plover", "on": "2020-01-01", "evaporation_per_year": 0.12},
               {"kind": "vessel_edit", "vessel": "Knot", "on": "2020-01-01", "evaporation_per_year": 0}])");
    CHECK(model("Plover", Dimension::acidity) > model("Knot", Dimension::acidity) + .5);
}

TEST_CASE_METHOD(CultureFixture, "diastatic yeast in the vessel goes on opening dextrin", "[desk][culture]") {
    open("Plover", R"("brettanomyces": "none", "diastatic": true)");
    open("Knot", R"("brettanomyces": "none")");
    CHECK(model("Plover", Dimension::acidity) > model("Knot", Dimension::acidity) + 1);
    CHECK(model("Plover", Dimension::body) < model("Knot", Dimension::body));
}

TEST_CASE_METHOD(CultureFixture, "a culture more tolerant of hops than the model knows is not untaught by hops",
                 "[desk][culture]") {
    open("Plover", R"("brettanomyces": "established", "hop_tolerance_ibu": 100)");
    open("Knot", R"("brettanomyces": "established", "hop_tolerance_ibu": 45)");
    for (const char* name : {"Plover", "Knot"})
        record(fmt::format(R"({{"kind": "base_recipe", "vessel": "{}", "on": "2025-01-10", "original_gravity_p": 12,
                                "bitterness_ibu": 60, "grist": [{{"grain": "pilsner", "share": 1}}],
                                "mash": [{{"temperature_c": 66, "minutes": 60}}], "yeast": "ale_clean"}})",
                           name));
    CHECK(model("Plover", Dimension::acidity) > model("Knot", Dimension::acidity) + .1);
}

TEST_CASE_METHOD(CultureFixture, "what is said of the culture today does not change its past", "[desk][culture]") {
    open("Plover", R"("brettanomyces": "none", "hop_tolerance_ibu": 10)");
    refill("Plover", "2025-09-01");
    const auto before = desk->estimates("Plover")->model;
    record(R"({"kind": "culture", "vessel": "Plover", "on": "2026-03-02", "brettanomyces": "none",
               "diastatic": true, "hop_tolerance_ibu": 60})");
    for (const Dimension d : allDimensions)
        CHECK(std::abs(model("Plover", d) - before[d].mean) < .1);
    now = day(2026, 9, 2);
    open("Knot", R"("brettanomyces": "none", "hop_tolerance_ibu": 10)");
    refill("Knot", "2025-09-01");
    CHECK(model("Plover", Dimension::acidity) > model("Knot", Dimension::acidity) + .2); // it acts from then on
}

TEST_CASE_METHOD(CultureFixture, "a refill brewed with diastatic yeast brings its enzyme", "[desk][culture]") {
    for (const char* name : {"Plover", "Knot"})
        open(name, R"("brettanomyces": "none")");
    // Equal beer going in, but for what lives in it: the final gravity measured says how far the yeast had come.
    for (const auto& [brew, yeast] : {std::pair{"Brew 1", "diastatic_clean"}, std::pair{"Brew 2", "ale_clean"}})
        record(fmt::format(R"({{"kind": "brew", "name": "{}", "on": "2025-05-20", "original_gravity_p": 12,
                                "bitterness_ibu": 5, "grist": [{{"grain": "pilsner", "share": 1}}],
                                "mash": [{{"temperature_c": 66, "minutes": 60}}], "yeast": "{}",
                                "measured_final_gravity_sg": 1.006}})",
                           brew, yeast));
    refill("Plover", "2025-06-01", R"(, "brew": "Brew 1")");
    refill("Knot", "2025-06-01", R"(, "brew": "Brew 2")");
    CHECK(model("Plover", Dimension::acidity) > model("Knot", Dimension::acidity) + .2);
}

TEST_CASE_METHOD(CultureFixture, "strong beer, in the vessel or to come, is said to sour later and less",
                 "[desk][culture]") {
    open("Plover", R"("brettanomyces": "established")");
    const auto brewFrom = [&](const char* on, double plato) {
        record(fmt::format(R"({{"kind": "base_recipe", "vessel": "Plover", "on": "{}", "original_gravity_p": {},
                                "bitterness_ibu": 10, "grist": [{{"grain": "pilsner", "share": 1}}],
                                "mash": [{{"temperature_c": 66, "minutes": 60}}], "yeast": "ale_clean"}})",
                           on, plato));
    };
    const auto says = [&](std::string_view key) {
        const auto plan = desk->brewPlan("Plover");
        const auto draft = desk->draft("Plover", *desk->setting("Plover"), desk->kit());
        REQUIRE(plan);
        REQUIRE(draft);
        CHECK(plan->cautions == draft->plan.cautions);
        return std::any_of(plan->cautions.begin(), plan->cautions.end(), [&](auto& m) { return m.key == key; });
    };
    brewFrom("2025-01-10", 12);
    CHECK_FALSE(says("caution.refill.strongBeer"));
    CHECK_FALSE(says("caution.refill.strongVessel"));
    brewFrom("2025-01-11", 20);
    CHECK(says("caution.refill.strongBeer"));
    CHECK_FALSE(says("caution.refill.strongVessel")); // it was run on ordinary beer
    record(R"({"kind": "brew", "name": "Brew 1", "on": "2025-05-20", "original_gravity_p": 20, "bitterness_ibu": 5,
               "grist": [{"grain": "pilsner", "share": 1}], "mash": [{"temperature_c": 66, "minutes": 60}],
               "yeast": "ale_clean"})");
    record(R"([{"kind": "draw_off", "vessel": "Plover", "on": "2025-06-01", "volume_l": 200},
               {"kind": "refill", "vessel": "Plover", "on": "2025-06-01", "volume_l": 200, "brew": "Brew 1"}])");
    brewFrom("2025-06-02", 12);
    CHECK(says("caution.refill.strongVessel"));
}
