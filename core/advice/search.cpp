// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/search.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace staveline::advice {
namespace {

constexpr double never = std::numeric_limits<double>::infinity();
/// So many times more plans than are predicted again get their uncertainty looked up.
constexpr std::size_t widening = 4;

/// Units of movement; a choice moves one.
double unitsMoved(const LeverMove& move, const LeverRow& row) {
    return row.isChoice() ? 1.0 : std::abs(number(move.to) - number(move.from)) / row.movement;
}

/// Signed length of a numeric move, 1 for a choice.
double lengthOf(const LeverMove& move) {
    return std::holds_alternative<double>(move.to) ? number(move.to) - number(move.from) : 1.0;
}

bool inside(double value, double alone, double low, double high) {
    return value >= std::min(low, alone) - 1e-9 && value <= std::max(high, alone) + 1e-9;
}

} // namespace

Fault cancelled() {
    return {FaultKind::notPossible, "", say("advice.fault.cancelled"), say("advice.fault.cancelled.remedy")};
}

Search::Search(const AdviceInput& input, const Baseline& baseline, Forecaster& forecaster, const Goal& goal,
               std::stop_token stop)
    : input_(input), baseline_(baseline), forecaster_(forecaster), goal_(goal),
      stop_(std::move(stop)), stock_{*input.pantry, input.unavailable} {}

Result<void> Search::going() const {
    if (stop_.stop_requested())
        return fail(cancelled());
    return {};
}

void Search::addOptions(const Lever& lever, const Setting& after, bool alone) {
    const auto row = narrowedRow(lever, after, input_);
    const auto from = lever.read(after, stock_);
    for (auto& to : stepsOf(lever, after, input_)) {
        const bool neverFirst = lever.neverFirst && lever.neverFirst(to, stock_);
        LeverMove move{&lever, from, std::move(to)};
        const double effort = row.cost * unitsMoved(move, row);
        options_.push_back({std::move(move), effort, neverFirst, alone});
    }
}

/// Levers that change nothing until `on` is moved: a path needs a second rest, a late addition something to add late.
void Search::addDependents(std::size_t on) {
    const auto after = applied(baseline_.start, {options_[on].move}, stock_);
    for (const auto& lever : levers()) {
        if (!lever.proposed || !lever.applies || baseline_.locked.contains(lever.id) ||
            lever.applies(baseline_.start, input_) || !lever.applies(after, input_))
            continue;
        const auto first = options_.size();
        addOptions(lever, after, false);
        for (auto i = first; i < options_.size(); ++i)
            plans_.push_back({{on, i}, 0});
    }
}

void Search::addPairs() {
    for (std::size_t i = 0; i < options_.size(); ++i)
        for (std::size_t j = i + 1; j < options_.size(); ++j) {
            const auto &a = options_[i], &b = options_[j];
            if (a.move.lever != b.move.lever && a.alone && b.alone && !a.change.empty() && !b.change.empty())
                plans_.push_back({{i, j}, 0});
        }
}

Result<void> Search::survey() {
    scored({});
    for (const auto& lever : levers())
        if (input_.maxMoved > 0 && lever.proposed && !baseline_.locked.contains(lever.id) &&
            (!lever.applies || lever.applies(baseline_.start, input_)))
            addOptions(lever, baseline_.start, true);
    const auto independent = options_.size();
    for (std::size_t i = 0; i < independent; ++i)
        plans_.push_back({{i}, 0});
    if (input_.maxMoved > 1)
        for (std::size_t i = 0; i < independent; ++i)
            addDependents(i);
    if (auto done = predictOptions(); !done)
        return done;
    if (input_.maxMoved > 1)
        addPairs();
    for (auto& plan : plans_)
        plan.cost = screenedInside(plan.options) ? screenedCost(plan.options) : never;
    std::stable_sort(plans_.begin(), plans_.end(),
                     [](const Screened& a, const Screened& b) { return a.cost < b.cost; });
    return {};
}

/// Options that cannot be brewed alone keep an empty change and join no pair; those that act only on another are
/// predicted together with it.
Result<void> Search::predictOptions() {
    const auto& alone = scored({}).trajectory;
    for (const auto& plan : plans_) {
        if (auto go = going(); !go)
            return go;
        scored(plan.options);
    }
    for (std::size_t i = 0; i < options_.size(); ++i) {
        if (!options_[i].alone || scored({i}).cost == never)
            continue;
        const auto& single = scored({i});
        for (std::size_t h = 0; h < alone.draws.size(); ++h) {
            Scores change;
            for (auto d : allDimensions)
                change[d] = single.trajectory.draws[h].scores[d] - alone.draws[h].scores[d];
            options_[i].change.push_back(change);
            options_[i].alcohol.push_back(single.trajectory.draws[h].alcohol.pct - alone.draws[h].alcohol.pct);
        }
    }
    return {};
}

