// SPDX-License-Identifier: GPL-3.0-or-later
#include "brewing/plan_notes.h"

#include "brewing/grist.h"
#include "brewing/heat.h"
#include "quantity/constants.h"

#include <algorithm>

namespace staveline::brewing {
namespace {

constexpr double nothing = 1e-6; ///< litres below which no finding is worth a word

double shareOf(const BrewInput& input, bool (*wanted)(const ingredient::Grain&)) {
    double share = 0;
    for (const auto& part : input.grist)
        share += wanted(part.grain) ? part.share.of1 : 0;
    return share;
}
bool isRyeLike(const ingredient::Grain& grain) {
    return grain.arabinoxylan >= constants::plan::ryeLike;
}
bool isHusk(const ingredient::Grain& grain) {
    return grain.kind == ingredient::GrainKind::husk;
}
bool isGlucanRich(const ingredient::Grain& grain) {
    return !isRyeLike(grain) && grain.isGlucanRich();
}

/// The liquor-to-grist ratio at which a quantity that grows with it shrinks by `excess`.
LitresPerKilogram thinnerBy(const PlanFacts& facts, Litres excess, Litres MashWater::*quantity) {
    const double ratio = facts.input.recipe.liquorToGrist.lPerKg;
    const auto more = mashWater(facts.input.recipe, facts.equipment, facts.load, {ratio + 1});
    return {ratio - excess / (more.*quantity - facts.water.*quantity)};
}

/// The batch into the fermenter whose mash just fits. The mash grows with the grist, the heat of the tun does not.
Litres batchThatFits(const PlanFacts& facts, Litres over) {
    const MashLoad half{facts.load.early / 2, facts.load.late / 2};
    const auto halfMash = mashWater(facts.input.recipe, facts.equipment, half, facts.input.recipe.liquorToGrist);
    const double part = 1 - over / ((facts.water.volume - halfMash.volume) * 2);
    return std::max(Litres{0}, facts.volumes.cooled * part - facts.equipment.kettleLoss);
}

void checkTun(const PlanFacts& facts, std::vector<Message>& findings) {
    const Litres over = facts.water.volume - facts.equipment.mashTun;
    if (over.l <= nothing)
        return;
    const auto ratio = thinnerBy(facts, over, &MashWater::volume);
    if (ratio.lPerKg >= constants::plan::thickestMash)
        findings.push_back(say("brewing.tun_thicker").with("over", over).with("ratio", ratio));
    else
        findings.push_back(say("brewing.tun_split").with("over", over).with("fits", batchThatFits(facts, over)));
}

void checkKettle(const PlanFacts& facts, std::vector<Message>& findings) {
    const Litres over = facts.volumes.preBoilHot - facts.equipment.kettle;
    if (over.l <= nothing)
        return;
    const Litres fits = kettleFits(facts.equipment, facts.input.recipe.boil);
    findings.push_back(say("brewing.kettle_small").with("over", over).with("fits", std::max(Litres{0}, fits)));
}

void checkFermenter(const PlanFacts& facts, std::vector<Message>& findings) {
    const Litres over = facts.volumes.intoFermenter - facts.equipment.fermenter;
    if (over.l > nothing)
        findings.push_back(say("brewing.fermenter_small").with("over", over).with("holds", facts.equipment.fermenter));
    const Litres missing = facts.need.intoVessel - facts.volumes.delivered;
    if (missing.l > nothing)
        findings.push_back(say("brewing.brew_short").with("missing", missing).with("wanted", facts.need.intoVessel));
}

void checkWater(const PlanFacts& facts, std::vector<Message>& findings) {
    const Litres over = waterTooMuch(facts);
    if (over.l > nothing) {
        const auto ratio = thinnerBy(facts, over, &MashWater::water);
        if (ratio.lPerKg >= constants::plan::thickestMash)
            findings.push_back(say("brewing.water_thicker").with("over", over).with("ratio", ratio));
        else
            findings.push_back(say("brewing.water_heat").with("over", over));
    }
    if (facts.water.stages.empty())
        return;
    const Celsius strike = facts.water.stages.front().waterTemperature;
    if (strike > hottestWater(facts.equipment) && strike <= facts.equipment.waterBoils)
        findings.push_back(say("brewing.strike_too_hot").with("needed", strike));
}

/// The thinnest start that strike water from the kettle is hot enough for.
LitresPerKilogram thinEnough(const PlanFacts& facts) {
    const MashStage& strike = facts.water.stages.front();
    const double heat = (strike.waterTemperature - strike.temperature).c * strike.water.l;
    return {heat / (hottestWater(facts.equipment) - strike.temperature).c / facts.load.all().kg};
}

void checkLateGrain(const PlanFacts& facts, std::vector<Message>& findings) {
    if (facts.load.late.kg <= 0 || facts.water.stages.empty())
        return;
    const Celsius rest = facts.water.stages.back().temperature;
    findings.push_back(say("brewing.late_cools")
                           .with("late", facts.load.late)
                           .with("before", facts.water.beforeLateGrain)
                           .with("rest", rest));
}

void checkGrist(const PlanFacts& facts, std::vector<Message>& findings) {
    if (runOffRisk(facts.input) >= 1 - 1e-9)
        findings.push_back(say("brewing.run_off_slow")
                               .with("glucan", Share{shareOf(facts.input, isGlucanRich)})
                               .with("rye", Share{shareOf(facts.input, isRyeLike)})
                               .with("rest", Celsius{45}));
    if (const GramsPerLitre acid{facts.beer.maltAcid}; acid.gPerL >= constants::plan::acidTold)
        findings.push_back(say("brewing.malt_acid")
                               .with("acid", acid)
                               .with("low", acid * constants::grain::lacticLeast)
                               .with("high", acid * constants::grain::lacticMost));
    const double power = convertingPower(facts.input.grist);
    if (power < constants::plan::lowPower)
        findings.push_back(say("brewing.power_low")
                               .with("power", Number{power, 0})
                               .with("least", Number{constants::plan::lowPower, 0}));
    if (!facts.beer.opens())
        findings.push_back(say("brewing.starch_closed").with("opened", Share{facts.beer.opened}));
    if (!facts.beer.converted())
        findings.push_back(say("brewing.not_converted").with("starch", Share{facts.beer.starch}));
}

} // namespace

double runOffRisk(const BrewInput& input) {
    const double stickiness = shareOf(input, isGlucanRich) / constants::plan::glucanLimit +
                              shareOf(input, isRyeLike) / constants::plan::ryeLimit;
    return stickiness / (1 + shareOf(input, isHusk) / constants::plan::hullsHalve);
}

Litres waterTooMuch(const PlanFacts& facts) {
    const Litres runsOff = facts.water.water - Litres{facts.equipment.absorption.lPerKg * facts.load.all().kg};
    return std::max(Litres{0}, runsOff - facts.volumes.preBoil);
}

std::optional<Fault> strikeBoils(const PlanFacts& facts) {
    if (facts.water.stages.empty() || facts.water.stages.front().waterTemperature <= facts.equipment.waterBoils)
        return {};
    const LitresPerKilogram ratio = thinEnough(facts);
    return Fault{FaultKind::notPossible, "/liquor_to_grist_l_kg",
                 say("brewing.strike_boils")
                     .with("needed", facts.water.stages.front().waterTemperature)
                     .with("boils", facts.equipment.waterBoils),
                 say(ratio.lPerKg <= constants::plan::thinnestMash ? "brewing.strike_boils.remedy"
                                                                   : "brewing.strike_boils.remedy.tun")
                     .with("ratio", ratio)};
}

std::vector<Message> planFindings(const PlanFacts& facts) {
    std::vector<Message> findings;
    for (auto* check : {checkGrist, checkWater, checkLateGrain, checkTun, checkKettle, checkFermenter})
        check(facts, findings);
    return findings;
}

} // namespace staveline::brewing
