// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/contributions.h"

#include <algorithm>
#include <numeric>
#include <set>

namespace staveline::advice {
namespace {

using Places = std::vector<std::size_t>;

Places places(const std::vector<LeverMove>& moves) {
    Places all(moves.size());
    std::iota(all.begin(), all.end(), std::size_t{0});
    return all;
}

/// Moves made one after another. One that cannot be brewed yet (late grain before there is a rest to add it after)
/// waits for those that it depends on.
class StepwiseAttribution {
public:
    /// `from` is a setting that the forecaster takes, and so are all moves together. They act in their own order, in
    /// whichever order they are made.
    StepwiseAttribution(const AdviceInput& input, Forecaster& forecaster, const Setting& from,
                        const std::vector<LeverMove>& moves)
        : input_(input), forecaster_(forecaster), from_(from), moves_(moves), foot_(*at({})) {}

    /// What each move changes on top of those before it in `order`, which holds every place of `moves`.
    std::vector<Contribution> changeByMove(Places order) {
        std::vector<Contribution> changes(moves_.size());
        std::set<std::size_t> made;
        auto below = foot_;
        while (!order.empty()) {
            const auto step = nextStep(order, made);
            for (auto i : step.places) {
                changes[i] = part(step.reached, below, step.places.size());
                made.insert(i);
                std::erase(order, i);
            }
            below = step.reached;
        }
        return changes;
    }

private:
    struct Step {
        Places places;
        Contribution reached;
    };
    /// The first move that can be made now; all that are left at once where none can be made by itself.
    Step nextStep(const Places& order, const std::set<std::size_t>& made) {
        for (auto i : order) {
            auto with = made;
            with.insert(i);
            if (auto reached = at(with))
                return {{i}, *reached};
        }
        auto all = made;
        all.insert(order.begin(), order.end());
        return {order, *at(all)};
    }
    Result<Contribution> at(const std::set<std::size_t>& made) {
        std::vector<LeverMove> moves;
        moves.reserve(made.size());
        for (auto i : made)
            moves.push_back(moves_[i]);
        const auto setting = applied(from_, std::move(moves), {*input_.pantry, input_.unavailable});
        const auto trajectory = forecaster_.trajectory(setting, 0, 1);
        if (!trajectory)
            return fail(trajectory.error());
        const auto carried = carriedTo(input_, shareOf(input_, setting), 1);
        return Contribution{plus(trajectory->draws[0].scores, carried.mean),
                            input_.withSettled ? forecaster_.settledScores(setting, 0) : Scores{}};
    }
    static Contribution part(Contribution above, const Contribution& below, std::size_t count) {
        for (auto d : allDimensions) {
            above.next[d] = (above.next[d] - below.next[d]) / static_cast<double>(count);
            above.settled[d] = (above.settled[d] - below.settled[d]) / static_cast<double>(count);
        }
        return above;
    }

    const AdviceInput& input_;
    Forecaster& forecaster_;
    const Setting& from_;
    const std::vector<LeverMove>& moves_;
    Contribution foot_;
};

Contribution mean(Contribution a, const Contribution& b) {
    for (auto d : allDimensions) {
        a.next[d] = (a.next[d] + b.next[d]) / 2;
        a.settled[d] = (a.settled[d] + b.settled[d]) / 2;
    }
    return a;
}

} // namespace

Contributions contributionsOf(const AdviceInput& input, Forecaster& forecaster, const Baseline& baseline,
                              const std::vector<LeverMove>& chosen) {
    Contributions all;
    all.forced =
        StepwiseAttribution(input, forecaster, baseline.before, baseline.forced).changeByMove(places(baseline.forced));
    StepwiseAttribution attribution(input, forecaster, baseline.start, chosen);
    auto order = places(chosen);
    all.chosen = attribution.changeByMove(order);
    if (chosen.size() < 2)
        return all;
    std::reverse(order.begin(), order.end());
    const auto back = attribution.changeByMove(order);
    for (std::size_t i = 0; i < chosen.size(); ++i)
        all.chosen[i] = mean(all.chosen[i], back[i]);
    return all;
}

} // namespace staveline::advice
