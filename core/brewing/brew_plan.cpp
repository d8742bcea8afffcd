// SPDX-License-Identifier: GPL-3.0-or-later
#include "brewing/brew_plan.h"

#include "brewing/brew_volumes.h"
#include "brewing/hops.h"
#include "brewing/mash_water.h"
#include "brewing/plan_notes.h"
#include "quantity/colour.h"
#include "quantity/density.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace staveline::brewing {
namespace {

using Check = std::optional<Fault>;

/// Written so that "not a number" is outside too.
Check outside(const char* path, double value, double low, double high, const Message& cause, const char* remedy) {
    if (value >= low && value <= high)
        return {};
    return Fault{FaultKind::input, path, cause, say(remedy)};
}

Check checkNeed(const BatchNeed& need, const Equipment& kit) {
    constexpr double least = .01, most = 1e6; // L
    const Litres wanted = need.fixedBrewLength.value_or(need.intoVessel);
    const auto noBatch = say("brewing.no_batch").with("volume", wanted);
    const auto badKit = say("brewing.bad_kit").with("kit", kit.name);
    for (const auto& check :
         {outside("/volume_l", need.intoVessel.l, need.fixedBrewLength ? 0 : least, most,
                  say("brewing.no_batch").with("volume", need.intoVessel), "brewing.no_batch_remedy"),
          outside("/brew_length_l", wanted.l, least, most, noBatch, "brewing.no_batch_remedy"),
          outside("/margin_share", need.margin.of1, 0, 1, badKit, "brewing.kit_margin"),
          outside("/equipment/efficiency_share", kit.efficiency.of1, .05, 1, badKit, "brewing.kit_efficiency"),
          outside("/equipment/fermenter_loss_share", kit.fermenterLoss.of1, 0, .9, badKit, "brewing.kit_losses"),
          outside("/equipment/transfer_loss_l", kit.transferLoss.l, 0, most, badKit, "brewing.kit_losses"),
          outside("/equipment/kettle_loss_l", kit.kettleLoss.l, 0, most, badKit, "brewing.kit_losses"),
          outside("/equipment/boil_off_l_h", kit.boilOff.lPerH, 0, most, badKit, "brewing.kit_losses"),
          outside("/equipment/shrinkage_share", kit.shrinkage.of1, 0, .2, badKit, "brewing.kit_losses")})
        if (check)
            return check;
    return {};
}

/// Extract in the kettle from a kilogram of it as weighed.
double extractWon(const ingredient::Grain& grain, const RefillBeer& beer, const Equipment& equipment) {
    const double all = grain.dryExtract();
    return grain.mashed() ? all * equipment.efficiency.of1 * beer.conversion : all;
}

MashLoad weighGrist(BrewPlan& plan, const BrewInput& input, const RefillBeer& beer, const Equipment& equipment) {
    double perKilogram = 0;
    for (const auto& part : input.grist)
        perKilogram += part.share.of1 * extractWon(part.grain, beer, equipment);
    const Kilograms fromSugar = plan.extract * input.recipe.sugarShare.of1;
    const Kilograms grist = (plan.extract - fromSugar) / perKilogram;
    MashLoad load;
    for (const auto& part : input.grist) {
        const Kilograms mass = grist * part.share.of1;
        plan.grist.push_back({part.grain.id, part.grain.name, mass, part.share, part.late});
        plan.gristMass += mass;
        if (part.grain.mashed())
            (part.late ? load.late : load.early) += mass;
    }
    if (fromSugar.kg > 0) {
        plan.sugar = fromSugar / input.sugar.dryExtract();
        plan.sugarName = input.sugar.name;
    }
    return load;
}

std::vector<HopAddition> additions(const Recipe& recipe) {
    if (!recipe.hops.empty())
        return recipe.hops;
    HopAddition whole;
    whole.boiled = recipe.boil;
    return {whole};
}

bool canBring(const HopAddition& hop) {
    return std::isfinite(hopsFor(Ibu{1}, hop.alpha, Litres{1}, SpecificGravity{1.05}, hop.boiled).g);
}

tl::unexpected<Fault> bringsNothing(std::size_t place, const HopAddition& hop) {
    return badInput("/hops/" + std::to_string(place), say("brewing.hops_nothing").with("name", hop.name),
                    say("brewing.hops_nothing_remedy"));
}

Result<std::vector<WeighedHops>> weighHops(const BrewPlan& plan, const Recipe& recipe) {
    const auto gravity = (toGravity(plan.preBoilGravity) + toGravity(plan.originalGravity)) / 2;
    const auto hops = additions(recipe);
    double sum = 0;
    for (const auto& hop : hops)
        sum += hop.ofBitterness.of1;
    std::vector<WeighedHops> weighed;
    for (std::size_t i = 0; i < hops.size(); ++i) {
        const auto& hop = hops[i];
        const Ibu brings = recipe.bitterness * (sum > 0 ? hop.ofBitterness.of1 / sum : 0);
        const Grams mass = hopsFor(brings, hop.alpha, plan.postBoil, gravity, hop.boiled);
        if (!std::isfinite(mass.g))
            return bringsNothing(i, hop);
        weighed.push_back({hop.name, mass, hop.alpha, hop.boiled, brings});
    }
    return weighed;
}

Ebc colourOf(const BrewPlan& plan, const BrewInput& input) {
    std::vector<ColouredMass> coloured;
    for (std::size_t i = 0; i < input.grist.size(); ++i)
        coloured.push_back({plan.grist[i].mass, input.grist[i].grain.colour});
    coloured.push_back({plan.sugar, input.sugar.colour});
    return wortColour(coloured, plan.postBoil);
}

void takeVolumes(BrewPlan& plan, const BrewVolumes& volumes, const BatchNeed& need) {
    plan.intoVessel = need.intoVessel;
    plan.intoFermenter = volumes.intoFermenter;
    plan.leftOver = std::max(Litres{0}, volumes.delivered - need.intoVessel);
    plan.postBoil = volumes.cooled;
    plan.postBoilHot = volumes.postBoilHot;
    plan.preBoilHot = volumes.preBoilHot;
}

void takeBeer(BrewPlan& plan, const BrewInput& input, const RefillBeer& beer) {
    plan.finalGravity = beer.finalGravity;
    plan.alcohol = beer.alcohol;
    plan.bitterness = input.recipe.bitterness;
    plan.yeastName = input.yeast.name;
    plan.primaryDays = input.yeast.primaryDays;
}

} // namespace

