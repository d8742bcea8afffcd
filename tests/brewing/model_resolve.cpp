// SPDX-License-Identifier: GPL-3.0-or-later
#include "brewing/refill_beer.h"

#include "model_support.h"
#include "quantity/text.h"

#include <limits>

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::ingredient;
using reference::baseRecipe;
using reference::pantry;

namespace {

/// The fault of a recipe; fails the test when it resolves.
Fault faultOf(const Recipe& recipe, CelsiusPerMinute kit = {1}) {
    const auto input = resolve(recipe, pantry(), kit);
    REQUIRE_FALSE(input);
    return input.error();
}
template <class Change> Fault changed(Change&& change) {
    Recipe recipe = baseRecipe();
    change(recipe);
    return faultOf(recipe);
}
/// A fault in plain words: both sentences exist, and no placeholder is left over.
void isSaid(const Fault& fault) {
    for (const auto& message : {fault.cause, fault.remedy}) {
        INFO(message.key);
        CHECK(builtInTexts().has(message.key));
        const std::string text = render(message);
        CHECK(text.find('{') == std::string::npos);
        CHECK(text.size() > 10);
    }
}
void faults(const Recipe& recipe, const std::string& path, const std::string& cause) {
    const Fault fault = faultOf(recipe);
    INFO(cause);
    CHECK(fault.kind == FaultKind::input);
    CHECK(fault.path == path);
    CHECK(fault.cause.key == cause);
    isSaid(fault);
}

struct Limit {
    const char* path;
    double low, high;
    void (*set)(Recipe&, double);
};
const Limit limits[] = {
    {"/sugar_share", 0, .25, [](Recipe& r, double x) { r.sugarShare = {x}; }},
    {"/mash_ph", 4.8, 6.4, [](Recipe& r, double x) { r.mashPh = {x}; }},
    {"/liquor_to_grist_l_kg", 1.5, 10, [](Recipe& r, double x) { r.liquorToGrist = {x}; }},
    {"/original_gravity_p", 2, 25, [](Recipe& r, double x) { r.originalGravity = {x}; }},
    {"/bitterness_ibu", 0, 100, [](Recipe& r, double x) { r.bitterness = {x}; }},
    {"/boil_min", 0, 300, [](Recipe& r, double x) { r.boil = {x}; }},
    {"/pre_soured_share", 0, 1, [](Recipe& r, double x) { r.preSoured = {x}; }},
    {"/pre_sour_ta_g_l", 1, 15, [](Recipe& r, double x) { r.preSourTa = {x}; }},
    {"/mash/0/temperature_c", 35, 80, [](Recipe& r, double x) { r.mash[0].temperature = {x}; }},
};

} // namespace

TEST_CASE("A good recipe resolves to its ingredients and numbers", "[brewing][resolve]") {
    const auto input = resolve(reference::ryeRecipe(), pantry(), {1});
    REQUIRE(input);
    REQUIRE(input->grist.size() == 3);
    CHECK(input->grist[2].grain.id == "rye_malt");
    CHECK(input->grist[2].grain.ferulicBound == 75);
    CHECK(input->grist[0].share.of1 == Approx(.6));
    CHECK(input->yeast.id == "diastatic");
    CHECK(input->sugar.id == "sucrose");
    CHECK(input->recipe == reference::ryeRecipe());
}

TEST_CASE("Every number is accepted at both of its limits and refused beyond", "[brewing][resolve]") {
    for (const auto& limit : limits) {
        INFO(limit.path);
        for (double inside : {limit.low, limit.high}) {
            Recipe recipe = baseRecipe();
            limit.set(recipe, inside);
            CHECK(resolve(recipe, pantry(), {1}));
        }
        for (double beyond : {limit.low - .01, limit.high + .01, std::numeric_limits<double>::quiet_NaN(),
                              std::numeric_limits<double>::infinity()}) {
            Recipe recipe = baseRecipe();
            limit.set(recipe, beyond);
            const Fault fault = faultOf(recipe);
            CHECK(fault.path == limit.path);
            isSaid(fault);
        }
    }
}

