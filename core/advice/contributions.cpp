// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/contributions.h"

#include <algorithm>
#include <numeric>
#include <set>

namespace staveline {
namespace {

using Places = std::vector<std::size_t>;

Places places(const std::vector<LeverMove>& moves) {
    Places all(moves.size());
    std::iota(all.begin(), all.end(), std::size_t{0});
    return all;
}

/// Moves made one after another. One that cannot be brewed yet (late grain before there is a rest to add it after)
/// waits for those that it depends on.
class Ladder {
public:
    /// `from` is a setting that the forecaster takes, and so are all moves together. They act in their own order, in
    /// whichever order they are made.
    Ladder(Forecaster& forecaster, const Larder& larder, bool withSettled, const Setting& from,
           const std::vector<LeverMove>& moves)
        : forecaster_(forecaster), larder_(larder), withSettled_(withSettled), from_(from), moves_(moves),
          foot_(*at({})) {}

    /// What each move changes on top of those before it in `order`, which holds every place of `moves`.
    std::vector<Contribution> climb(Places order) {
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
        for (auto i : made)
            moves.push_back(moves_[i]);
        const auto setting = applied(from_, std::move(moves), larder_);
        const auto course = forecaster_.course(setting, 0, 1);
        if (!course)
            return fail(course.error());
        return Contribution{course->draws[0].scores, withSettled_ ? forecaster_.keptUp(setting, 0) : Scores{}};
    }
    static Contribution part(Contribution above, const Contribution& below, std::size_t count) {
        for (auto d : allDimensions) {
            above.next[d] = (above.next[d] - below.next[d]) / static_cast<double>(count);
            above.settled[d] = (above.settled[d] - below.settled[d]) / static_cast<double>(count);
        }
        return above;
    }

    Forecaster& forecaster_;
    const Larder& larder_;
    bool withSettled_;
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

Contributions contributionsOf(Forecaster& forecaster, const Ground& ground, const std::vector<LeverMove>& chosen,
                              const Larder& larder, bool withSettled) {
    Contributions all;
    all.forced = Ladder(forecaster, larder, withSettled, ground.before, ground.forced).climb(places(ground.forced));
    Ladder ladder(forecaster, larder, withSettled, ground.start, chosen);
    auto order = places(chosen);
    all.chosen = ladder.climb(order);
    if (chosen.size() < 2)
        return all;
    std::reverse(order.begin(), order.end());
    const auto back = ladder.climb(order);
    for (std::size_t i = 0; i < chosen.size(); ++i)
        all.chosen[i] = mean(all.chosen[i], back[i]);
    return all;
}

} // namespace staveline
