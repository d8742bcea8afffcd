// SPDX-License-Identifier: GPL-3.0-or-later
// What was weighed, measured and brewed: the efficiency of the day, kits of one vessel, and brews that cannot be.
#include "brewing/as_brewed.h"
#include "desk/measured_brew.h"
#include "desk/support.h"

#include <fmt/format.h>

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::testing;

namespace {

struct BrewDay : DeskFixture {
    BrewDay() {
        addPlover();
        record(R"({"kind": "equipment", "on": "2025-06-01", "name": "60 L kit", "mash_and_lauter_efficiency": 0.8,
                   "mash_tun_l": 60, "kettle_l": 70, "kettle_loss_l": 2})");
    }
    /// 34 L at 1.043 from these grains.
    static std::string brewed(const std::string& grist, const std::string& more = "") {
        return fmt::format(R"({{"kind": "brew", "name": "Brew 1", "vessel": "Plover", "on": "2026-02-20",
            "original_gravity_p": 12, "bitterness_ibu": 10, "grist": {0}, "mash": [{{"temperature_c": 66, "minutes": 60}}],
            "yeast": "ale_clean", "measured_original_gravity_sg": 1.043, "into_fermenter_l": 34{1}}})",
                           grist, more);
    }
    static inline const std::string weighed = R"([{"grain": "pilsner", "share": 0.75, "mass_kg": 5.10},
                                                  {"grain": "wheat_malt", "share": 0.25, "mass_kg": 3.41}])";
    [[nodiscard]] BrewFact brew() const { return desk->brews().back(); }
};

} // namespace

TEST_CASE_METHOD(BrewDay, "the kilograms weighed stay as they are, and the shares follow", "[desk][brewday]") {
    record(brewed(weighed));
    const auto& grist = brew().recipe.grist;
    CHECK(grist[0].mass == Kilograms{5.10});
    CHECK(grist[1].mass == Kilograms{3.41});
    CHECK(grist[0].share.of1 == Approx(5.10 / 8.51));
    const auto again = parseRecords(writeRecords({Fact{brew()}}));
    REQUIRE(again);
    CHECK(std::get<BrewFact>(again->front()) == brew());
    CHECK((*Desk::open(desk->path(), [this] { return now; }))->brews() == desk->brews());
    BrewFact corrected = brew();
    corrected.recipe.grist[0].mass = Kilograms{5.41};
    REQUIRE(desk->amend("brew", desk->brewsFor("Plover").front().id, Fact{corrected}));
    CHECK(brew().recipe.grist[0].share.of1 == Approx(5.41 / 8.82));
    CHECK(brew().recipe.grist[1].mass == Kilograms{3.41});
}

TEST_CASE_METHOD(BrewDay, "kilograms of some grains, or in a plan, are refused at their place",
                 "[desk][brewday][bad]") {
    CHECK(
        refused(
            brewed(R"([{"grain": "pilsner", "share": 0.75, "mass_kg": 5.1}, {"grain": "wheat_malt", "share": 0.25}])"))
            .path == "/grist/1/mass_kg");
    CHECK(
        refused(
            R"({"kind": "base_recipe", "vessel": "Plover", "on": "2026-02-20", "mash": [{"temperature_c": 66, "minutes": 60}],
                      "grist": [{"grain": "pilsner", "share": 1, "mass_kg": 5.1}]})")
            .path == "/grist/0/mass_kg");
    CHECK(refused(brewed(R"([{"grain": "pilsner", "share": 1, "mass_kg": -2}])")).path == "/grist/0/mass_kg");
}

TEST_CASE_METHOD(BrewDay, "weight, gravity and litres give the efficiency of the day", "[desk][brewday]") {
    record(brewed(weighed));
    const auto day = desk->efficiency(brew());
    REQUIRE(day);
    // Hand: 36 L at 1.043 hold 4.02 kg; 5.10 kg of Pilsner and 3.41 kg of wheat malt could give about 6.6 kg.
    CHECK(day->won.efficiency.of1 == Approx(.61).margin(.02));
    REQUIRE(day->offer);
    CHECK(day->offer->of1 == Approx(std::round(100 * day->won.efficiency.of1) / 100));
    const std::string words = render(day->words);
    CHECK(words.find(show(day->won.efficiency)) == 0);
    CHECK(words.find("\u00b1") != std::string::npos);
    CHECK(words.find("80 %") != std::string::npos);
}

TEST_CASE_METHOD(BrewDay, "what was not weighed or measured has no efficiency", "[desk][brewday]") {
    record(brewed(R"([{"grain": "pilsner", "share": 1}])"));
    CHECK_FALSE(desk->efficiency(brew()));
    BrewFact made = brew();
    made.recipe.grist[0].mass = Kilograms{8};
    CHECK(desk->efficiency(made));
    made.intoFermenter.reset();
    CHECK_FALSE(desk->efficiency(made));
    made.intoFermenter = Litres{34};
    made.originalGravity.reset();
    CHECK_FALSE(desk->efficiency(made));
}

