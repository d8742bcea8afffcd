// SPDX-License-Identifier: GPL-3.0-or-later
#include "benchmarks/closed_loop/program.h"

#include "desk/advice.h"
#include "desk/ledger.h"
#include "estimate/estimates.h"

#include <algorithm>
#include <stdexcept>

namespace staveline::loop {
namespace {

constexpr Day start = std::chrono::year{2000} / 1 / 10;
constexpr Litres capacity{225};
constexpr int mostMoved = 2;
const std::string vesselName = "Plover";

/// The study asks for nothing that a brewer could not do: a refusal is a mistake in it.
template <class T> T must(Result<T> result) {
    if (!result)
        throw std::runtime_error(result.error().path + ": " + render(result.error().cause));
    return std::move(*result);
}

brewing::Recipe recipeOf(const Handling& h) {
    constexpr double wheat = 20; // [% of grist]
    brewing::Recipe recipe;
    recipe.grist = {{"pilsner", Share{(100 - wheat - h.precursor - h.glucan) / 100}, false},
                    {"wheat_malt", Share{wheat / 100}, false}};
    if (h.precursor > 0)
        recipe.grist.push_back({"rye_malt", Share{h.precursor / 100}, false});
    if (h.glucan > 0)
        recipe.grist.push_back({"flaked_oats", Share{h.glucan / 100}, h.late > 0});
    recipe.mash = {{Celsius{h.mash}, Minutes{60}}};
    if (h.rest > 0)
        recipe.mash.insert(recipe.mash.begin(), {Celsius{45}, Minutes{h.rest}});
    recipe.originalGravity = {h.gravity};
    recipe.bitterness = {h.bitterness};
    return recipe;
}

} // namespace

Program::Program(const std::filesystem::path& folder, const Handling& usual, const Freedom& freedom)
    : now_(start), filled_(start), freedom_(freedom),
      desk_(must(desk::Desk::create(folder / "loop.cellar", [this] { return now_; }))) {
    takeOver(usual, freedom);
}

void Program::record(const std::vector<facts::Fact>& facts) {
    (void)must(desk_->record(facts));
}

void Program::takeOver(const Handling& usual, const Freedom& freedom) {
    facts::EquipmentFact kit;
    kit.on = start;
    kit.equipment.mashTun = {250};
    kit.equipment.kettle = {300};
    kit.equipment.fermenter = {250};
    facts::VesselFact vessel;
    vessel.name = vesselName;
    vessel.capacity = capacity;
    vessel.evaporationPerYear = Share{0};
    vessel.drawMayMove = vessel.intervalMayMove = !freedom.stepCaps;
    facts::OpeningFact opening;
    opening.vessel = vesselName;
    opening.on = start;
    opening.volume = capacity;
    opening.yearsRunning = 8;
    opening.usualInterval = Days{usual.interval};
    opening.usualShare = Share{usual.draw / 100};
    const auto recipe = recipeOf(usual);
    facts::CultureFact culture;
    culture.vessel = vesselName;
    culture.on = start;
    record({kit, vessel, culture, facts::BaseRecipeFact{vesselName, start, recipe}, opening});
    fill(recipe, capacity * (usual.draw / 100), start, start);
    interval_ = Days{usual.interval};
}

void Program::fill(const brewing::Recipe& recipe, Litres draw, Day brewed, Day filled) {
    facts::BrewFact brew;
    brew.name = "Brew " + std::to_string(++brews_);
    brew.vessel = vesselName;
    brew.on = brewed;
    brew.recipe = recipe;
    now_ = brewed;
    record({brew});
    facts::DrawOffFact off;
    off.vessel = vesselName;
    off.on = filled;
    off.volume = draw;
    facts::RefillFact refill;
    refill.vessel = vesselName;
    refill.on = filled;
    refill.volume = draw;
    refill.brew = brew.name;
    now_ = filled;
    record({off, refill});
    filled_ = filled;
}

Program::Expected Program::expected() {
    now_ = filled_ + std::chrono::days{static_cast<int>(interval_.d - sampledBefore)};
    const auto estimates = must(desk_->estimates(vesselName));
    Expected out;
    for (Dimension d : allDimensions)
        out.scores[d] = estimates.model[d].mean;
    out.ta = must(desk_->predict(vesselName, must(desk_->leftAlone(vesselName)))).thisBeer.ta.gPerL;
    return out;
}

void Program::setTarget(const Scores& wanted, const std::string& setBy) {
    facts::TargetFact fact;
    fact.vessel = vesselName;
    fact.on = start;
    for (Dimension d : allDimensions)
        fact.target.windows[d] = {wanted[d], 1};
    fact.target.bitternessCeiling = {25};
    fact.target.setBy = setBy;
    record({fact});
}

Handling Program::handlingOf(const advice::Setting& setting) const {
    const auto& pantry = desk_->pantry();
    const auto number = [&](const char* lever) { return std::get<double>(advice::leverValue(setting, lever, pantry)); };
    const auto is = [&](const char* lever, const char* value) {
        return std::get<std::string>(advice::leverValue(setting, lever, pantry)) == value ? 1.0 : 0.0;
    };
    const auto yeast = pantry.yeast(setting.recipe.yeast);
    Handling h;
    h.mash = number("sacch_temperature");
    h.rest = number("ferulic_rest");
    h.bitterness = number("bitterness");
    h.precursor = number("precursor_malt");
    h.glucan = number("glucan_grain");
    h.sugar = number("sugar");
    h.gravity = number("gravity");
    h.mashPh = number("mash_ph");
    h.soured = number("presour");
    h.ramp = is("sacch_path", "ramp");
    h.late = is("late_unmalted", "after rest");
    h.maltotriose = yeast->takesMaltotriose;
    h.dextrin = yeast->takesDextrin;
    h.glycerol = yeast->glycerolAt12P;
    h.clove = yeast->pof ? 1 : 0;
    h.draw = 100 * setting.draw.l / capacity.l;
    h.interval = setting.interval.d;
    return h;
}

/// What was seen is on record a month before the draw.
void Program::record(const Occasion& occasion) {
    std::vector<facts::Fact> seen;
    if (occasion.ta) {
        facts::ReadingFact reading;
        reading.vessel = vesselName;
        reading.on = now_;
        reading.measured.ta = occasion.ta;
        seen.emplace_back(reading);
    }
    facts::SittingFact sitting{vesselName, occasion.sitting};
    sitting.sitting.on = now_;
    seen.emplace_back(sitting);
    record(seen);
}

Decision Program::decide(const Occasion& occasion) {
    const Day draw = filled_ + std::chrono::days{static_cast<int>(interval_.d)};
    now_ = draw - std::chrono::days{static_cast<int>(sampledBefore)};
    Decision decision;
    decision.before = must(desk_->estimates(vesselName)).combined;
    record(occasion);
    decision.after = must(desk_->estimates(vesselName)).combined;

    now_ += std::chrono::days{1}; // on the day of a tasting no other one is asked for
    auto job = must(desk_->adviceJob({vesselName, {}, {}, false, false, mostMoved}));
    if (job.dates.draw != draw)
        throw std::runtime_error("the book and the study disagree about the draw day");
    job.input.stepCaps = freedom_.stepCaps;
    job.input.draws = 2; // for the bands of plans, which nothing here looks at
    const auto advice = must(advise(job.input));
    const int chosen = advice.proposals.empty() ? 0 : 1;
    const auto& plan = chosen ? advice.proposals.front() : advice.leaveAlone;
    (void)must(desk_->choose(job, advice, chosen));

    fill(plan.setting.recipe, plan.setting.draw, std::clamp(job.dates.brew, now_, draw), draw);
    interval_ = plan.setting.interval;
    decision.asked = advice.tasting.dimension.has_value();
    decision.handling = handlingOf(plan.setting);
    return decision;
}

} // namespace staveline::loop
