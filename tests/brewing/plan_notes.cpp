// SPDX-License-Identifier: GPL-3.0-or-later
// Findings and cautions of a sized brew: when they are said, with which figures, and that their advice helps.
#include "plan_support.h"

#include "brewing/heat.h"
#include "brewing/plan_notes.h"
#include "quantity/constants.h"
#include "quantity/csv.h"
#include "resources/resources.h"

#include <map>

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::ingredient;
using namespace staveline::plan_tests;

namespace {

BrewInput withGrist(std::vector<BrewInput::Part> grist) {
    BrewInput input = simple();
    input.grist = std::move(grist);
    return input;
}
BrewInput jumping(double liquorToGrist) {
    BrewInput input = simple();
    input.recipe.mash = {{{45}, {20}}, {{66}, {60}}};
    input.recipe.liquorToGrist = {liquorToGrist};
    return input;
}

} // namespace

TEST_CASE("a plain brew that fits has no findings") {
    const auto plan = planned(simple(), need(84));
    CHECK(plan.findings.empty());
}

TEST_CASE("a mash too large for the tun: start thicker, and then it fits") {
    Equipment kit;
    kit.mashTun = {100};
    BrewInput input = jumping(3.0);
    const auto plan = planned(input, need(84), kit);
    const auto* finding = find(plan.findings, "brewing.tun_thicker");
    CHECK(argument<Litres>(finding, "over").l == Approx(plan.mashVolume.l - 100));
    const auto ratio = argument<LitresPerKilogram>(finding, "ratio");
    CHECK(ratio.lPerKg < 3);
    input.recipe.liquorToGrist = ratio;
    const auto thicker = planned(input, need(84), kit);
    CHECK(thicker.mashVolume.l == Approx(100).margin(1e-6));
    CHECK_FALSE(has(thicker.findings, "brewing.tun_thicker"));
}

TEST_CASE("a mash that would be too thick to stir: brew less, and then it fits") {
    Equipment kit;
    kit.mashTun = {60};
    const auto plan = planned(jumping(3.0), need(84), kit);
    CHECK_FALSE(has(plan.findings, "brewing.tun_thicker"));
    const auto fits = argument<Litres>(find(plan.findings, "brewing.tun_split"), "fits");
    CHECK(fits.l > 10);
    BatchNeed smaller = need(1);
    smaller.fixedBrewLength = fits;
    CHECK(planned(jumping(3.0), smaller, kit).mashVolume.l == Approx(60).margin(1e-6));
}

TEST_CASE("a kettle too small says how much it takes") {
    Equipment kit;
    kit.kettle = {100};
    const auto plan = planned(simple(), need(84), kit);
    const auto* finding = find(plan.findings, "brewing.kettle_small");
    CHECK(argument<Litres>(finding, "over").l == Approx(plan.preBoilHot.l - 100));
    BatchNeed smaller = need(1);
    smaller.fixedBrewLength = argument<Litres>(finding, "fits");
    const auto fitting = planned(simple(), smaller, kit);
    CHECK(fitting.preBoilHot.l == Approx(100));
    CHECK_FALSE(has(fitting.findings, "brewing.kettle_small"));
    kit.kettle = {5}; // less than what boils away
    CHECK(argument<Litres>(find(planned(simple(), need(84), kit).findings, "brewing.kettle_small"), "fits").l == 0);
}

TEST_CASE("a fermenter too small") {
    Equipment kit;
    kit.fermenter = {90};
    const auto plan = planned(simple(), need(84), kit);
    CHECK(argument<Litres>(find(plan.findings, "brewing.fermenter_small"), "over").l ==
          Approx(plan.intoFermenter.l - 90));
    kit.fermenter = plan.intoFermenter;
    CHECK_FALSE(has(planned(simple(), need(84), kit).findings, "brewing.fermenter_small"));
}