bool Search::screenedInside(const OptionSet& options) const {
    if (options.size() < 2 || !options_[options[1]].alone)
        return scored_.contains(options) ? scored_.at(options).cost < never : true;
    const auto& alone = scored_.at({}).trajectory.draws;
    for (std::size_t h = 0; h < alone.size(); ++h) {
        const double now = alone[h].alcohol.pct;
        const double then = now + options_[options[0]].alcohol[h] + options_[options[1]].alcohol[h];
        if (!inside(then, now, input_.target.alcoholLow.pct, input_.target.alcoholHigh.pct))
            return false;
    }
    return true;
}

/// Exact for one lever; for two the changes are added up. What only acts on another option is predicted in full.
double Search::screenedCost(const OptionSet& options) const {
    if (const auto known = scored_.find(options); known != scored_.end())
        return known->second.cost;
    auto draws = goal_.alone;
    for (auto i : options)
        for (std::size_t h = 0; h < draws.size(); ++h)
            for (auto d : allDimensions)
                draws[h][d] += options_[i].change[h][d];
    return gapCost(goal_, draws) + goal_.effortWeight * effort(options);
}

double Search::effort(const OptionSet& options) const {
    double sum = 0;
    for (auto i : options)
        sum += options_[i].effort;
    return sum;
}

std::vector<LeverMove> Search::moves(const OptionSet& options) const {
    std::vector<LeverMove> moves;
    for (auto i : options)
        moves.push_back(options_[i].move);
    std::stable_sort(moves.begin(), moves.end(),
                     [](const LeverMove& a, const LeverMove& b) { return a.lever < b.lever; });
    return moves;
}

const Scored& Search::scored(const OptionSet& options) {
    if (const auto known = scored_.find(options); known != scored_.end())
        return known->second;
    return scored_.emplace(options, predictInFull(options)).first->second;
}

Scored Search::predictInFull(const OptionSet& options) {
    Scored plan{options, applied(baseline_.start, moves(options), stock_), {}, effort(options), never};
    const bool changed = !options.empty(); // what is in use is predicted whatever it is
    if (changed && (!takesEffect(plan.setting, options) || !brewable(plan.setting)))
        return plan;
    auto trajectory = forecaster_.trajectory(plan.setting, 0, input_.horizon);
    if (!trajectory)
        return plan;
    plan.trajectory = *std::move(trajectory);
    if (!changed || insideRanges(plan.trajectory))
        plan.cost = gapCost(goal_, anchored(plan.trajectory, goal_.deviation)) + goal_.effortWeight * plan.effort;
    return plan;
}

/// Two levers may want the same base malt; then one of them ends short.
bool Search::takesEffect(const Setting& setting, const OptionSet& options) const {
    return std::all_of(options.begin(), options.end(), [&](std::size_t i) {
        const auto& move = options_[i].move;
        return sameValue(move.lever->read(setting, stock_), move.to);
    });
}

bool Search::insideRanges(const Trajectory& trajectory) {
    const auto& alone = scored({}).trajectory.draws;
    for (std::size_t h = 0; h < alone.size(); ++h)
        if (!inside(trajectory.draws[h].alcohol.pct, alone[h].alcohol.pct, input_.target.alcoholLow.pct,
                    input_.target.alcoholHigh.pct))
            return false;
    return true;
}

bool Search::brewable(const Setting& setting) {
    if (!aloneSizing_)
        aloneSizing_ = forecaster_.sizing(baseline_.start);
    const auto sizing = forecaster_.sizing(setting);
    return (sizing.converted || !aloneSizing_->converted) &&
           sizing.over.l <= std::max(aloneSizing_->over.l, 0.0) + 1e-9;
}

