// SPDX-License-Identifier: GPL-3.0-or-later
// Ingredients of one's own: recorded, brewed with, changed, removed; and what is at hand of them.
#include "desk/own_ingredients.h"
#include "desk/stock.h"
#include "desk/support.h"
#include "facts/field_kinds.h"
#include "facts/fields.h"
#include "facts/own_ingredients.h"
#include "quantity/columns.h"
#include "sheet/document.h"
#include "support/property.h"

#include <algorithm>
#include <cmath>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::testing;

namespace {

const char* const barnMalt = R"({"kind": "own_grain", "on": "2026-01-01", "ingredient": "barn_pilsner",
    "name": "Pilsner from the barn", "like": "pilsner", "extract_dry_share": 0.79, "moisture_share": 0.05})";
const char* const barnWheat = R"({"kind": "own_grain", "on": "2026-01-01", "ingredient": "barn_wheat",
    "name": "wheat from the barn", "like": "raw_wheat"})";

struct OwnFixture : DeskFixture {
    OwnFixture() {
        addPlover();
        record(barnMalt);
    }
    void brewWithBarn(const std::string& name, const std::string& on, const std::string& more = {}) {
        record(R"({"kind": "brew", "name": ")" + name + R"(", "vessel": "Plover", "on": ")" + on +
               R"(", "mash": [{"temperature_c": 66, "minutes": 60}], "grist": [{"grain": "barn_pilsner", "share": 1)" +
               more + "}]}");
    }
    [[nodiscard]] std::string sheet() const {
        const auto paper = desk->brewSheet("Plover");
        REQUIRE(paper);
        return sheet::writeMarkdown(*paper);
    }
    [[nodiscard]] ingredient::Grain barn() const { return desk->pantry().grain("barn_pilsner").value(); }
    [[nodiscard]] std::int64_t idOf(const std::string& ingredient) const {
        for (const auto& [id, fact] : desk->ownIngredients())
            if (const auto* grain = std::get_if<OwnGrainFact>(&fact); grain && grain->item.id == ingredient)
                return id;
        FAIL("no " << ingredient);
        return 0;
    }
};

/// Columns of a table of built-in ingredients beside the fields of one's own, with what a field's 1 is in the table.
struct Pair {
    std::string_view table, column, field;
    double scale;
};

struct Ranges : facts::PassesBy {
    std::map<std::string_view, std::pair<double, double>> of;
    template <class T> void field(const Field& f, T&) { of[f.name] = {f.low, f.high}; }
};

} // namespace

TEST_CASE("fields of one's own ingredients have the ranges of the built-in tables", "[own]") {
    Ranges ranges;
    OwnGrainFact grain;
    describe(ranges, grain);
    OwnYeastFact yeast;
    describe(ranges, yeast);
    OwnHopFact hop;
    describe(ranges, hop);
    for (const auto& [table, column, field, scale] : {Pair{"grains", "extract_db_pct", "extract_dry_share", 100},
                                                      Pair{"grains", "moisture_pct", "moisture_share", 100},
                                                      Pair{"grains", "extract_as_is", "extract_as_is_share", 1},
                                                      Pair{"grains", "own_rdf", "fermentable_share", 1},
                                                      Pair{"grains", "colour_ebc", "colour_ebc", 1},
                                                      Pair{"grains", "diastatic_power_wk", "diastatic_power_wk", 1},
                                                      Pair{"grains", "beta_glucan_kg_kg", "beta_glucan_share", 1},
                                                      Pair{"grains", "glucanase_rel", "glucanase", 1},
                                                      Pair{"grains", "arabinoxylan_g_l_at_12p", "arabinoxylan_g_l", 1},
                                                      Pair{"grains", "ferulic_free_mg_kg", "ferulic_free_mg_kg", 1},
                                                      Pair{"grains", "ferulic_bound_mg_kg", "ferulic_bound_mg_kg", 1},
                                                      Pair{"grains", "coumaric_free_mg_kg", "coumaric_free_mg_kg", 1},
                                                      Pair{"grains", "coumaric_bound_mg_kg", "coumaric_bound_mg_kg", 1},
                                                      Pair{"grains", "esterase_rel", "esterase", 1},
                                                      Pair{"grains", "lactic_pct", "lactic_share", 100},
                                                      Pair{"grains", "max_share_of_extract", "max_share", 1},
                                                      Pair{"yeasts", "takes_maltose", "takes_maltose", 1},
                                                      Pair{"yeasts", "takes_maltotriose", "takes_maltotriose", 1},
                                                      Pair{"yeasts", "takes_dextrin", "takes_dextrin", 1},
                                                      Pair{"yeasts", "glycerol_g_l_at_12p", "glycerol_g_l", 1},
                                                      Pair{"yeasts", "primary_days", "primary_d", 1},
                                                      Pair{"hops", "alpha_pct", "alpha_share", 100},
                                                      Pair{"hops", "lost_in_six_months_pct", "lost_in_six_months", 100},
                                                      Pair{"hops", "stored_at_c", "stored_c", 1},
                                                      Pair{"hops", "age_years", "age_d", 1 / daysPerYear}}) {
        CAPTURE(table, column);
        const ColumnSpec* spec = builtInColumns().find(table, column);
        REQUIRE(spec);
        REQUIRE(ranges.of.contains(field));
        CHECK(ranges.of[field].first * scale == Approx(spec->range.low));
        CHECK(ranges.of[field].second * scale == Approx(spec->range.high));
    }
}

