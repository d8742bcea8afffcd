// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/search.h"

#include "advice/adviser.h"
#include "advice/reasons.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace staveline::advice {
namespace {

constexpr double never = std::numeric_limits<double>::infinity();
/// So many of the best plans get another lever tried on.
constexpr std::size_t extended = static_cast<std::size_t>(constants::advice::plansExtended);
/// How often as many plans again are predicted in full while a cheaper one may be among them.
constexpr std::size_t mostRounds = static_cast<std::size_t>(constants::advice::mostRounds);

bool inside(double value, double alone, double low, double high) {
    return value >= std::min(low, alone) - 1e-9 && value <= std::max(high, alone) + 1e-9;
}

/// Share of a kept change that shows after so many draws.
double reached(Share share, std::size_t draws) {
    return 1 - std::pow(1 - share.of1, static_cast<double>(draws));
}

OptionSet with(OptionSet options, std::size_t more) {
    options.insert(std::lower_bound(options.begin(), options.end(), more), more);
    return options;
}

OptionSet without(OptionSet options, std::size_t one) {
    std::erase(options, one);
    return options;
}

} // namespace

Fault cancelled() {
    return {FaultKind::notPossible, "", say("advice.fault.cancelled"), say("advice.fault.cancelled.remedy")};
}

double effortOf(const LeverMove& move, const LeverRow& row) {
    return row.cost * (row.isChoice() ? 1.0 : std::abs(number(move.to) - number(move.from)) / row.movement);
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

bool Search::mayMove(const Lever& lever) const {
    return lever.proposed && !baseline_.locked.contains(lever.id);
}

const std::vector<Carried>& Search::carriedFor(Share share) {
    if (const auto known = carried_.find(share.of1); known != carried_.end())
        return known->second;
    return carried_.emplace(share.of1, carriedAhead(input_, share)).first->second;
}

void Search::addOptions(const Lever& lever) {
    const auto row = narrowedRow(lever, baseline_.start, input_);
    const auto from = lever.read(baseline_.start, stock_);
    for (auto& to : advisedSteps(lever, baseline_.start, input_)) {
        const bool neverFirst = lever.neverFirst && lever.neverFirst(to, stock_);
        LeverMove move{&lever, from, std::move(to)};
        const double effort = effortOf(move, row);
        options_.push_back({{std::move(move)}, effort, neverFirst});
    }
}

/// Levers that change nothing until `on` is moved: a path needs a second rest, a late addition something to add late.
void Search::addDependents(std::size_t on) {
    const auto after = applied(baseline_.start, options_[on].moves, stock_);
    for (const auto& lever : levers()) {
        if (!mayMove(lever) || !lever.applies || lever.applies(baseline_.start, input_) ||
            !lever.applies(after, input_))
            continue;
        const auto row = narrowedRow(lever, after, input_);
        for (auto& to : advisedSteps(lever, after, input_)) {
            auto both = options_[on];
            both.moves.push_back({&lever, lever.read(after, stock_), std::move(to)});
            both.effort += effortOf(both.moves.back(), row);
            both.host = on;
            options_.push_back(std::move(both));
        }
    }
}

/// Shares no lever with what is there.
bool Search::joinable(const OptionSet& options, std::size_t more) const {
    if (options_[more].change.empty())
        return false;
    return std::none_of(options.begin(), options.end(), [&](std::size_t i) {
        return std::any_of(options_[i].moves.begin(), options_[i].moves.end(), [&](const LeverMove& a) {
            return std::any_of(options_[more].moves.begin(), options_[more].moves.end(),
                               [&](const LeverMove& b) { return a.lever == b.lever; });
        });
    });
}

void Search::addPairs() {
    for (std::size_t i = 0; i < options_.size(); ++i)
        for (std::size_t j = i + 1; j < options_.size() && !options_[i].change.empty(); ++j)
            if (joinable({i}, j))
                plans_.push_back({.options = {i, j}});
}

/// The best plans of `size` levers, each with one more.
void Search::extendBest(std::size_t size) {
    std::set<OptionSet> more;
    std::size_t taken = 0;
    for (const auto& plan : plans_) {
        if (plan.cost == never || taken == extended)
            break;
        if (plan.options.size() != size)
            continue;
        ++taken;
        for (std::size_t i = 0; i < options_.size(); ++i)
            if (joinable(plan.options, i))
                more.insert(with(plan.options, i));
    }
    const auto first = plans_.size();
    for (const auto& options : more)
        plans_.push_back({.options = options});
    screen(first);
}

void Search::screen(std::size_t from) {
    for (auto i = from; i < plans_.size(); ++i) {
        plans_[i].cost = screenedInside(plans_[i].options) ? screenedCost(plans_[i].options) : never;
        plans_[i].promising = promising(plans_[i]);
    }
    std::stable_sort(plans_.begin(), plans_.end(),
                     [](const Screened& a, const Screened& b) { return a.cost < b.cost; });
}

Result<void> Search::survey() {
    scored({});
    for (const auto& lever : levers())
        if (input_.maxMoved > 0 && mayMove(lever) && (!lever.applies || lever.applies(baseline_.start, input_)))
            addOptions(lever);
    const auto independent = options_.size();
    for (std::size_t i = 0; i < independent; ++i)
        addDependents(i);
    for (std::size_t i = 0; i < options_.size(); ++i)
        plans_.push_back({.options = {i}});
    if (auto done = predictOptions(); !done)
        return done;
    if (input_.maxMoved > 1)
        addPairs();
    screen(0);
    for (int size = 2; size < input_.maxMoved; ++size) {
        if (auto go = going(); !go)
            return go;
        extendBest(static_cast<std::size_t>(size));
    }
    return {};
}

/// Options that cannot be brewed keep an empty change and join no other.
Result<void> Search::predictOptions() {
    for (std::size_t i = 0; i < options_.size(); ++i) {
        if (auto go = going(); !go)
            return go;
        if (const auto& single = scored({i}); single.cost < never)
            takeChanges(options_[i], single);
    }
    return {};
}

void Search::takeChanges(Option& option, const Scored& single) {
    const auto& alone = scored({}).trajectory;
    for (std::size_t h = 0; h < alone.draws.size(); ++h) {
        option.change.push_back(minus(single.trajectory.draws[h].scores, alone.draws[h].scores));
        option.alcohol.push_back(single.trajectory.draws[h].alcohol.pct - alone.draws[h].alcohol.pct);
    }
    if (single.setting.draw == baseline_.start.draw)
        return;
    const Share share = shareOf(input_, single.setting), before = shareOf(input_, baseline_.start);
    option.carried = &carriedFor(share);
    for (std::size_t h = 1; h <= alone.draws.size(); ++h)
        option.reach.push_back(before.of1 > 0 ? reached(share, h) / reached(before, h) : 1);
}

bool Search::screenedInside(const OptionSet& options) const {
    if (const auto known = scored_.find(options); known != scored_.end())
        return known->second.cost < never;
    const auto& alone = scored_.at({}).trajectory.draws;
    for (std::size_t h = 0; h < alone.size(); ++h) {
        const double now = alone[h].alcohol.pct;
        double then = now;
        for (auto i : options)
            then += options_[i].alcohol[h];
        if (!inside(then, now, input_.target.alcoholLow.pct, input_.target.alcoholHigh.pct))
            return false;
    }
    return true;
}

/// The coming draws when the changes are added up, those of the recipe in proportion to the refill.
std::vector<Expected> Search::added(const OptionSet& options) const {
    const Option* draw = nullptr;
    for (auto i : options)
        draw = options_[i].carried ? &options_[i] : draw;
    const auto& carried = draw ? *draw->carried : carried_.at(shareOf(input_, baseline_.start).of1);
    auto draws = expectedDraws(scored_.at({}).trajectory.draws, carried);
    for (std::size_t h = 0; h < draws.size(); ++h)
        for (auto i : options)
            for (auto d : allDimensions)
                draws[h].mean[d] += options_[i].change[h][d] * (draw && draw != &options_[i] ? draw->reach[h] : 1);
    return draws;
}

/// Where the changes lead if kept up, by what the last draw shows of them; an aid is not kept up.
Scores Search::addedForGood(const OptionSet& options) const {
    Scores sum;
    for (auto i : options)
        if (std::none_of(options_[i].moves.begin(), options_[i].moves.end(),
                         [](const LeverMove& move) { return move.lever->oneCycle; }))
            sum = plus(sum, options_[i].change.back());
    const double shown = reached(shareOf(input_, baseline_.start), options_[options[0]].change.size());
    for (auto d : allDimensions)
        sum[d] /= shown > 0 ? shown : 1;
    return sum;
}

/// Exact for one option.
double Search::screenedCost(const OptionSet& options) const {
    if (const auto known = scored_.find(options); known != scored_.end())
        return known->second.cost;
    return total(lossOf(goal_, added(options))) + goal_.effortWeight * effort(options);
}

/// What admissible() asks, of the added changes.
bool Search::promising(const Screened& plan) {
    const auto& alone = scored({});
    if (plan.options.size() < 2 || plan.cost == never || alone.cost - plan.cost < clearlyBetter)
        return false;
    if (std::any_of(plan.options.begin(), plan.options.end(),
                    [&](std::size_t i) { return screenedCost(without(plan.options, i)) - plan.cost < earnsItsPlace; }))
        return false;
    Scored sum;
    sum.draws = added(plan.options);
    sum.loss = lossOf(goal_, sum.draws);
    if (!canBeTasted(sum) || !helpsSomewhere(sum) || !harmless(sum.draws.front().mean, alone.draws.front().mean))
        return false;
    const auto settled = plus(forecaster_.settledScores(baseline_.start, 0), carriedForGood(input_).mean);
    return harmless(plus(settled, addedForGood(plan.options)), settled);
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
        moves.insert(moves.end(), options_[i].moves.begin(), options_[i].moves.end());
    std::stable_sort(moves.begin(), moves.end(),
                     [](const LeverMove& a, const LeverMove& b) { return a.lever < b.lever; });
    return moves;
}

std::set<const Lever*> Search::leversOf(const OptionSet& options) const {
    std::set<const Lever*> levers;
    for (const auto& move : moves(options))
        levers.insert(move.lever);
    return levers;
}

const Scored& Search::scored(const OptionSet& options) {
    if (const auto known = scored_.find(options); known != scored_.end())
        return known->second;
    return scored_.emplace(options, predictInFull(options)).first->second;
}

Result<Scored> Search::predicted(const Setting& setting, double effort) {
    auto trajectory = forecaster_.trajectory(setting, 0, input_.horizon);
    if (!trajectory)
        return fail(std::move(trajectory).error());
    Scored plan;
    plan.setting = setting;
    plan.trajectory = *std::move(trajectory);
    plan.draws = expectedDraws(plan.trajectory.draws, carriedFor(shareOf(input_, setting)));
    plan.loss = lossOf(goal_, plan.draws);
    plan.effort = effort;
    plan.cost = total(plan.loss) + goal_.effortWeight * effort;
    return plan;
}

Scored Search::predictInFull(const OptionSet& options) {
    Scored nothing;
    nothing.options = options;
    nothing.cost = never;
    const auto setting = applied(baseline_.start, moves(options), stock_);
    const bool changed = !options.empty(); // what is in use is predicted whatever it is
    if (changed && (!takesEffect(setting, options) || !brewable(setting)))
        return nothing;
    auto plan = predicted(setting, effort(options));
    if (!plan || (changed && !insideRanges(plan->trajectory)))
        return nothing;
    plan->options = options;
    return *std::move(plan);
}

/// Two levers may want the same base malt; then one of them ends short.
bool Search::takesEffect(const Setting& setting, const OptionSet& options) const {
    return std::all_of(options.begin(), options.end(), [&](std::size_t i) {
        return std::all_of(options_[i].moves.begin(), options_[i].moves.end(), [&](const LeverMove& move) {
            return sameValue(move.lever->read(setting, stock_), move.to);
        });
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

bool Search::everyLeverEarns(const Scored& plan) {
    const auto earns = [&](const OptionSet& others) { return scored(others).cost - plan.cost >= earnsItsPlace; };
    return std::all_of(plan.options.begin(), plan.options.end(), [&](std::size_t i) {
        const auto others = without(plan.options, i);
        const auto& host = options_[i].host;
        return earns(others) && (!host || earns(with(others, *host)));
    });
}

bool Search::guarded(const Scored& plan) {
    const auto& alone = scored({});
    const Scores settled = forecaster_.settledScores(plan.setting, 0);
    const Scores settledAlone = forecaster_.settledScores(baseline_.start, 0);
    const Scores known = carriedForGood(input_).mean;
    return harmless(plan.draws.front().mean, alone.draws.front().mean) &&
           harmless(plus(settled, known), plus(settledAlone, known));
}

bool Search::harmless(const Scores& with, const Scores& without) const {
    return std::all_of(allDimensions.begin(), allDimensions.end(), [&](Dimension d) {
        const auto& window = goal_.windows[d];
        const double off = std::abs(with[d] - window.wanted);
        return !goal_.counts[d] || off <= window.band ||
               off <= std::abs(without[d] - window.wanted) + constants::advice::guard;
    });
}

/// At the last draw planned for: what fades before it was no change of the vessel.
bool Search::canBeTasted(const Scored& plan) {
    const auto& with = plan.draws.back().mean;
    const auto& without = scored({}).draws.back().mean;
    return std::any_of(allDimensions.begin(), allDimensions.end(),
                       [&](Dimension d) { return std::abs(with[d] - without[d]) >= untasted; });
}

/// Else there would be a proposal where no dimension says move; one that waits never does.
bool Search::helpsSomewhere(const Scored& plan) {
    const auto& alone = scored({});
    return std::any_of(allDimensions.begin(), allDimensions.end(),
                       [&](Dimension d) { return !waits(input_, d) && alone.loss[d] - plan.loss[d] >= clearlyBetter; });
}

bool Search::admissible(const Scored& plan) {
    if (const auto known = admissible_.find(plan.options); known != admissible_.end())
        return known->second;
    return admissible_.emplace(plan.options, passesAll(plan)).first->second;
}

bool Search::passesAll(const Scored& plan) {
    return plan.cost < never && scored({}).cost - plan.cost >= clearlyBetter && canBeTasted(plan) &&
           helpsSomewhere(plan) && guarded(plan) && everyLeverEarns(plan);
}

/// In the order of their costs, so that the first admissible one is the answer.
Result<std::optional<Scored>> Search::cheapest(const std::vector<OptionSet>& candidates) {
    std::vector<const Scored*> plans;
    for (const auto& options : candidates) {
        if (auto go = going(); !go)
            return fail(go.error());
        plans.push_back(&scored(options));
    }
    std::stable_sort(plans.begin(), plans.end(), [](const Scored* a, const Scored* b) { return a->cost < b->cost; });
    for (const auto* plan : plans)
        if (admissible(*plan))
            return std::optional<Scored>(*plan);
    return std::optional<Scored>{};
}

Result<std::optional<Scored>> Search::best(const Filter& passes, std::size_t rescored) {
    std::vector<OptionSet> singles;
    std::vector<Screened> likely, others;
    for (const auto& plan : plans_)
        if (plan.cost < never && passes(plan.options)) {
            if (plan.options.size() == 1)
                singles.push_back(plan.options);
            else
                (plan.promising ? likely : others).push_back(plan);
        }
    auto found = cheapest(singles);
    if (found)
        found = cheaper(likely, rescored, *std::move(found));
    if (found) {
        std::erase_if(others, [&](const Screened& plan) { return plan.cost > costToBeat(*found); });
        found = cheaper(others, rescored, *std::move(found));
    }
    return found;
}

double Search::costToBeat(const std::optional<Scored>& found) {
    return found ? found->cost : scored({}).cost - clearlyBetter;
}

/// The cheapest of `found` and these, which are predicted round by round while one of the next may be cheaper.
Result<std::optional<Scored>> Search::cheaper(std::span<const Screened> plans, std::size_t rescored,
                                              std::optional<Scored> found) {
    for (std::size_t from = 0, round = 0; rescored > 0 && from < plans.size() && round < mostRounds; ++round) {
        if (plans[from].cost > costToBeat(found))
            break;
        std::vector<OptionSet> more;
        for (; from < plans.size() && more.size() < rescored; ++from)
            more.push_back(plans[from].options);
        auto other = cheapest(more);
        if (!other)
            return other;
        if (*other && (!found || (*other)->cost < found->cost))
            found = *std::move(other);
    }
    return found;
}

Result<std::optional<Scored>> Search::exhaustive(const Filter& passes) {
    std::vector<OptionSet> candidates;
    for (const auto& plan : plans_)
        if (passes(plan.options))
            candidates.push_back(plan.options);
    return cheapest(candidates);
}

std::vector<Weighed> Search::weighed(std::size_t most) {
    std::vector<const Scored*> plans;
    for (const auto& [options, plan] : scored_)
        if (!options.empty() && plan.cost < never)
            plans.push_back(&plan);
    std::stable_sort(plans.begin(), plans.end(), [](const Scored* a, const Scored* b) { return a->cost < b->cost; });
    std::vector<Weighed> weighed;
    const auto add = [&](const Scored& plan) {
        Weighed one{plan.draws, {}, goal_.effortWeight * plan.effort};
        for (const auto& carried : carriedFor(shareOf(input_, plan.setting)))
            one.withNow.push_back(carried.withNow);
        weighed.push_back(std::move(one));
    };
    add(scored({}));
    for (const auto* plan : plans)
        if (weighed.size() <= most && guarded(*plan))
            add(*plan);
    return weighed;
}

} // namespace staveline::advice
