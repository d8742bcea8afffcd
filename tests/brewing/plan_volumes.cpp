// SPDX-License-Identifier: GPL-3.0-or-later
// Litres and kilograms of a sized brew.
#include "plan_support.h"

#include "brewing/hops.h"
#include "quantity/colour.h"
#include "quantity/density.h"

#include <array>
#include <limits>

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::ingredient;
using namespace staveline::plan_tests;

TEST_CASE("the chain from vessel to kettle, worked by hand") {
    // 84 L into the vessel, 5 % margin, 0.5 L lost on the way, 5 % in the fermenter: (88.2 + 0.5)/0.95
    const auto plan = planned(simple(), need(84));
    CHECK(plan.intoVessel.l == 84);
    CHECK(plan.intoFermenter.l == Approx(93.3684).margin(1e-4));
    CHECK(plan.leftOver.l == Approx(4.2));
    CHECK(plan.postBoil.l == Approx(97.3684).margin(1e-4));     // with 4 L left in the kettle
    CHECK(plan.postBoilHot.l == Approx(101.4254).margin(1e-4)); // 4 % larger while it boils
    CHECK(plan.preBoilHot.l == Approx(110.4254).margin(1e-4));  // 9 L an hour
}

TEST_CASE("with losses in litres only: 84 for the vessel, 0.5 on the way, 4 of trub make 88.5") {
    Equipment kit;
    kit.fermenterLoss = {4 / 88.5};
    BatchNeed batch = need(84);
    batch.margin = {0};
    CHECK(planned(simple(), batch, kit).intoFermenter.l == Approx(88.5));
    CHECK(planned(simple(), batch, kit).leftOver.l == Approx(0).margin(1e-9));
}

TEST_CASE("a fixed brew length leaves what the vessel does not take") {
    BatchNeed batch = need(60);
    batch.fixedBrewLength = Litres{100};
    const auto plan = planned(simple(), batch);
    CHECK(plan.intoFermenter.l == 100);
    CHECK(plan.leftOver.l == Approx(100 * .95 - .5 - 60));
    CHECK_FALSE(has(plan.findings, "brewing.brew_short"));
    batch.intoVessel = {110};
    const auto scarce = planned(simple(), batch);
    CHECK(scarce.leftOver.l == 0);
    CHECK(argument<Litres>(find(scarce.findings, "brewing.brew_short"), "missing").l == Approx(110 - 94.5));
}

TEST_CASE("grist by dry extract, moisture, efficiency and conversion, worked by hand") {
    // 100 L at 12 P hold 12.558 kg of extract; a kilogram gives .81 * .955 * .82 * .98
    BatchNeed batch = need(50);
    batch.fixedBrewLength = Litres{96};
    RefillBeer fresh = beer();
    fresh.conversion = .98;
    const auto plan = planned(simple(), batch, {}, fresh);
    CHECK(plan.postBoil.l == 100);
    CHECK(plan.extract.kg == Approx(12.558).margin(.001));
    CHECK(plan.gristMass.kg == Approx(12.558 / (.81 * .955 * .82 * .98)).epsilon(1e-4));
    REQUIRE(plan.grist.size() == 1);
    CHECK(plan.grist[0].mass == plan.gristMass);
    CHECK(plan.grist[0].name == "pilsner malt");
    CHECK(plan.sugar.kg == 0);
    CHECK(plan.sugarName.empty());
}

TEST_CASE("extract to gravity and back: five kilograms of malt and eight hundred grams of wheat") {
    // 5.00 kg (80.5 % dry, 4.5 % water) + 0.80 kg (83.0 %, 5.0 %) at 80 %: 3.5797 kg in 23 L is 14.71 P
    CHECK(platoFromExtract({3.5797}, {23}).p == Approx(14.71).margin(.02));
    BrewInput input = simple();
    input.grist = {{malt("pilsner", .805, .045), {5 / 5.8}, false}, {malt("wheat", .83, .05), {.8 / 5.8}, false}};
    input.recipe.originalGravity = platoFromExtract({3.5797}, {23});
    Equipment kit;
    kit.efficiency = {.8};
    BatchNeed batch = need(1);
    batch.fixedBrewLength = Litres{19};
    const auto plan = planned(input, batch, kit);
    CHECK(plan.grist[0].mass.kg == Approx(5).margin(.001));
    CHECK(plan.grist[1].mass.kg == Approx(.8).margin(.001));
}