TEST_CASE("what is made like a built-in ingredient is that ingredient until a number is changed", "[own]") {
    for (const ingredient::Grain& built : ingredient::builtInPantry().grains()) {
        OwnGrainFact fact;
        startLike(fact, built.id);
        ingredient::Grain made = ingredientOf(fact);
        made.id = built.id;
        made.name = built.name;
        made.source = built.source;
        INFO(built.id);
        CHECK(made == built);
    }
    for (const ingredient::Yeast& built : ingredient::builtInPantry().yeasts()) {
        OwnYeastFact fact;
        startLike(fact, built.id);
        ingredient::Yeast made = ingredientOf(fact);
        made.id = built.id;
        made.name = built.name;
        made.source = built.source;
        made.note = built.note;
        CHECK(made == built);
    }
    for (const ingredient::Hop& built : ingredient::builtInPantry().hops()) {
        OwnHopFact fact;
        startLike(fact, built.id);
        CHECK(alphaAfter(ingredientOf(fact), Days{0}) == alphaAfter(built, Days{0}));
    }
}

TEST_CASE_METHOD(OwnFixture, "a malt of one's own is advised, sized and printed like any other", "[own]") {
    CHECK(barn().extractDryBasis == .79);
    CHECK(barn().diastaticPowerWk == ingredient::builtInPantry().grain("pilsner")->diastaticPowerWk);
    CHECK(barn().source == "own");
    record(R"({"kind": "base_recipe", "vessel": "Plover", "on": "2026-01-02", "yeast": "ale_clean",
               "grist": [{"grain": "barn_pilsner", "share": 1}], "mash": [{"temperature_c": 66, "minutes": 60}]})");
    const auto own = desk->brewPlan("Plover");
    REQUIRE(own);
    CHECK(own->grist.front().name == "Pilsner from the barn");
    CHECK(sheet().find("Pilsner from the barn") != std::string::npos);
    const auto advice = desk->advise({"Plover", {}, {}, false});
    REQUIRE(advice);
    record(R"({"kind": "base_recipe", "vessel": "Plover", "on": "2026-01-03", "yeast": "ale_clean",
               "grist": [{"grain": "pilsner", "share": 1}], "mash": [{"temperature_c": 66, "minutes": 60}]})");
    // less extract in the malt, more of it: 0.79 x 0.95 against 0.81 x 0.955
    CHECK(own->gristMass / desk->brewPlan("Plover")->gristMass == Approx(.81 * .955 / (.79 * .95)).epsilon(.001));
}