TEST_CASE("A fault names the limits in the unit of its field", "[brewing][resolve]") {
    const Fault fault = changed([](Recipe& r) { r.originalGravity = {30}; });
    CHECK(render(fault.remedy, {.gravity = DisplayUnits::Gravity::plato}).find("25") != std::string::npos);
    const Fault hot = changed([](Recipe& r) { r.mash[0].temperature = {88}; });
    CHECK(render(hot.cause).find("88") != std::string::npos);
}

TEST_CASE("A grist must exist, have shares and add up", "[brewing][resolve]") {
    Recipe recipe = baseRecipe();
    recipe.grist.clear();
    faults(recipe, "/grist", "brewing.empty_grist");
    recipe.grist = {{"pilsner", {.75}}, {"wheat_malt", {.20}}};
    faults(recipe, "/grist", "brewing.grist_sum");
    recipe.grist = {{"pilsner", {.75}}, {"wheat_malt", {.30}}};
    faults(recipe, "/grist", "brewing.grist_sum");
    recipe.grist = {{"pilsner", {1}}, {"wheat_malt", {0}}};
    faults(recipe, "/grist/1/share", "brewing.no_share");
    recipe.grist = {{"pilsner", {1.1}}, {"wheat_malt", {-.1}}};
    faults(recipe, "/grist/0/share", "brewing.out_of_range");
    recipe.grist = {{"pilsner", {std::numeric_limits<double>::quiet_NaN()}}};
    faults(recipe, "/grist/0/share", "brewing.no_share");
}

TEST_CASE("Shares a little off are brought to 1", "[brewing][resolve]") {
    Recipe recipe = baseRecipe();
    recipe.grist = {{"pilsner", {.753}}, {"wheat_malt", {.251}}};
    const auto input = resolve(recipe, pantry(), {1});
    REQUIRE(input);
    CHECK(input->grist[0].share.of1 + input->grist[1].share.of1 == Approx(1).epsilon(1e-15));
    CHECK(input->grist[0].share.of1 == Approx(.75).epsilon(1e-12));
}

TEST_CASE("Unknown ingredients are faults at their place", "[brewing][resolve]") {
    Recipe recipe = baseRecipe();
    recipe.grist[1].grain = "wheat_mlat";
    CHECK(faultOf(recipe).path == "/grist/1/grain");
    recipe = baseRecipe();
    recipe.yeast = "claen";
    CHECK(faultOf(recipe).path == "/yeast");
    recipe = baseRecipe();
    recipe.sugarShare = {.05};
    recipe.sugar = "sucros";
    CHECK(faultOf(recipe).path == "/sugar");
    recipe.sugarShare = {0}; // then nobody needs it
    CHECK(resolve(recipe, pantry(), {1}));
}

TEST_CASE("Sugar and grain are not mixed up", "[brewing][resolve]") {
    Recipe recipe = baseRecipe();
    recipe.grist = {{"pilsner", {.9}}, {"sucrose", {.1}}};
    faults(recipe, "/grist/1/grain", "brewing.sugar_in_grist");
    CHECK(render(faultOf(recipe).cause).find("sucrose") != std::string::npos);
    recipe = baseRecipe();
    recipe.sugarShare = {.1};
    recipe.sugar = "wheat_malt";
    faults(recipe, "/sugar", "brewing.not_a_sugar");
}

TEST_CASE("A mash has rests that rise and last", "[brewing][resolve]") {
    Recipe recipe = baseRecipe();
    recipe.mash.clear();
    faults(recipe, "/mash", "brewing.no_mash");
    recipe.mash = {{{66}, {60}}, {{81}, {10}}};
    faults(recipe, "/mash/1/temperature_c", "brewing.mash_too_hot");
    recipe.mash = {{{30}, {20}}, {{66}, {60}}};
    faults(recipe, "/mash/0/temperature_c", "brewing.out_of_range");
    recipe.mash = {{{66}, {60}}, {{63}, {20}}};
    faults(recipe, "/mash/1/temperature_c", "brewing.mash_falls");
    recipe.mash = {{{66}, {0}}};
    faults(recipe, "/mash/0/minutes", "brewing.no_time");
    recipe.mash = {{{66}, {601}}};
    faults(recipe, "/mash/0/minutes", "brewing.out_of_range");
    recipe.mash = {{{45}, {20}}, {{66}, {std::numeric_limits<double>::quiet_NaN()}}};
    faults(recipe, "/mash/1/minutes", "brewing.no_time");
    recipe.mash = {{{66}, {30}}, {{66}, {30}}}; // the same again is no fall
    CHECK(resolve(recipe, pantry(), {1}));
}