/// The option of the same lever and direction that is nearest to one unit of movement; a choice is its own.
std::size_t Search::referenceOf(std::size_t option) const {
    const auto& move = options_[option].move;
    if (rowOf(*move.lever).isChoice())
        return option;
    const double unit = narrowedRow(*move.lever, baseline_.start, input_).movement;
    std::size_t found = option;
    double best = never;
    for (std::size_t i = 0; i < options_.size(); ++i) {
        const auto& other = options_[i].move;
        if (other.lever != move.lever || lengthOf(other) * lengthOf(move) < 0 || options_[i].change.empty())
            continue;
        if (const double apart = std::abs(std::abs(lengthOf(other)) - unit); apart < best) {
            best = apart;
            found = i;
        }
    }
    return found;
}

/// What the reference does to the next draw under each parameter draw.
const std::vector<Scores>& Search::effectInDraws(std::size_t reference) {
    if (const auto known = effects_.find(reference); known != effects_.end())
        return known->second;
    std::vector<Scores> effect;
    const auto setting = applied(baseline_.start, {options_[reference].move}, stock_);
    for (std::size_t set = 1; set <= std::min(lossDraws, forecaster_.sets()); ++set) {
        const auto with = forecaster_.trajectory(setting, set, 1);
        const auto without = forecaster_.trajectory(baseline_.start, set, 1);
        Scores change;
        for (auto d : allDimensions)
            change[d] = with->draws[0].scores[d] - without->draws[0].scores[d];
        effect.push_back(change);
    }
    return effects_.emplace(reference, std::move(effect)).first->second;
}

/// Expected loss: the variance of the plan's effect over the parameter draws, each lever's taken as proportional to how
/// far it is moved. What only acts on another option adds none.
double Search::loss(const OptionSet& options) {
    std::vector<Scores> sum(std::min(lossDraws, forecaster_.sets()));
    for (auto i : options) {
        if (!options_[i].alone)
            continue;
        const auto reference = referenceOf(i);
        const double factor = lengthOf(options_[i].move) / lengthOf(options_[reference].move);
        const auto& effect = effectInDraws(reference);
        for (std::size_t k = 0; k < sum.size(); ++k)
            for (auto d : allDimensions)
                sum[k][d] += factor * effect[k][d];
    }
    Scores variance;
    for (auto d : allDimensions) {
        double mean = 0, squares = 0;
        for (const auto& draw : sum)
            mean += draw[d] / static_cast<double>(sum.size());
        for (const auto& draw : sum)
            squares += (draw[d] - mean) * (draw[d] - mean);
        variance[d] = sum.size() > 1 ? squares / static_cast<double>(sum.size() - 1) : 0.0;
    }
    return lossCost(goal_, variance);
}

Result<std::optional<Scored>> Search::cheapest(const std::vector<OptionSet>& candidates) {
    std::optional<Scored> found;
    for (const auto& options : candidates) {
        if (auto go = going(); !go)
            return fail(go.error());
        auto plan = scored(options);
        plan.cost += plan.cost < never ? loss(options) : 0.0;
        if (plan.cost < never && (!found || plan.cost < found->cost))
            found = std::move(plan);
    }
    return found;
}

Result<std::optional<Scored>> Search::best(const Filter& passes, std::size_t rescored) {
    std::vector<Screened> shortlist;
    for (const auto& plan : plans_) {
        if (shortlist.size() == widening * rescored)
            break;
        if (plan.cost < never && passes(plan.options))
            shortlist.push_back(plan);
    }
    if (auto go = going(); !go)
        return fail(go.error());
    for (auto& plan : shortlist)
        plan.cost += loss(plan.options);
    std::stable_sort(shortlist.begin(), shortlist.end(),
                     [](const Screened& a, const Screened& b) { return a.cost < b.cost; });
    std::vector<OptionSet> candidates;
    for (std::size_t i = 0; i < std::min(rescored, shortlist.size()); ++i)
        candidates.push_back(shortlist[i].options);
    return cheapest(candidates);
}

Result<std::optional<Scored>> Search::exhaustive(const Filter& passes) {
    std::vector<OptionSet> candidates;
    for (const auto& plan : plans_)
        if (passes(plan.options))
            candidates.push_back(plan.options);
    return cheapest(candidates);
}

Result<std::vector<Scored>> Search::bestOfEachLever() {
    std::vector<Scored> found;
    for (const auto& lever : levers()) {
        auto plan = best([&](const OptionSet& o) { return o.size() == 1 && options_[o[0]].move.lever == &lever; },
                         options_.size());
        if (!plan)
            return fail(plan.error());
        if (*plan)
            found.push_back(**std::move(plan));
    }
    return found;
}

} // namespace staveline::advice
