// SPDX-License-Identifier: GPL-3.0-or-later
#include "brewing/heat.h"
#include "brewing/plan_notes.h"
#include "quantity/constants.h"

#include <algorithm>

namespace staveline::brewing {
namespace {

using Cautions = std::vector<Message>;

bool anyGrain(const BrewInput& input, bool (*wanted)(const BrewInput::Part&)) {
    return std::any_of(input.grist.begin(), input.grist.end(), wanted);
}

/// Very hot strike water is mostly heat for a cold tun.
void strikeCautions(const PlanFacts& facts, Cautions& cautions) {
    if (facts.water.stages.empty())
        return;
    const MashStage& strike = facts.water.stages.front();
    const Equipment& kit = facts.equipment;
    if (strike.waterTemperature < Celsius{constants::plan::preheat} || strike.waterTemperature > kit.waterBoils)
        return;
    const Kilograms mashedIn = facts.water.stages.size() > 1 ? facts.load.early : facts.load.all();
    const Celsius warm = strikeTemperature(strike.temperature, mashedIn, kit.grainTemperature, strike.water,
                                           kit.tunWaterEquivalent, strike.temperature);
    cautions.push_back(say("caution.mash.preheat").with("strike", strike.waterTemperature).with("warm", warm));
}

void mashCautions(const PlanFacts& facts, Cautions& cautions) {
    const auto& [input, beer, equipment, need, volumes, water, load] = facts;
    const auto hot = [](const MashStage& stage) { return stage.water.l > 0 && stage.waterTemperature >= scalding; };
    if (std::any_of(water.stages.begin(), water.stages.end(), hot))
        cautions.push_back(say("caution.mash.hotLiquor").with("scalds", scalding));
    if (anyGrain(input, [](auto& part) { return part.grain.kind == ingredient::GrainKind::smoked; }))
        cautions.push_back(say("caution.mash.smokeNote"));
    const bool coolRest = !water.stages.empty() && water.stages.front().temperature < gelatinising;
    if (coolRest && anyGrain(input, [](auto& part) { return part.grain.isRaw() && !part.late; }))
        cautions.push_back(say("caution.mash.restEatsGlucan"));
}

void kettleCautions(const PlanFacts& facts, Cautions& cautions) {
    if (facts.input.recipe.preSoured.of1 > 0) {
        cautions.push_back(say("caution.kettle.preSour"));
        cautions.push_back(say("caution.mash.acid")); // the same acid, and the first step where it may be at hand
    }
    if (facts.input.recipe.boil.min > 0)
        cautions.push_back(say("caution.kettle.hotWort"));
    if (facts.volumes.preBoilHot.l > constants::plan::headspaceLimit * facts.equipment.kettle.l)
        cautions.push_back(say("caution.kettle.boilOver"));
}

void yeastCautions(const PlanFacts& facts, Cautions& cautions) {
    if (facts.input.yeast.diastatic())
        cautions.push_back(say("caution.yeast.diastatic"));
    if (facts.input.yeast.killerPositive)
        cautions.push_back(say("caution.yeast.killer"));
}

void fermenterCautions(const PlanFacts& facts, Cautions& cautions) {
    const Litres wort = facts.volumes.intoFermenter, room = facts.equipment.fermenter;
    cautions.push_back(say("caution.fermenter.cleaners")); // what the wort goes into was cleaned that day
    if (facts.beer.hexoseTaken > 0)
        cautions.push_back(
            say("caution.fermenter.gas")
                .with("gas", roughly(Litres{constants::plan::gasPerHexose * facts.beer.hexoseTaken * wort.l})));
    if (wort.l > constants::plan::headspaceLimit * room.l)
        cautions.push_back(say("caution.fermenter.headspace").with("wort", wort).with("fermenter", room));
    if (facts.input.recipe.sugarShare.of1 > 0)
        cautions.push_back(say("caution.fermenter.sugarOut"));
}

void refillCautions(const PlanFacts& facts, Cautions& cautions) {
    cautions.push_back(say("caution.refill.vented"));
    if (const PercentVol limit{constants::alcoholBrakes}; facts.beer.alcohol > limit)
        cautions.push_back(say("caution.refill.strongBeer").with("alcohol", facts.beer.alcohol).with("limit", limit));
}

} // namespace

Cautions planCautions(const PlanFacts& facts) {
    Cautions cautions;
    for (auto* step : {strikeCautions, mashCautions, kettleCautions, yeastCautions, fermenterCautions, refillCautions})
        step(facts, cautions);
    return cautions;
}

} // namespace staveline::brewing
