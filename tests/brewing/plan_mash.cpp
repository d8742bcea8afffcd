// SPDX-License-Identifier: GPL-3.0-or-later
// Mash stages of a sized brew: strike, infusions, heating, late grain.
#include "plan_support.h"

#include "brewing/heat.h"
#include "support/property.h"

#include <cmath>

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::plan_tests;
using How = MashStage::How;

namespace {

BrewInput stepped(MashPath path, bool late = false) {
    BrewInput input = simple();
    input.recipe.mash = {{{45}, {20}}, {{66}, {60}}};
    input.recipe.path = path;
    input.recipe.liquorToGrist = {2.5};
    if (late)
        input.grist = {{malt("pilsner"), {.9}, false}, {oats(), {.1}, true}};
    return input;
}

} // namespace

TEST_CASE("a single rest is one strike") {
    const auto plan = planned(simple(), need(84));
    REQUIRE(plan.mash.size() == 1);
    const auto& strike = plan.mash[0];
    CHECK(strike.how == How::strike);
    CHECK(strike.temperature.c == 66);
    CHECK(strike.rest.min == 60);
    CHECK(strike.water.l == Approx(3 * plan.gristMass.kg));
    CHECK(strike.waterTemperature == strikeTemperature({66}, plan.gristMass, {18}, strike.water, {6}, {18}));
    CHECK(strike.mashVolume.l == Approx((3 + .67) * plan.gristMass.kg));
    CHECK(plan.mashVolume == strike.mashVolume);
}

TEST_CASE("a jump goes by near-boiling water, a ramp by the kit's heat") {
    const auto jump = planned(stepped(MashPath::jump), need(60));
    REQUIRE(jump.mash.size() == 2);
    CHECK(jump.mash[1].how == How::infusion);
    CHECK(jump.mash[1].waterTemperature.c == 96);
    // 21 degrees for .41 kg/kg of malt, 2.5 of water and the tun, from 30 degrees of water
    CHECK(jump.mash[1].water.l == Approx(.7 * ((.41 + 2.5) * jump.gristMass.kg + 6)));
    CHECK(jump.mash[1].heating.min == 0);
    CHECK(jump.strikeAndInfusion.l == Approx(jump.mash[0].water.l + jump.mash[1].water.l));
    CHECK(jump.mashVolume.l == Approx(jump.strikeAndInfusion.l + .67 * jump.gristMass.kg));

    Equipment slow;
    slow.heatingRate = {.5};
    const auto ramp = planned(stepped(MashPath::ramp), need(60), slow);
    CHECK(ramp.mash[1].how == How::heat);
    CHECK(ramp.mash[1].heating.min == Approx(42));
    CHECK(ramp.mash[1].water.l == 0);
    CHECK(ramp.strikeAndInfusion == ramp.mash[0].water);
    CHECK(ramp.mashVolume == ramp.mash[0].mashVolume);
}

TEST_CASE("a kit that cannot heat infuses") {
    Equipment cold;
    cold.heatingRate = {0};
    CHECK(planned(stepped(MashPath::ramp), need(60), cold).mash[1].how == How::infusion);
}

TEST_CASE("late grain is warmed by the last step, and said to cool the mash") {
    const auto plan = planned(stepped(MashPath::jump, true), need(60));
    const double early = plan.grist[0].mass.kg, late = plan.grist[1].mass.kg;
    CHECK(plan.mash[0].water.l == Approx(2.5 * (early + late)));
    CHECK(plan.mash[0].mashVolume.l == Approx(plan.mash[0].water.l + .67 * early));
    CHECK(plan.mash[1].mashVolume.l == Approx(plan.strikeAndInfusion.l + .67 * (early + late)));
    // all heat together: grain and tun at 18, the first rest, the infusion
    const double before = (.41 * early + plan.mash[0].water.l + 6) * 45 + plan.mash[1].water.l * 96;
    const double all = .41 * (early + late) + plan.strikeAndInfusion.l + 6;
    CHECK((before + .41 * late * 18) / all == Approx(66).margin(1e-9));
    const auto* finding = find(plan.findings, "brewing.late_cools");
    CHECK(argument<Kilograms>(finding, "late").kg == Approx(late));
    CHECK(argument<Celsius>(finding, "before").c == Approx(before / (all - .41 * late)).margin(1e-9));
    const double drop = argument<Celsius>(finding, "before").c - argument<Celsius>(finding, "rest").c;
    CHECK(drop > .3);
    CHECK(drop < 3);
    CHECK_FALSE(has(planned(stepped(MashPath::jump), need(60)).findings, "brewing.late_cools"));
}

TEST_CASE("with a ramp the mash is heated past the rest before the late grain") {
    const auto plan = planned(stepped(MashPath::ramp, true), need(60));
    const auto before = argument<Celsius>(find(plan.findings, "brewing.late_cools"), "before");
    CHECK(plan.mash[1].heating.min == Approx(before.c - 45)); // at 1 C a minute
    CHECK(before.c > 66);
}

TEST_CASE("every infusion leaves its rest's temperature, whatever the mash") {
    CHECK_PROPERTY("temperatures", [] {
        BrewInput input = simple();
        input.recipe.liquorToGrist = {*rc::gen::inRange(18, 40) / 10.0};
        input.recipe.mash.clear();
        double temperature = *rc::gen::inRange(380, 500) / 10.0;
        const int rests = *rc::gen::inRange(1, 5);
        for (int i = 0; i < rests; ++i, temperature += *rc::gen::inRange(0, 90) / 10.0)
            input.recipe.mash.push_back({{temperature}, {20}});
        const double lateShare = rests > 1 ? *rc::gen::inRange(0, 30) / 100.0 : 0;
        input.grist = {{malt("pilsner"), {1 - lateShare}, false}, {oats(), {lateShare}, true}};
        const Equipment kit;
        const auto plan = planBrew(input, beer(), kit, need(60));
        RC_ASSERT(plan);
        RC_ASSERT(plan->mash.size() == static_cast<std::size_t>(rests));
        const double early = plan->grist[0].mass.kg, late = plan->grist[1].mass.kg;
        double heat = (.41 * early + 6) * 18, mass = .41 * early + 6;
        for (std::size_t i = 0; i < plan->mash.size(); ++i) {
            const auto& stage = plan->mash[i];
            heat += stage.water.l * stage.waterTemperature.c;
            mass += stage.water.l;
            if (i > 0 && i + 1 == plan->mash.size()) {
                heat += .41 * late * 18;
                mass += .41 * late;
            }
            RC_ASSERT(std::abs(heat / mass - stage.temperature.c) < 1e-9);
            if (i > 0)
                RC_ASSERT(stage.mashVolume >= plan->mash[i - 1].mashVolume);
        }
    });
}
