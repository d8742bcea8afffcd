// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/contributions.h"

#include <algorithm>

namespace staveline {
namespace {

class Ladder {
public:
    Ladder(Forecaster& forecaster, const Larder& larder, bool withSettled)
        : forecaster_(forecaster), larder_(larder), withSettled_(withSettled) {}

    /// The change that each move makes on top of those before it.
    std::vector<Contribution> climb(const Setting& from, const std::vector<LeverMove>& moves) {
        std::vector<Contribution> steps;
        std::vector<LeverMove> made;
        auto below = at(from);
        for (const auto& move : moves) {
            made.push_back(move);
            const auto above = at(applied(from, made, larder_));
            steps.push_back(difference(above, below));
            below = above;
        }
        return steps;
    }

private:
    Contribution at(const Setting& setting) {
        return {forecaster_.course(setting, 0, 1)->draws[0].scores,
                withSettled_ ? forecaster_.keptUp(setting, 0) : Scores{}};
    }
    static Contribution difference(Contribution a, const Contribution& b) {
        for (auto d : allDimensions) {
            a.next[d] -= b.next[d];
            a.settled[d] -= b.settled[d];
        }
        return a;
    }

    Forecaster& forecaster_;
    const Larder& larder_;
    bool withSettled_;
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
    Ladder ladder(forecaster, larder, withSettled);
    Contributions all{ladder.climb(ground.before, ground.forced), ladder.climb(ground.start, chosen)};
    if (chosen.size() < 2)
        return all;
    auto reversed = chosen;
    std::reverse(reversed.begin(), reversed.end());
    const auto back = ladder.climb(ground.start, reversed);
    for (std::size_t i = 0; i < chosen.size(); ++i)
        all.chosen[i] = mean(all.chosen[i], back[chosen.size() - 1 - i]);
    return all;
}

} // namespace staveline