TEST_CASE("more mash water than the kettle wants: none to sparge, and less water helps") {
    BrewInput input = jumping(4.0);
    input.recipe.originalGravity = {16};
    const auto plan = planned(input, need(84));
    CHECK(plan.sparge.l == 0);
    const auto* finding = find(plan.findings, "brewing.water_thicker");
    const double runsOff = plan.strikeAndInfusion.l - .96 * plan.gristMass.kg;
    CHECK(argument<Litres>(finding, "over").l == Approx(runsOff - plan.preBoilHot.l * .96));
    input.recipe.liquorToGrist = argument<LitresPerKilogram>(finding, "ratio");
    const auto thicker = planned(input, need(84));
    CHECK(thicker.sparge.l == Approx(0).margin(1e-6));
    CHECK_FALSE(has(thicker.findings, "brewing.water_thicker"));

    input.recipe.originalGravity = {24};
    input.recipe.mash = {{{45}, {20}}, {{66}, {60}}, {{78}, {10}}};
    CHECK(has(planned(input, need(84)).findings, "brewing.water_heat"));
}

TEST_CASE("strike water beyond boiling") {
    BrewInput input = simple();
    input.recipe.mash = {{{78}, {30}}};
    input.recipe.liquorToGrist = {1.8};
    Equipment kit;
    kit.tunWaterEquivalent = {20};
    const auto plan = planned(input, need(84), kit);
    REQUIRE(plan.cannot);
    CHECK(plan.cannot->path == "/liquor_to_grist_l_kg");
    CHECK(argument<Celsius>(&plan.cannot->cause, "needed") == plan.mash[0].waterTemperature);
    CHECK(plan.mash[0].waterTemperature > Celsius{100});
    CHECK_FALSE(has(plan.findings, "brewing.strike_too_hot"));
    CHECK_FALSE(has(plan.cautions, "caution.mash.preheat"));

    input.recipe.liquorToGrist = argument<LitresPerKilogram>(&plan.cannot->remedy, "ratio");
    const auto thinner = planned(input, need(84), kit);
    CHECK_FALSE(thinner.cannot);
    CHECK(thinner.mash[0].waterTemperature.c == Approx(nearBoiling.c));
}

TEST_CASE("strike water that is boiling nearly, and where the kettle boils sooner") {
    BrewInput input = simple();
    Equipment kit;
    const auto strike = [&] { return planned(input, need(84), kit).mash[0].waterTemperature; };
    while (strike() < Celsius{97})
        kit.tunWaterEquivalent += Kilograms{.5};
    const auto plan = planned(input, need(84), kit);
    CHECK_FALSE(plan.cannot);
    CHECK(argument<Celsius>(find(plan.findings, "brewing.strike_too_hot"), "needed") == strike());
    kit.waterBoils = {95}; // some 1500 m up
    CHECK(planned(input, need(84), kit).cannot);
    input.recipe.mash.push_back({{72}, {10}});
    kit.tunWaterEquivalent = {0};
    CHECK(planned(input, need(84), kit).mash[1].waterTemperature.c == Approx(91));
}

TEST_CASE("a tun that no thinner mash makes up for is to be smaller or warm") {
    BrewInput input = simple();
    Equipment kit;
    kit.tunWaterEquivalent = {400};
    const auto plan = planned(input, need(84), kit);
    REQUIRE(plan.cannot);
    CHECK(plan.cannot->remedy.key == "brewing.strike_boils.remedy.tun");
}

TEST_CASE("very hot strike water says to warm the tun, and how hot is enough then") {
    BrewInput input = simple();
    Equipment kit;
    CHECK_FALSE(has(planned(input, need(84), kit).cautions, "caution.mash.preheat"));
    kit.tunWaterEquivalent = {20};
    const auto plan = planned(input, need(84), kit);
    REQUIRE(plan.mash[0].waterTemperature > Celsius{85});
    const Message* caution = find(plan.cautions, "caution.mash.preheat");
    CHECK(argument<Celsius>(caution, "strike") == plan.mash[0].waterTemperature);
    kit.tunWaterEquivalent = {0}; // what a warm tun takes
    CHECK(argument<Celsius>(caution, "warm").c == Approx(planned(input, need(84), kit).mash[0].waterTemperature.c));
    CHECK(has(plan.cautions, "caution.mash.hotLiquor"));
}

