// SPDX-License-Identifier: GPL-3.0-or-later
#include "brewing/plan_notes.h"

#include <algorithm>

namespace staveline {
namespace {

void mashCautions(const PlanFacts& facts, std::vector<Message>& cautions) {
    Celsius hottest{0};
    for (const auto& stage : facts.water.stages)
        if (stage.water.l > 0)
            hottest = std::max(hottest, stage.waterTemperature);
    if (hottest >= scalding)
        cautions.push_back(say("caution.mash.hot_liquor").with("temperature", hottest));
    for (const auto& part : facts.input.grist)
        if (part.grain.kind == GrainKind::smoked) {
            cautions.push_back(say("caution.mash.smoked").with("grain", part.grain.name));
            break;
        }
}

void boilCautions(const PlanFacts& facts, std::vector<Message>& cautions) {
    const auto& recipe = facts.input.recipe;
    if (recipe.preSoured.of1 > 0) {
        cautions.push_back(say("caution.boil.pre_sour").with("share", recipe.preSoured));
        cautions.push_back(say("caution.boil.strong_acid"));
    }
    if (facts.volumes.preBoilHot.l > headspaceLimit * facts.equipment.kettle.l)
        cautions.push_back(
            say("caution.boil.over").with("volume", facts.volumes.preBoilHot).with("kettle", facts.equipment.kettle));
}

void fermentCautions(const PlanFacts& facts, std::vector<Message>& cautions) {
    const auto& [input, beer, equipment, need, volumes, water, load] = facts;
    const double gas = gasPerHexose * std::max(0.0, beer.hexoseTaken) * volumes.intoFermenter.l;
    cautions.push_back(say("caution.ferment.gas").with("gas", Litres{gas}));
    if (volumes.intoFermenter.l > headspaceLimit * equipment.fermenter.l)
        cautions.push_back(say("caution.ferment.headspace")
                               .with("volume", volumes.intoFermenter)
                               .with("fermenter", equipment.fermenter));
    if (input.yeast.diastatic())
        cautions.push_back(say("caution.ferment.diastatic").with("yeast", input.yeast.name));
    if (input.yeast.killerPositive)
        cautions.push_back(say("caution.ferment.killer").with("yeast", input.yeast.name));
}

void refillCautions(const PlanFacts& facts, std::vector<Message>& cautions) {
    if (facts.input.recipe.sugarShare.of1 > 0)
        cautions.push_back(say("caution.refill.sugar_first").with("sugar", facts.input.sugar.name));
    if (facts.input.yeast.diastatic())
        cautions.push_back(say("caution.refill.dry_first").with("gravity", SpecificGravity{1.002}));
    cautions.push_back(say("caution.refill.vent"));
}

} // namespace

std::vector<Message> planCautions(const PlanFacts& facts) {
    std::vector<Message> cautions;
    for (auto* step : {mashCautions, boilCautions, fermentCautions, refillCautions})
        step(facts, cautions);
    return cautions;
}

} // namespace staveline