TEST_CASE_METHOD(OwnFixture, "a sugar, a yeast and hops of one's own are used by their names", "[own]") {
    record(R"([{"kind": "own_grain", "on": "2026-01-01", "ingredient": "pear_syrup", "name": "pear syrup",
                "like": "honey", "fermentable_share": 0.85},
               {"kind": "own_yeast", "on": "2026-01-01", "ingredient": "loft_ale", "name": "ale yeast from the loft",
                "like": "ale_clean", "primary_d": 9},
               {"kind": "own_hop", "on": "2026-01-01", "ingredient": "yard_leaf", "name": "leaf from the yard",
                "like": "hops_low", "alpha_share": 0.05},
               {"kind": "base_recipe", "vessel": "Plover", "on": "2026-01-02", "yeast": "loft_ale", "sugar": "pear_syrup",
                "sugar_share": 0.1, "grist": [{"grain": "barn_pilsner", "share": 1}],
                "mash": [{"temperature_c": 66, "minutes": 60}]}])");
    CHECK(desk->brewPlan("Plover")->primaryDays == 9);
    CHECK(sheet().find("of pear syrup") != std::string::npos);
    CHECK(sheet().find("ale yeast from the loft") != std::string::npos);
    CHECK(desk->pantry().hop("yard_leaf")->alpha == Share{.05});
    CHECK(desk->ownIngredients().size() == 4);
    const auto leaf = [&] {
        const auto hops = desk->hops();
        return std::find_if(hops.begin(), hops.end(), [](const HopOffer& h) { return h.name == "leaf from the yard"; })
            ->alpha.of1;
    };
    // sealed at 4 C: 45 % in 180 days of 20 C in the open, half of it for the pack, and less than half for the cold
    CHECK(leaf() == Approx(.05 * std::pow(.55, 60. / 180 * .5 * std::exp2(-16. / 15))));
    now = day(2026, 1, 1);
    CHECK(leaf() == Approx(.05));
}

TEST_CASE_METHOD(OwnFixture, "what cannot be an ingredient of one's own is refused at its field", "[own][bad]") {
    const auto with = [](std::string_view key, std::string_view value) {
        return R"({"kind": "own_grain", "on": "2026-01-01", "ingredient": "a", "name": "a", "like": "pilsner", ")" +
               std::string(key) + "\": " + std::string(value) + "}";
    };
    CHECK(refused(with("extract_dry_share", "1.01")).path == "/extract_dry_share");
    CHECK(render(refused(with("extract_dry_share", "79")).remedy).starts_with("Write 0.79:"));
    CHECK(refused(with("moisture_share", "0.31")).path == "/moisture_share");
    CHECK(refused(with("diastatic_power_wk", "-1")).path == "/diastatic_power_wk");
    CHECK(refused(with("type", "\"barley\"")).path == "/type");
    CHECK(refused(with("type", "\"sugar\"")).path == "/fermentable_share");
    const auto named = [](const std::string& id, const std::string& name, const std::string& like) {
        return R"({"kind": "own_grain", "on": "2026-01-01", "ingredient": ")" + id + R"(", "name": ")" + name +
               R"(", "like": ")" + like + "\"}";
    };
    CHECK(refused(named("pilsner", "mine", "pilsner")).path == "/ingredient");
    CHECK(refused(named("saison", "mine", "pilsner")).cause.key == "desk.own_built_in");
    CHECK(refused(named("My Malt", "mine", "pilsner")).cause.key == "desk.own_id");
    CHECK(refused(named("mine", "PILSNER MALT", "pilsner")).path == "/name");
    CHECK(refused(named("mine", "mine", "pilsener")).path == "/like");
    CHECK(refused(named("barn_pilsner", "Pilsner from the barn", "honey")).path == "/type");
    CHECK(refused(R"({"kind": "own_yeast", "on": "2026-01-01", "ingredient": "barn_pilsner", "name": "y",
                      "like": "ale_clean"})")
              .cause.key == "desk.own_id_taken");
    CHECK(refused(R"({"kind": "own_hop", "on": "2026-03-03", "ingredient": "h", "name": "h", "like": "hops_low"})")
              .path == "/on"); // tomorrow
    CHECK(desk->ownIngredients().size() == 1);
}