TEST_CASE("sugar brings its share of the extract and malt the rest") {
    BrewInput input = simple();
    input.recipe.sugarShare = {.1};
    input.sugar = sucrose();
    const auto plan = planned(input, need(84));
    CHECK(plan.sugar.kg == Approx(.1 * plan.extract.kg / .9995));
    CHECK(plan.sugarName == "sucrose");
    CHECK(plan.gristMass.kg == Approx(.9 * planned(simple(), need(84)).gristMass.kg));
}

TEST_CASE("malt extract goes into the kettle: no mash loss, no water held") {
    BrewInput input = simple();
    Grain dry = malt("dry_extract", 1, .04);
    dry.kind = GrainKind::extract;
    input.grist = {{dry, {1}, false}};
    const auto plan = planned(input, need(84));
    CHECK(plan.gristMass.kg == Approx(plan.extract.kg / .96));
    CHECK(plan.mash.empty());
    CHECK(plan.strikeAndInfusion.l == 0);
    CHECK(plan.sparge.l == Approx(plan.preBoilHot.l * .96));
    input.grist = {{malt("pilsner"), {.5}, false}, {dry, {.5}, false}};
    const auto half = planned(input, need(84));
    CHECK(half.strikeAndInfusion.l == Approx(3 * half.grist[0].mass.kg));
    CHECK(half.grist[0].mass.kg * .81 * .955 * .82 + half.grist[1].mass.kg * .96 == Approx(half.extract.kg));
}

TEST_CASE("water in the mash and sparge") {
    const auto plan = planned(simple(), need(84));
    CHECK(plan.strikeAndInfusion.l == Approx(3 * plan.gristMass.kg));
    // at 20 C: what is in the kettle before the boil and what the grain holds
    CHECK(plan.sparge.l == Approx(plan.preBoilHot.l * .96 + .96 * plan.gristMass.kg - plan.strikeAndInfusion.l));
    CHECK(plan.sparge.l > 0);
    CHECK(plan.preBoilGravity.p < 12);
    // the same extract in more wort
    CHECK(extractPerLitre(plan.preBoilGravity).gPerL * plan.preBoilHot.l * .96 ==
          Approx(extractPerLitre({12}).gPerL * plan.postBoil.l));
}

TEST_CASE("hops by the mean gravity of the boil and the wort after it") {
    BrewInput input = simple();
    input.recipe.hops = {{"bitter", {.08}, {60}, {.7}}, {"late", {.05}, {10}, {.3}}};
    const auto plan = planned(input, need(84));
    const SpecificGravity mean = (toGravity(plan.preBoilGravity) + toGravity({12})) / 2;
    REQUIRE(plan.hops.size() == 2);
    CHECK(plan.hops[0].brings.ibu == Approx(7));
    CHECK(plan.hops[1].brings.ibu == Approx(3));
    for (const auto& hop : plan.hops)
        CHECK(tinsethIbu(hop.mass, hop.alpha, plan.postBoil, mean, hop.boiled).ibu == Approx(hop.brings.ibu));
    CHECK(plan.hops[0].name == "bitter");
    CHECK(plan.bitterness.ibu == 10);
    // a fifth of a gram in the mean gravity's favour: neither the first nor the last gravity
    CHECK(mean < toGravity({12}));
    CHECK(mean > toGravity(plan.preBoilGravity));
}

TEST_CASE("no hops named: one addition for the whole boil") {
    BrewInput input = simple();
    input.recipe.boil = {90};
    const auto plan = planned(input, need(84));
    REQUIRE(plan.hops.size() == 1);
    CHECK(plan.hops[0].boiled.min == 90);
    CHECK(plan.hops[0].brings.ibu == 10);
    CHECK(plan.hops[0].mass.g > 0);
    input.recipe.bitterness = {0};
    CHECK(planned(input, need(84)).hops[0].mass.g == 0);
}

TEST_CASE("shares of bitterness that miss one by a little are made whole") {
    BrewInput input = simple();
    input.recipe.hops = {{"a", {.05}, {60}, {.5}}, {"b", {.05}, {60}, {.498}}};
    const auto plan = planned(input, need(84));
    CHECK(plan.hops[0].brings.ibu + plan.hops[1].brings.ibu == Approx(10));
}