TEST_CASE_METHOD(BrewDay, "more extract than there is in the grain is said and not offered", "[desk][brewday][bad]") {
    record(brewed(R"([{"grain": "pilsner", "share": 1, "mass_kg": 4}])"));
    const auto day = desk->efficiency(brew());
    REQUIRE(day);
    CHECK(day->won.efficiency > Share{1});
    CHECK_FALSE(day->offer);
    CHECK(day->words.key == "desk.brewed.efficiency.impossible");
}

TEST_CASE_METHOD(BrewDay, "a kit that takes the efficiency plans the grain that was needed, on its own day too",
                 "[desk][brewday]") {
    record(brewed(weighed));
    now = day(2026, 2, 20);
    const auto won = *desk->efficiency(brew());
    EquipmentFact kit = won.kit;
    kit.on = now;
    kit.equipment.efficiency = *won.offer;
    REQUIRE(desk->setToday(Fact{kit}, {"efficiency", ""}));
    CHECK_FALSE(desk->efficiency(brew())->offer);
    // Counted once: the brew agrees with the kit now, and shifts it no further.
    const auto plan = *desk->brewPlan("Plover");
    const auto own = desk->draft("Plover", desk->planned("Plover")->setting, kit);
    REQUIRE(own);
    CHECK(own->plan.gristMass.kg == Approx(plan.gristMass.kg));
    CHECK(std::none_of(plan.assumptions.begin(), plan.assumptions.end(),
                       [](const Message& said) { return said.key.starts_with("brewing.house.extract"); }));
}

TEST_CASE_METHOD(BrewDay, "a weighed brew shows what the kit wins, though its gravity came out as planned",
                 "[desk][brewday][house]") {
    const auto before = desk->brewPlan("Plover")->gristMass;
    record(R"({"kind": "brew", "name": "Brew 1", "vessel": "Plover", "on": "2026-02-20", "original_gravity_p": 12,
               "bitterness_ibu": 10, "grist": [{"grain": "pilsner", "share": 1, "mass_kg": 12}], "yeast": "ale_clean",
               "mash": [{"temperature_c": 66, "minutes": 60}], "measured_original_gravity_sg": 1.0484,
               "into_fermenter_l": 50})");
    CHECK(desk->efficiency(brew())->won.efficiency < Share{.75});
    CHECK(desk->brewPlan("Plover")->gristMass > before);
}

TEST_CASE_METHOD(BrewDay, "what was weighed for one brew is in no plan after it", "[desk][brewday]") {
    record(brewed(weighed));
    record(R"([{"kind": "draw_off", "vessel": "Plover", "on": "2026-03-01", "volume_l": 31},
               {"kind": "refill", "vessel": "Plover", "on": "2026-03-01", "volume_l": 31, "brew": "Brew 1"}])");
    const advice::Setting alone = *desk->leftAlone("Plover");
    for (const auto& part : alone.recipe.grist)
        CHECK_FALSE(part.mass);
    const auto job = desk->adviceJob({"Plover", {}, {}, false});
    REQUIRE(job);
    CHECK(desk->adopt(*job, job->input.base));
}

TEST_CASE_METHOD(BrewDay, "a draft as weighed has the kilograms weighed and water to match", "[desk][brewday]") {
    record(brewed(weighed));
    advice::Setting setting = desk->planned("Plover")->setting;
    setting.recipe = brew().recipe;
    const auto draft = draftAsBrewed(*desk, "Plover", setting, desk->kit("Plover"), measuresOf(brew()));
    REQUIRE(draft);
    CHECK(draft->plan.grist[0].mass == Kilograms{5.10});
    CHECK(draft->plan.grist[1].mass == Kilograms{3.41});
    CHECK(draft->plan.gristMass.kg == Approx(8.51));
    CHECK(draft->plan.intoFermenter == Litres{34});
    CHECK(draft->plan.mash[0].water.l == Approx(setting.recipe.liquorToGrist.lPerKg * 8.51).epsilon(1e-6));
}

TEST_CASE_METHOD(BrewDay, "a vessel brews on a kit of its own from the day it has one", "[desk][brewday]") {
    record(R"([{"kind": "vessel", "name": "Teal", "capacity_l": 50},
               {"kind": "equipment", "on": "2026-01-10", "vessel": "Teal", "name": "trial kit", "mash_tun_l": 30}])");
    CHECK(desk->kit("Teal").equipment.name == "trial kit");
    CHECK(desk->kit("Plover").equipment.name == "60 L kit");
    CHECK(desk->kit().equipment.name == "60 L kit");
    record(R"({"kind": "equipment", "on": "2026-02-01", "name": "new kit"})"); // of the others
    CHECK(desk->kit("Teal").equipment.name == "trial kit");
    now = day(2026, 1, 9);
    CHECK(desk->kit("Teal").equipment.name == "60 L kit");
    CHECK(refused(R"({"kind": "equipment", "on": "2026-01-01", "vessel": "Nobody", "name": "kit"})").path == "/vessel");
}