TEST_CASE("Late grain needs a rest before it and malt to mash in with", "[brewing][resolve]") {
    Recipe recipe = baseRecipe();
    recipe.grist[1].late = true;
    faults(recipe, "/grist/1/late", "brewing.late_without_rest");
    recipe.mash = {{{45}, {20}}, {{66}, {60}}};
    CHECK(resolve(recipe, pantry(), {1}));
    recipe.grist[0].late = true;
    faults(recipe, "/grist", "brewing.all_late");
}

TEST_CASE("A grist without enzymes is refused, just enough is not", "[brewing][resolve]") {
    Recipe recipe = baseRecipe();
    recipe.grist = {{"flaked_oats", {.79}}, {"pilsner", {.21}}}; // 58.8 WK
    faults(recipe, "/grist", "brewing.will_not_convert");
    recipe.grist = {{"flaked_oats", {.78}}, {"pilsner", {.22}}}; // 61.6 WK
    CHECK(resolve(recipe, pantry(), {1}));
}

TEST_CASE("Hop additions carry the bitterness between them", "[brewing][resolve]") {
    Recipe recipe = baseRecipe();
    recipe.hops = {{"one", {.05}, {60}, {.6}}, {"two", {.08}, {10}, {.4}}};
    CHECK(resolve(recipe, pantry(), {1}));
    recipe.hops[1].ofBitterness = {.3};
    faults(recipe, "/hops", "brewing.hops_sum");
    recipe.hops[1].ofBitterness = {.4};
    recipe.hops[1].alpha = {0};
    faults(recipe, "/hops/1/alpha_share", "brewing.out_of_range");
    recipe.hops[1].alpha = {.08};
    recipe.hops[0].boiled = {90}; // longer than the boil
    faults(recipe, "/hops/0/minutes", "brewing.out_of_range");
}

TEST_CASE("The path sets the rate of heating", "[brewing][resolve]") {
    Recipe recipe = baseRecipe();
    recipe.path = MashPath::jump;
    CHECK(resolve(recipe, pantry(), {.7})->ramp == jumpRate);
    recipe.path = MashPath::ramp;
    CHECK(resolve(recipe, pantry(), {.7})->ramp.cPerMin == .7);
    CHECK(faultOf(recipe, {0}).path == "/heating_rate_c_min");
    isSaid(faultOf(recipe, {0}));
}

TEST_CASE("Random recipes within limits resolve", "[brewing][resolve]") {
    CHECK_PROPERTY("resolve accepts what the ranges allow",
                   [] { RC_ASSERT(resolve(reference::anyRecipe(), pantry(), {1}).has_value()); });
}

TEST_CASE("The grains and yeasts shipped with the program brew", "[brewing][resolve]") {
    for (const auto& yeast : builtInPantry().yeasts()) {
        Recipe recipe;
        recipe.grist = {{"pilsner", {.8}}, {"wheat_malt", {.2}}};
        recipe.mash = {{{66}, {60}}};
        recipe.yeast = yeast.id;
        CHECK(resolve(recipe, builtInPantry(), {1}));
    }
    for (const auto& grain : builtInPantry().grains()) {
        INFO(grain.id);
        Recipe recipe;
        recipe.mash = {{{66}, {60}}};
        recipe.grist = {{"pilsner", {1}}};
        if (grain.isSugar()) {
            recipe.sugarShare = {.1};
            recipe.sugar = grain.id;
        } else
            recipe.grist = {{"pilsner", {.8}}, {grain.id, {.2}}};
        const auto input = resolve(recipe, builtInPantry(), {1});
        REQUIRE(input);
        const RefillBeer beer = brew(*input);
        CHECK(beer.alcohol.pct > 3.5);
        CHECK(beer.alcohol.pct < 6);
    }
}
