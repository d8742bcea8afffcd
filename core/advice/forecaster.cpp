// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/forecaster.h"

#include "advice/lever.h"

#include <algorithm>
#include <cmath>
#include <functional>

namespace staveline::advice {
namespace {

void mix(std::size_t& seed, double value) {
    seed ^= std::hash<double>{}(value) + 0x9e3779b97f4a7c15ULL + (seed << 6) + (seed >> 2);
}

Trajectory firstDraws(Trajectory trajectory, int cycles) {
    trajectory.draws.resize(static_cast<std::size_t>(cycles));
    return trajectory;
}

} // namespace

Litres refillOf(const AdviceInput& input, const Setting& setting) {
    const Litres stays = std::max(Litres{0}, input.volumeAtDraw - setting.draw); // a draw takes no more than is there
    return std::max(Litres{0}, input.fillTo - stays);
}

Share shareOf(const AdviceInput& input, const Setting& setting) {
    return {input.fillTo.l > 0 ? std::clamp(refillOf(input, setting) / input.fillTo, 0.0, 1.0) : 0.0};
}

Result<void> checkDraw(const AdviceInput& input, Litres draw, std::string path) {
    if (input.drawn && draw != input.base.draw)
        return badInput(std::move(path), say("advice.fault.drawn").with("drawn", input.base.draw),
                        say("advice.fault.drawn.remedy"));
    if (draw > input.volumeAtDraw)
        return badInput(std::move(path), say("advice.fault.drawLock").with("value", draw),
                        say("advice.fault.drawLock.remedy").with("low", Litres{0}).with("high", input.volumeAtDraw));
    return {};
}

std::size_t RecipeHash::operator()(const brewing::Recipe& recipe) const {
    std::size_t seed = std::hash<std::string>{}(recipe.yeast);
    for (const auto& part : recipe.grist)
        mix(seed, part.share.of1 + (part.late ? 2 : 0));
    for (const auto& step : recipe.mash) {
        mix(seed, step.temperature.c);
        mix(seed, step.minutes.min);
    }
    for (double number : {recipe.sugarShare.of1, recipe.mashPh.ph, recipe.originalGravity.p, recipe.bitterness.ibu,
                          recipe.preSoured.of1, recipe.path == brewing::MashPath::jump ? 1.0 : 0.0})
        mix(seed, number);
    return seed;
}

std::size_t ModelForecaster::SettingHash::operator()(const Setting& setting) const {
    auto seed = RecipeHash{}(setting.recipe);
    for (double number : {setting.draw.l, setting.interval.d, setting.temperature.c})
        mix(seed, number);
    return seed;
}

ModelForecaster::ModelForecaster(const AdviceInput& input) : input_(input), parameters_{input.parameters} {
    if (input.draws > 0)
        for (auto& draw : parameterDraws(input.parameters, input.draws))
            parameters_.push_back(draw);
    remaining_.resize(parameters_.size());
}

Result<ModelForecaster::Known*> ModelForecaster::known(const brewing::Recipe& recipe) {
    if (const auto found = recipes_.find(recipe); found != recipes_.end())
        return &found->second;
    auto resolved = resolve(recipe, *input_.pantry, input_.equipment.heatingRate);
    if (!resolved)
        return fail(under("/recipe", std::move(resolved).error()));
    return &recipes_.emplace(recipe, Known{*std::move(resolved), {}}).first->second;
}

const brewing::RefillBeer& ModelForecaster::beer(Known& known, std::size_t set) {
    const auto found = known.beers.find(set);
    return found != known.beers.end()
               ? found->second
               : known.beers.emplace(set, brew(known.input, parameters_[set].brew)).first->second;
}

const culture::VesselState& ModelForecaster::remainingBeer(Celsius temperature, std::size_t set) {
    auto& remaining = remaining_[set];
    if (const auto found = remaining.find(temperature.c); found != remaining.end())
        return found->second;
    const culture::AgeConditions wait{input_.toThisDraw, temperature, input_.oxygenPerYear, input_.apart, input_.today};
    return remaining.emplace(temperature.c, age(input_.state, wait, parameters_[set].culture)).first->second;
}

/// From a draw on, this one or one after so many more: the beer that remains has aged already.
forward::Plan ModelForecaster::planOf(const Setting& setting, std::size_t drawsOn) const {
    const Days until{input_.toThisDraw.d + static_cast<double>(drawsOn) * setting.interval.d};
    return {{0},          shareOf(input_, setting),  setting.interval, setting.temperature, input_.oxygenPerYear,
            input_.apart, after(input_.today, until)};
}

Result<ModelForecaster::Beers> ModelForecaster::beersOf(const Setting& setting) {
    const auto first = known(setting.recipe);
    if (!first)
        return fail(first.error());
    if (!hasAids(setting, input_.base, {*input_.pantry, input_.unavailable}))
        return Beers{*first, *first};
    const auto later = known(withoutAids(setting, input_.base, *input_.pantry).recipe);
    if (!later)
        return fail(later.error());
    return Beers{*first, *later};
}

/// The trajectory so far, taken on to `cycles` draws.
void ModelForecaster::extend(Trajectory& trajectory, const Setting& setting, const Beers& beers, std::size_t set,
                             int cycles) {
    while (static_cast<int>(trajectory.draws.size()) < cycles) {
        const bool first = trajectory.draws.empty();
        const auto& before = first ? remainingBeer(setting.temperature, set) : trajectory.draws.back().state;
        const auto& fresh = beer(first ? *beers.first : *beers.later, set);
        const forward::Prediction step =
            predict(parameters_[set], before, fresh, planOf(setting, trajectory.draws.size()));
        if (first)
            trajectory.thisDraw = step.thisDraw;
        trajectory.draws.push_back(step.nextDraw);
    }
}

Result<Trajectory> ModelForecaster::trajectory(const Setting& setting, std::size_t set, int cycles) {
    const auto beers = beersOf(setting);
    if (!beers)
        return fail(beers.error());
    auto& trajectory = trajectories_[setting][set];
    extend(trajectory, setting, *beers, set, cycles);
    return firstDraws(trajectory, cycles);
}

Scores ModelForecaster::settledScores(const Setting& setting, std::size_t set) {
    return trajectory(setting, set, settledCycles)->draws.back().scores;
}

Sizing ModelForecaster::sizing(const Setting& setting) {
    const auto recipe = known(setting.recipe);
    if (!recipe)
        return {.converted = false, .over = {0}, .findings = {recipe.error().cause}, .cautions = {}};
    const auto& fresh = beer(**recipe, 0);
    Sizing sizing{.converted = fresh.converted(), .over = {0}, .findings = {}, .cautions = {}};
    const brewing::BatchNeed need{refillOf(input_, setting), input_.margin, {}};
    const auto plan = planBrew((*recipe)->input, fresh, input_.equipment, need);
    if (!plan) // nothing to fill in: no batch, nothing to say
        return sizing;
    const auto& kit = input_.equipment;
    sizing.over =
        std::max({plan->mashVolume - kit.mashTun, plan->preBoilHot - kit.kettle, plan->intoFermenter - kit.fermenter});
    sizing.findings = plan->findings;
    if (plan->cannot)
        sizing.findings.push_back(plan->cannot->cause);
    sizing.cautions = plan->cautions;
    return sizing;
}

} // namespace staveline::advice