TEST_CASE_METHOD(BrewDay, "kits of one day are replaced each by its own", "[desk][brewday]") {
    EquipmentFact all = desk->kit(), own = all;
    all.on = own.on = now;
    own.vessel = "Plover";
    all.equipment.efficiency = Share{.7};
    REQUIRE(desk->setToday(Fact{all}));
    REQUIRE(desk->setToday(Fact{own}));
    all.equipment.efficiency = Share{.72};
    REQUIRE(desk->setToday(Fact{all}));
    CHECK(desk->kit() == all);
    CHECK(desk->kit("Plover") == own);
    REQUIRE(desk->undo());
    CHECK(desk->kit().equipment.efficiency == Share{.7});
    CHECK(desk->kit("Plover") == own);
}

TEST_CASE_METHOD(BrewDay, "a mash that cannot be struck has no sheet, and the fault says what helps",
                 "[desk][brewday]") {
    record(R"({"kind": "equipment", "on": "2026-01-10", "name": "far too large", "mash_tun_l": 900, "kettle_l": 900,
               "fermenter_l": 900, "tun_water_equivalent_kg": 60, "grain_temperature_c": 5})");
    const auto plan = desk->brewPlan("Plover");
    REQUIRE(plan);
    REQUIRE(plan->cannot);
    const auto sheet = desk->brewSheet("Plover");
    REQUIRE_FALSE(sheet);
    CHECK(sheet.error() == *plan->cannot);
    CHECK(sheet.error().kind == FaultKind::notPossible);
    CHECK(desk->advise({"Plover", {}, {}, false})); // what to brew is another question
}

TEST_CASE_METHOD(BrewDay, "hops that cannot bring their bitterness are refused when they are recorded",
                 "[desk][brewday][bad]") {
    const std::string hops =
        R"(, "hops": [{"name": "first", "minutes": 60, "bitterness_share": 0.5}, {"name": "late", "minutes": 0, "bitterness_share": 0.5}])";
    CHECK(refused(brewed(R"([{"grain": "pilsner", "share": 1}])", hops)).path == "/hops/1");
    CHECK(
        refused(R"({"kind": "base_recipe", "vessel": "Plover", "on": "2026-02-20", "bitterness_ibu": 10, "boil_min": 0,
                      "grist": [{"grain": "pilsner", "share": 1}], "mash": [{"temperature_c": 66, "minutes": 60}]})")
            .path == "/hops/0");
    record(R"({"kind": "base_recipe", "vessel": "Plover", "on": "2026-02-20", "bitterness_ibu": 0, "boil_min": 0,
               "grist": [{"grain": "pilsner", "share": 1}], "mash": [{"temperature_c": 66, "minutes": 60}]})");
    CHECK(desk->brewSheet("Plover"));
}

TEST_CASE_METHOD(BrewDay, "a brew may end anywhere a hydrometer can read, and its vessel is advised on",
                 "[desk][brewday]") {
    int number = 0;
    for (const double final : {1.012, 1.008, 1.0075, 1.005, 1.000, .996, .990}) {
        CAPTURE(final);
        record(fmt::format(R"({{"kind": "brew", "name": "Dry {0}", "vessel": "Plover", "on": "2026-02-2{0}",
            "original_gravity_p": 12, "bitterness_ibu": 10, "grist": [{{"grain": "pilsner", "share": 1}}],
            "mash": [{{"temperature_c": 72, "minutes": 30}}], "yeast": "ale_low", "measured_original_gravity_sg": 1.0484,
            "measured_final_gravity_sg": {1}}})",
                           number++, final));
        CHECK(desk->advise({"Plover", {}, {}, true}));
        CHECK(desk->meaning(brew()));
        CHECK(desk->drawDay("Plover"));
    }
    record(R"([{"kind": "draw_off", "vessel": "Plover", "on": "2026-03-01", "volume_l": 79},
               {"kind": "refill", "vessel": "Plover", "on": "2026-03-01", "volume_l": 79, "brew": "Dry 6"}])");
    CHECK(desk->advise({"Plover", {}, {}, true}));
    CHECK(desk->history("Plover"));
}

TEST_CASE_METHOD(BrewDay, "an old brew that no refill names is not judged by the coming draw", "[desk][brewday]") {
    record(brewed(R"([{"grain": "pilsner", "share": 1}])"));
    CHECK(desk->meaning(brew())->coming);
    record(R"([{"kind": "draw_off", "vessel": "Plover", "on": "2026-03-01", "volume_l": 79},
               {"kind": "refill", "vessel": "Plover", "on": "2026-03-01", "volume_l": 79}])");
    const auto meaning = desk->meaning(brew());
    REQUIRE(meaning);
    CHECK_FALSE(meaning->coming);
    CHECK(meaning->words.front() == say("desk.brewed.not_poured").with("on", day(2026, 3, 1)));
}