TEST_CASE_METHOD(OwnFixture, "what was brewed keeps its numbers when its malt is changed", "[own]") {
    brewWithBarn("Brew 1", "2026-02-01");
    const std::string later = R"({"kind": "own_grain", "on": "2026-02-02", "ingredient": "barn_pilsner",
        "name": "Pilsner from the barn", "like": "pilsner", "extract_dry_share": 0.70})";
    record(later);
    CHECK(barn().extractDryBasis == .70);
    const Fault early = refused(R"({"kind": "own_grain", "on": "2026-02-01", "ingredient": "barn_pilsner",
        "name": "Pilsner from the barn", "like": "pilsner", "extract_dry_share": 0.75})");
    CHECK(early.path == "/on");
    CHECK(render(early.cause) ==
          "Brew 1 of 1 Feb 2026 was brewed with Pilsner from the barn: this would change what it "
          "was made of.");
    CHECK(render(early.remedy).starts_with("Record it as of 2 Feb 2026 or later."));
    // in place: what was in force on the day of the brew stays, what came after may be corrected, names may always be
    OwnGrainFact first = std::get<OwnGrainFact>(*desk->fact("own_grain", 1));
    first.item.moisture = .1;
    CHECK(desk->amend("own_grain", 1, first).error().path == "/on");
    first.item.moisture = .05;
    first.item.name = "Pilsner of the neighbour";
    CHECK(desk->amend("own_grain", 1, first));
    OwnGrainFact second = std::get<OwnGrainFact>(*desk->fact("own_grain", 2));
    second.item.moisture = .1;
    CHECK(desk->amend("own_grain", 2, second));
    CHECK(barn().moisture == .1);
}

TEST_CASE_METHOD(OwnFixture, "a brew is made of the malt as it was that day", "[own]") {
    record(R"({"kind": "own_grain", "on": "2026-02-02", "ingredient": "barn_pilsner",
        "name": "Pilsner from the barn", "like": "pilsner", "extract_dry_share": 0.60})");
    const auto efficiencyOf = [&](const std::string& name, const std::string& on) {
        record(R"({"kind": "brew", "name": ")" + name + R"(", "vessel": "Plover", "on": ")" + on +
               R"(", "mash": [{"temperature_c": 66, "minutes": 60}], "measured_original_gravity_sg": 1.048,
               "into_fermenter_l": 100, "grist": [{"grain": "barn_pilsner", "share": 1, "mass_kg": 24}]})");
        const auto won = desk->efficiency(desk->brews().back());
        REQUIRE(won);
        return won->won.efficiency.of1;
    };
    const double before = efficiencyOf("Brew 1", "2026-02-01"), after = efficiencyOf("Brew 2", "2026-02-02");
    CHECK(before / after == Approx(.60 * .955 / (.79 * .95)).epsilon(.001));
    CHECK(efficiencyOf("Brew 0", "2025-12-01") == Approx(before)); // before it began: as it began
}

TEST_CASE_METHOD(OwnFixture, "a malt in a recipe or a brew cannot be removed", "[own][bad]") {
    record(barnWheat);
    record(R"({"kind": "base_recipe", "vessel": "Plover", "on": "2026-01-02", "yeast": "ale_clean",
               "grist": [{"grain": "pilsner", "share": 0.8}, {"grain": "barn_wheat", "share": 0.2}],
               "mash": [{"temperature_c": 66, "minutes": 60}]})");
    const auto inRecipe = desk->remove("own_grain", idOf("barn_wheat"));
    REQUIRE_FALSE(inRecipe);
    CHECK(render(inRecipe.error().cause) == "wheat from the barn is in a recipe of Plover.");
    brewWithBarn("Brew 1", "2026-02-01");
    const auto inBrew = desk->remove("own_grain", idOf("barn_pilsner"));
    REQUIRE_FALSE(inBrew);
    CHECK(render(inBrew.error().cause) == "Pilsner from the barn is in a recipe of Brew 1.");
    CHECK(desk->ownIngredients().size() == 2);
    REQUIRE(desk->undo()); // the brew
    CHECK(desk->remove("own_grain", idOf("barn_pilsner")));
    CHECK_FALSE(desk->pantry().grain("barn_pilsner"));
    REQUIRE(desk->undo());
    CHECK(desk->pantry().grain("barn_pilsner"));
}