Result<void> checkHopsBring(const Recipe& recipe) {
    const auto hops = additions(recipe);
    for (std::size_t i = 0; i < hops.size(); ++i)
        if (recipe.bitterness.ibu * hops[i].ofBitterness.of1 > 0 && !canBring(hops[i]))
            return bringsNothing(i, hops[i]);
    return {};
}

Result<BrewPlan> planBrew(const BrewInput& input, const RefillBeer& beer, const Equipment& equipment,
                          const BatchNeed& need) {
    if (auto bad = checkNeed(need, equipment))
        return fail(*std::move(bad));
    BrewPlan plan;
    const auto volumes = brewVolumes(need, equipment, input.recipe.boil);
    takeVolumes(plan, volumes, need);
    takeBeer(plan, input, beer);
    plan.originalGravity = input.recipe.originalGravity;
    plan.extract = {extractPerLitre(plan.originalGravity).gPerL * plan.postBoil.l / 1000};
    plan.preBoilGravity = platoFromExtract(plan.extract, volumes.preBoil);
    const auto load = weighGrist(plan, input, beer, equipment);
    if (!(std::isfinite(plan.gristMass.kg) && plan.gristMass.kg >= 0))
        return badInput("/grist", say("brewing.no_extract"), say("brewing.no_extract_remedy"));
    const auto water = mashWater(input.recipe, equipment, load, input.recipe.liquorToGrist);
    plan.mash = water.stages;
    plan.strikeAndInfusion = water.water;
    plan.mashVolume = water.volume;
    const Litres held{equipment.absorption.lPerKg * load.all().kg};
    plan.sparge = std::max(Litres{0}, volumes.preBoil + held - water.water);
    auto hops = weighHops(plan, input.recipe);
    if (!hops)
        return fail(std::move(hops).error());
    plan.hops = *std::move(hops);
    plan.colour = colourOf(plan, input);
    const PlanFacts facts{input, beer, equipment, need, volumes, water, load};
    plan.cannot = strikeBoils(facts);
    plan.findings = planFindings(facts);
    plan.cautions = planCautions(facts);
    return plan;
}

} // namespace staveline::brewing
