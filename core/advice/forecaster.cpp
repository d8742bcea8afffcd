// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/forecaster.h"

#include <algorithm>
#include <functional>

namespace staveline {
namespace {

constexpr double convertedBelow = .02; ///< starch left, share
/// The settled point under a parameter draw is wanted for a band only: twelve cycles leave less than 1 % of the way.
constexpr int cyclesForBand = 12;
constexpr int cyclesForValue = 40;

void mix(std::size_t& seed, double value) {
    seed ^= std::hash<double>{}(value) + 0x9e3779b97f4a7c15ULL + (seed << 6) + (seed >> 2);
}

Course firstDraws(Course course, int cycles) {
    course.draws.resize(static_cast<std::size_t>(cycles));
    return course;
}

} // namespace

Litres refillOf(const AdviceInput& input, const Setting& setting) {
    return std::max(Litres{0}, input.fillTo - (input.volumeAtDraw - setting.draw));
}

Share shareOf(const AdviceInput& input, const Setting& setting) {
    return {input.fillTo.l > 0 ? std::clamp(refillOf(input, setting) / input.fillTo, 0.0, 1.0) : 0.0};
}

std::size_t RecipeHash::operator()(const Recipe& recipe) const {
    std::size_t seed = std::hash<std::string>{}(recipe.yeast);
    for (const auto& part : recipe.grist)
        mix(seed, part.share.of1 + (part.late ? 2 : 0));
    for (const auto& step : recipe.mash) {
        mix(seed, step.temperature.c);
        mix(seed, step.minutes.min);
    }
    for (double number : {recipe.sugarShare.of1, recipe.mashPh.ph, recipe.originalGravity.p, recipe.bitterness.ibu,
                          recipe.preSoured.of1, recipe.path == MashPath::jump ? 1.0 : 0.0})
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
    heels_.resize(parameters_.size());
}

Result<ModelForecaster::Known*> ModelForecaster::known(const Recipe& recipe) {
    if (const auto found = recipes_.find(recipe); found != recipes_.end())
        return &found->second;
    auto resolved = resolve(recipe, *input_.pantry, input_.equipment.heatingRate);
    if (!resolved)
        return fail(under("/recipe", std::move(resolved).error()));
    return &recipes_.emplace(recipe, Known{*std::move(resolved), {}}).first->second;
}

const RefillBeer& ModelForecaster::beer(Known& known, std::size_t set) {
    const auto found = known.beers.find(set);
    return found != known.beers.end()
               ? found->second
               : known.beers.emplace(set, brew(known.input, parameters_[set].brew)).first->second;
}

const VesselState& ModelForecaster::heel(Celsius temperature, std::size_t set) {
    auto& heels = heels_[set];
    if (const auto found = heels.find(temperature.c); found != heels.end())
        return found->second;
    const AgeConditions wait{input_.toThisDraw, temperature, input_.oxygenPerYear};
    return heels.emplace(temperature.c, age(input_.state, wait, parameters_[set].culture)).first->second;
}

/// From the draw on: the heel has aged already.
Plan ModelForecaster::planOf(const Setting& setting) const {
    return {{0}, shareOf(input_, setting), setting.interval, setting.temperature, input_.oxygenPerYear};
}

Scores ModelForecaster::today(std::size_t set) {
    return outcomeOf(input_.state, parameters_[set], input_.base.recipe.originalGravity).scores;
}

Course ModelForecaster::run(const Setting& setting, Known& known, std::size_t set, int cycles) {
    Course course;
    const auto& fresh = beer(known, set);
    auto state = heel(setting.temperature, set);
    for (int k = 0; k < cycles; ++k) {
        auto step = predict(parameters_[set], state, fresh, setting.recipe.originalGravity, planOf(setting));
        if (k == 0)
            course.thisDraw = step.thisDraw;
        state = step.nextDraw.state;
        course.draws.push_back(std::move(step.nextDraw));
    }
    return course;
}

Result<Course> ModelForecaster::course(const Setting& setting, std::size_t set, int cycles) {
    auto& courses = courses_[setting];
    if (const auto found = courses.find(set);
        found != courses.end() && static_cast<int>(found->second.draws.size()) >= cycles)
        return firstDraws(found->second, cycles);
    const auto recipe = known(setting.recipe);
    if (!recipe)
        return fail(recipe.error());
    return courses.insert_or_assign(set, run(setting, **recipe, set, cycles)).first->second;
}

Scores ModelForecaster::keptUp(const Setting& setting, std::size_t set) {
    auto& recipe = **known(setting.recipe);
    return ifKeptUp(parameters_[set], heel(setting.temperature, set), beer(recipe, set), setting.recipe.originalGravity,
                    planOf(setting), set == 0 ? cyclesForValue : cyclesForBand)
        .scores;
}

Sizing ModelForecaster::sizing(const Setting& setting) {
    const auto recipe = known(setting.recipe);
    if (!recipe)
        return {.converted = false, .over = {0}, .findings = {recipe.error().cause}, .cautions = {}};
    const auto& fresh = beer(**recipe, 0);
    Sizing sizing{.converted = fresh.starch <= convertedBelow, .over = {0}, .findings = {}, .cautions = {}};
    const BatchNeed need{refillOf(input_, setting), input_.margin, {}};
    const auto plan = planBrew((*recipe)->input, fresh, input_.equipment, need);
    if (!plan) // nothing to fill in: no batch, nothing to say
        return sizing;
    const auto& kit = input_.equipment;
    sizing.over =
        std::max({plan->mashVolume - kit.mashTun, plan->preBoilHot - kit.kettle, plan->intoFermenter - kit.fermenter});
    sizing.findings = plan->findings;
    sizing.cautions = plan->cautions;
    return sizing;
}

} // namespace staveline