TEST_CASE_METHOD(OwnFixture, "what is at hand is what was counted, less what was weighed out since", "[own][stock]") {
    record(R"({"kind": "availability", "on": "2026-02-10", "item": "barn_pilsner", "mass_kg": 25})");
    const auto left = [&] { return desk->stock().front().left.value().kg; };
    CHECK(left() == 25);
    brewWithBarn("Brew 1", "2026-02-10", R"(, "mass_kg": 6)"); // that day: counted in the evening
    CHECK(left() == 25);
    brewWithBarn("Brew 2", "2026-02-20", R"(, "mass_kg": 18)");
    CHECK(left() == Approx(7));
    brewWithBarn("Brew 3", "2026-02-21", R"(, "mass_kg": 18)");
    CHECK(left() == 0);
    REQUIRE(desk->undo());
    CHECK(left() == Approx(7));
    record(R"({"kind": "availability", "on": "2026-03-01", "item": "barn_pilsner", "mass_kg": 50})");
    CHECK(left() == 50);
}

TEST_CASE_METHOD(OwnFixture, "a word without an amount leaves the count, unless that was used up", "[own][stock]") {
    const auto say = [&](const std::string& on, const std::string& more) {
        record(R"({"kind": "availability", "item": "barn_pilsner", "on": ")" + on + "\"" + more + "}");
    };
    const auto stock = [&] { return desk->stock().front(); };
    say("2026-01-10", R"(, "mass_kg": 25, "best_before": "2027-01-01")");
    brewWithBarn("Brew 1", "2026-01-20", R"(, "mass_kg": 10)");
    say("2026-02-01", R"(, "available": false)");
    CHECK_FALSE(stock().on(now));
    say("2026-02-02", "");
    CHECK(stock().on(now));
    CHECK(stock().left.value().kg == Approx(15)); // weighed out since the count, not since the word
    CHECK(stock().countedOn == testing::day(2026, 1, 10));
    CHECK(stock().counted.bestBefore == testing::day(2027, 1, 1));
    brewWithBarn("Brew 2", "2026-02-03", R"(, "mass_kg": 15)");
    CHECK_FALSE(stock().on(now));
    say("2026-02-04", ""); // of another sack
    CHECK(stock().on(now));
    CHECK_FALSE(stock().left);
    say("2026-02-05", R"(, "mass_kg": 5, "best_before": "2026-02-10")");
    say("2026-02-20", ""); // the old sack is past its day
    CHECK(stock().on(now));
    CHECK_FALSE(stock().counted.bestBefore);
}

TEST_CASE_METHOD(OwnFixture, "what is used up or past its day is not advised", "[own][stock]") {
    const auto missing = [&](const std::string& more) {
        record(R"({"kind": "availability", "on": "2026-03-01", "item": "flaked_oats")" + more + "}");
        const auto job = desk->adviceJob({"Plover", {}, {}, false});
        REQUIRE(job);
        return job->input.unavailable.contains("flaked_oats");
    };
    const Day brewDay = desk->adviceJob({"Plover", {}, {}, false})->dates.brew;
    CHECK_FALSE(missing(R"(, "mass_kg": 3)"));
    CHECK(missing(R"(, "mass_kg": 0)"));
    CHECK(missing(R"(, "mass_kg": 3, "best_before": ")" + isoDay(brewDay - std::chrono::days{1}) + "\""));
    CHECK_FALSE(missing(R"(, "mass_kg": 3, "best_before": ")" + isoDay(brewDay) + "\""));
    CHECK_FALSE(missing(""));
    CHECK(refused(R"({"kind": "availability", "on": "2026-03-01", "item": "rye_malt", "packs": 2})").path == "/packs");
    CHECK(refused(R"({"kind": "availability", "on": "2026-03-01", "item": "rye_malt", "available": false,
                      "mass_kg": 2})")
              .path == "/available");
    CHECK(refused(R"({"kind": "availability", "on": "2026-03-01", "item": "rye_malt", "mass_kg": -2})").path ==
          "/mass_kg");
}