TEST_CASE("colour, beer and yeast are passed on") {
    BrewInput input = simple();
    Grain dark = malt("dark");
    dark.colour = {60};
    input.grist = {{malt("pilsner"), {.9}, false}, {dark, {.1}, false}};
    input.yeast.primaryDays = 18;
    const auto plan = planned(input, need(84));
    const std::array<ColouredMass, 2> coloured{ColouredMass{plan.grist[0].mass, Ebc{3}},
                                               ColouredMass{plan.grist[1].mass, Ebc{60}}};
    CHECK(plan.colour.ebc == Approx(wortColour(coloured, plan.postBoil).ebc));
    CHECK(plan.colour > planned(simple(), need(84)).colour);
    CHECK(plan.originalGravity.p == 12);
    CHECK(plan.finalGravity.p == 2.3);
    CHECK(plan.alcohol.pct == 5.2);
    CHECK(plan.yeastName == "ale yeast");
    CHECK(plan.primaryDays == 18);
}

namespace {

std::string refused(const BrewInput& input, const BatchNeed& batch, const Equipment& kit = {},
                    const RefillBeer& fresh = beer()) {
    const auto plan = planBrew(input, fresh, kit, batch);
    REQUIRE_FALSE(plan);
    CHECK(builtInTexts().has(plan.error().cause.key));
    CHECK(builtInTexts().has(plan.error().remedy.key));
    CHECK(render(plan.error().cause).find('{') == std::string::npos);
    return plan.error().path;
}

} // namespace

TEST_CASE("a batch that cannot be made is refused at its field") {
    constexpr double nan = std::numeric_limits<double>::quiet_NaN();
    for (const double litres : {0., -5., nan, 1e9, std::numeric_limits<double>::infinity()})
        CHECK(refused(simple(), need(litres)) == "/volume_l");
    BatchNeed batch = need(0);
    batch.fixedBrewLength = Litres{50};
    CHECK(planned(simple(), batch).leftOver.l == Approx(47)); // all of it for topping
    batch.fixedBrewLength = Litres{-1};
    CHECK(refused(simple(), batch) == "/brew_length_l");
    batch = need(50);
    batch.margin = {-.1};
    CHECK(refused(simple(), batch) == "/margin_share");
}

TEST_CASE("a kit that cannot be brewed with is refused at its field") {
    const auto kit = [](auto change) {
        Equipment changed;
        change(changed);
        return refused(simple(), need(50), changed);
    };
    CHECK(kit([](auto& k) { k.efficiency = {0}; }) == "/equipment/efficiency_share");
    CHECK(kit([](auto& k) { k.efficiency = {1.2}; }) == "/equipment/efficiency_share");
    CHECK(kit([](auto& k) { k.fermenterLoss = {1}; }) == "/equipment/fermenter_loss_share");
    CHECK(kit([](auto& k) { k.shrinkage = {.5}; }) == "/equipment/shrinkage_share");
    CHECK(kit([](auto& k) { k.transferLoss = {-1}; }) == "/equipment/transfer_loss_l");
    CHECK(kit([](auto& k) { k.kettleLoss = {-1}; }) == "/equipment/kettle_loss_l");
    CHECK(kit([](auto& k) { k.boilOff = {-1}; }) == "/equipment/boil_off_l_h");
}

TEST_CASE("a grist without extract and hops without force are refused") {
    RefillBeer raw = beer();
    raw.conversion = 0;
    CHECK(refused(simple(), need(50), {}, raw) == "/grist");
    BrewInput input = simple();
    input.recipe.hops = {{"good", {.05}, {60}, {.5}}, {"late", {.05}, {0}, {.5}}};
    CHECK(refused(input, need(50)) == "/hops/1");
    input.recipe.hops = {{"spent", {0}, {60}, {1}}};
    CHECK(refused(input, need(50)) == "/hops/0");
    input.recipe.hops = {{"aroma", {.05}, {0}, {0}}, {"bitter", {.05}, {60}, {1}}};
    CHECK(planned(input, need(50)).hops[0].mass.g == 0);
}