TEST_CASE("hops bring bitterness when they are boiled and have alpha acids") {
    Recipe recipe = simple().recipe;
    CHECK(checkHopsBring(recipe));
    recipe.boil = {0};
    CHECK(checkHopsBring(recipe).error().path == "/hops/0");
    recipe.bitterness = {0};
    CHECK(checkHopsBring(recipe));
    recipe.bitterness = {10};
    recipe.boil = {60};
    recipe.hops = {{"first", {.05}, {60}, {.7}}, {"late", {.05}, {0}, {.3}}};
    CHECK(checkHopsBring(recipe).error().path == "/hops/1");
    recipe.hops[1].ofBitterness = {0};
    CHECK(checkHopsBring(recipe));
}

TEST_CASE("glucan-rich grain from fifteen, rye from twenty per cent, or both together slow the run-off") {
    const auto slow = [](double oatShare, double ryeShare) {
        const auto input = withGrist({{malt("pilsner"), {1 - oatShare - ryeShare}, false},
                                      {oats(), {oatShare}, false},
                                      {rye(), {ryeShare}, false}});
        return has(planned(input, need(84)).findings, "brewing.run_off_slow");
    };
    CHECK(slow(.15, 0));
    CHECK_FALSE(slow(.145, 0));
    CHECK(slow(0, .2));
    CHECK_FALSE(slow(0, .195));
    CHECK(slow(.08, .1));
    CHECK_FALSE(slow(.07, .1));
    const auto input = withGrist({{malt("pilsner"), {.7}, false}, {oats(), {.2}, false}, {rye(), {.1}, false}});
    const auto plan = planned(input, need(84));
    const auto* finding = find(plan.findings, "brewing.run_off_slow");
    CHECK(argument<Share>(finding, "glucan").of1 == Approx(.2));
    CHECK(argument<Share>(finding, "rye").of1 == Approx(.1));
}

TEST_CASE("weak enzymes and a mash that does not convert") {
    Grain weak = malt("munich");
    weak.diastaticPowerWk = 90;
    const auto plan = planned(withGrist({{weak, {1}, false}}), need(84));
    CHECK(argument<Number>(find(plan.findings, "brewing.power_low"), "power").value == Approx(90));
    weak.diastaticPowerWk = 101;
    CHECK_FALSE(has(planned(withGrist({{weak, {1}, false}}), need(84)).findings, "brewing.power_low"));
    RefillBeer raw = beer();
    raw.starch = .05;
    CHECK(argument<Share>(find(planned(simple(), need(84), {}, raw).findings, "brewing.not_converted"), "starch").of1 ==
          .05);
    raw.starch = .02;
    CHECK_FALSE(has(planned(simple(), need(84), {}, raw).findings, "brewing.not_converted"));
}

TEST_CASE("a mash too cool to open the starch says how much it opens") {
    RefillBeer cool = beer();
    cool.opened = .4;
    const auto plan = planned(simple(), need(84), {}, cool);
    const auto* finding = find(plan.findings, "brewing.starch_closed");
    CHECK(argument<Share>(finding, "opened").of1 == .4);
    CHECK(render(*finding).starts_with("Only 40 % of the starch opens"));
    cool.opened = .85;
    CHECK_FALSE(has(planned(simple(), need(84), {}, cool).findings, "brewing.starch_closed"));
}

TEST_CASE("every finding reads in plain words") {
    Equipment small;
    small.mashTun = {40};
    small.kettle = {60};
    small.fermenter = {50};
    RefillBeer raw = beer();
    raw.starch = .05;
    Grain weak = malt("munich");
    weak.diastaticPowerWk = 70;
    BrewInput input = withGrist({{weak, {.8}, false}, {oats(), {.2}, true}});
    input.recipe.mash = {{{45}, {20}}, {{66}, {60}}, {{78}, {10}}};
    input.recipe.originalGravity = {18};
    BatchNeed batch = need(120);
    batch.fixedBrewLength = Litres{100};
    const auto plan = planned(input, batch, small, raw);
    CHECK(plan.findings.size() == 9);
    for (const auto& finding : plan.findings) {
        const auto text = render(finding);
        CAPTURE(text);
        CHECK(builtInTexts().has(finding.key));
        CHECK(text.find('{') == std::string::npos);
    }
}