TEST_CASE_METHOD(OwnFixture, "the brew sheet says what to buy where less is at hand than it takes", "[own][stock]") {
    record(R"([{"kind": "own_hop", "on": "2026-01-01", "ingredient": "yard_leaf", "name": "leaf from the yard",
                "like": "hops_low", "alpha_share": 0.05},
               {"kind": "base_recipe", "vessel": "Plover", "on": "2026-01-02", "yeast": "ale_clean", "sugar_share": 0.1,
                "grist": [{"grain": "barn_pilsner", "share": 1}], "mash": [{"temperature_c": 66, "minutes": 60}],
                "hops": [{"name": "Leaf from the Yard", "alpha_share": 0.05}]}])");
    CHECK(sheet().find("## To buy") == std::string::npos); // nothing was counted
    const double malt = desk->brewPlan("Plover")->gristMass.kg, hops = desk->brewPlan("Plover")->hops.front().mass.g;
    record(R"([{"kind": "availability", "on": "2026-03-01", "item": "barn_pilsner", "mass_kg": 100},
               {"kind": "availability", "on": "2026-03-01", "item": "sucrose", "mass_kg": 50}])");
    CHECK(sheet().find("## To buy") == std::string::npos); // enough
    record(R"({"kind": "availability", "on": "2026-03-01", "item": "barn_pilsner", "mass_kg": 10})");
    CHECK(sheet().find("Not counted, so not looked at: Leaf from the Yard, ale yeast, clean.") != std::string::npos);
    record(R"([{"kind": "availability", "on": "2026-03-01", "item": "sucrose", "available": false},
               {"kind": "availability", "on": "2026-03-01", "item": "yard_leaf", "mass_kg": 0.001},
               {"kind": "availability", "on": "2026-03-01", "item": "ale_clean", "packs": 0}])");
    const auto text = sheet();
    CHECK(text.find("| Pilsner from the barn | " + show(Kilograms{malt}) + " | 10.0 kg | " +
                    show(Kilograms{malt - 10})) != std::string::npos);
    CHECK(text.find("| sucrose | ") != std::string::npos);
    CHECK(text.find("Not counted") == std::string::npos);
    CHECK(text.find("| Leaf from the Yard | " + show(Grams{hops}) + " | 1 g | ") != std::string::npos);
    CHECK(text.find("| ale yeast, clean | \u2013 | \u2013 | a pack or a starter") != std::string::npos);
}

TEST_CASE("the latest by a day is in force, whatever the order of recording", "[own][properties]") {
    CHECK_PROPERTY("pantryOn", [] {
        SharedFacts shared;
        shared.builtIn = ingredient::builtInPantry();
        const auto days = *rc::gen::container<std::vector<int>>(rc::gen::inRange(0, 40));
        const Day start = day(2026, 1, 1);
        for (const int at : std::set<int>(days.begin(), days.end())) {
            OwnGrainFact fact;
            startLike(fact, "pilsner");
            fact.item.id = "mine";
            fact.on = start + std::chrono::days{at};
            fact.item.moisture = at / 1000.;
            shared.own.grains.push_back({at + 1, fact});
        }
        shared.mixPantries();
        for (int at = -5; at < 45; ++at) {
            const auto found = shared.pantryOn(start + std::chrono::days{at}).grain("mine");
            RC_ASSERT(found.has_value() == !days.empty());
            if (days.empty())
                continue;
            int expected = *std::min_element(days.begin(), days.end());
            for (const int each : days)
                if (each <= at)
                    expected = std::max(expected, each);
            RC_ASSERT(std::abs(found->moisture - expected / 1000.) < 1e-12);
        }
    });
}