TEST_CASE("cautions of any brew: hot water and wort, cleaners, gas, a vented bung") {
    const auto plain = planned(simple(), need(60));
    REQUIRE(plain.cautions.size() == 5);
    CHECK(has(plain.cautions, "caution.kettle.hotWort"));
    CHECK(has(plain.cautions, "caution.fermenter.cleaners"));
    BrewInput raw = simple();
    raw.recipe.boil = {0};
    raw.recipe.hops.clear();
    raw.recipe.bitterness = {0};
    CHECK_FALSE(has(planned(raw, need(60)).cautions, "caution.kettle.hotWort")); // nothing boils
    CHECK(argument<Celsius>(find(plain.cautions, "caution.mash.hotLiquor"), "scalds").c == 60);
    CHECK(has(plain.cautions, "caution.refill.vented"));
    // 90 g of hexose a litre give about 22 L of gas
    CHECK(argument<Litres>(find(plain.cautions, "caution.fermenter.gas"), "gas").l ==
          Approx(.241 * 90 * plain.intoFermenter.l));
    BrewInput cool = simple();
    cool.recipe.mash = {{{40}, {60}}};
    CHECK_FALSE(has(planned(cool, need(60)).cautions, "caution.mash.hotLiquor"));
}

TEST_CASE("cautions for full vessels") {
    const auto full = planned(simple(), need(100)); // 111 L into a fermenter of 120, 128 in a kettle of 130
    CHECK(has(full.cautions, "caution.kettle.boilOver"));
    CHECK(argument<Litres>(find(full.cautions, "caution.fermenter.headspace"), "wort") == full.intoFermenter);
    CHECK_FALSE(has(planned(simple(), need(70)).cautions, "caution.kettle.boilOver"));
    CHECK_FALSE(has(planned(simple(), need(70)).cautions, "caution.fermenter.headspace"));
}

TEST_CASE("a cool rest takes the body of raw grain that is in it, not of late grain or of malt") {
    const auto warned = [](double celsius, Grain grain, bool late) {
        BrewInput input = withGrist({{malt("pilsner"), {.9}, false}, {std::move(grain), {.1}, late}});
        input.recipe.mash = {{{celsius}, {20}}, {{66}, {60}}};
        return has(planned(input, need(60)).cautions, "caution.mash.restEatsGlucan");
    };
    CHECK(warned(45, oats(), false));
    CHECK_FALSE(warned(45, oats(), true));
    CHECK_FALSE(warned(62, oats(), false));
    CHECK_FALSE(warned(45, malt("wheat"), false));
}

TEST_CASE("a caution for beer so strong that lactics slow down, with its alcohol and the limit") {
    const auto of = [](double percent) {
        RefillBeer fresh = beer();
        fresh.alcohol = {percent};
        return planned(simple(), need(60), {}, fresh).cautions;
    };
    CHECK_FALSE(has(of(8), "caution.refill.strongBeer"));
    const auto said = of(8.2);
    const auto* strong = find(said, "caution.refill.strongBeer");
    CHECK(argument<PercentVol>(strong, "alcohol").pct == Approx(8.2));
    CHECK(argument<PercentVol>(strong, "limit").pct == 8);
}

TEST_CASE("cautions for what the recipe uses") {
    BrewInput input = simple();
    Grain smoked = malt("smoked");
    smoked.kind = GrainKind::smoked;
    input.grist = {{malt("pilsner"), {.9}, false}, {smoked, {.05}, false}, {smoked, {.05}, false}};
    input.recipe.preSoured = {.5};
    input.recipe.sugarShare = {.1};
    input.sugar = sucrose();
    input.yeast.takesDextrin = .5;
    input.yeast.killerPositive = true;
    const auto plan = planned(input, need(60));
    for (const auto* key : {"caution.mash.smokeNote", "caution.kettle.preSour", "caution.mash.acid",
                            "caution.yeast.diastatic", "caution.yeast.killer", "caution.fermenter.sugarOut"}) {
        CAPTURE(key);
        CHECK(has(plan.cautions, key));
        CHECK_FALSE(has(planned(simple(), need(60)).cautions, key));
    }
    CHECK(plan.cautions.size() == 11);
    for (const auto& caution : plan.cautions) {
        CAPTURE(caution.key);
        CHECK(builtInTexts().has(caution.key));
        CHECK(render(caution).find('{') == std::string::npos);
    }
}
