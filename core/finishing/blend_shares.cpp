// SPDX-License-Identifier: GPL-3.0-or-later
#include "finishing/blend_shares.h"

#include "finishing/bounded_least_squares.h"

#include <algorithm>
#include <iterator>

namespace staveline::finishing {
namespace {

/// Of each source, of the whole.
Shares limitsOf(const BlendQuestion& q) {
    Shares most;
    for (const BlendSource& source : q.sources)
        most.push_back(q.litres ? std::min(1.0, source.atHand / *q.litres) : 1.0);
    return most;
}

/// Not far from `shares`: towards source `i`.
Shares towards(const Shares& shares, std::size_t i, double step) {
    Shares moved = shares;
    for (double& share : moved)
        share *= 1 - step;
    moved[i] += step;
    return moved;
}

double missOf(const BlendQuestion& q, const std::vector<Trait>& aims, const Shares& shares) {
    double sum = 0;
    for (const Trait trait : aims) {
        const double miss = (*traitOf(q.sources, shares, trait) - *q.aims[trait]) / toleranceOf(trait);
        sum += miss * miss;
    }
    return sum;
}

/// The aims as they look from `shares`; exact for what blends by volume.
ShareProblem lookedAtFrom(const BlendQuestion& q, const std::vector<Trait>& aims, const Shares& shares) {
    constexpr double step = 1e-5;
    ShareProblem problem{{}, {}, limitsOf(q)};
    for (const Trait trait : aims) {
        const double here = *traitOf(q.sources, shares, trait), error = toleranceOf(trait);
        std::vector<double> row;
        for (std::size_t i = 0; i < shares.size(); ++i)
            row.push_back((*traitOf(q.sources, towards(shares, i, step), trait) - here) / step / error);
        problem.rows.push_back(row);
        problem.aims.push_back((*q.aims[trait] - here) / error);
    }
    return problem;
}

/// Gauss and Newton from one start: each step goes as far as it helps.
Shares settledFrom(const BlendQuestion& q, const std::vector<Trait>& aims, Shares shares) {
    double miss = missOf(q, aims, shares);
    for (int round = 0; round < 40; ++round) {
        const auto aim = nearestShares(lookedAtFrom(q, aims, shares));
        double step = 1, better = miss;
        Shares next = shares;
        for (; aim && step > 1e-6; step /= 2) {
            for (std::size_t i = 0; i < shares.size(); ++i)
                next[i] = shares[i] + step * ((*aim)[i] - shares[i]);
            better = missOf(q, aims, next);
            if (better < miss)
                break;
        }
        if (!(better < miss))
            break;
        const double won = miss - better;
        shares = next;
        miss = better;
        if (won < 1e-14)
            break;
    }
    return shares;
}

/// As even as the limits allow, and as much as there can be of each source alone.
std::vector<Shares> startsOf(const Shares& most) {
    ShareProblem nothing{{}, {}, most};
    std::vector<Shares> starts;
    if (auto even = nearestShares(nothing))
        starts.push_back(*even);
    for (std::size_t i = 0; i < most.size(); ++i) {
        nothing.rows.assign(1, Shares(most.size(), 0));
        nothing.rows[0][i] = 1;
        nothing.aims = {1};
        if (auto much = nearestShares(nothing))
            starts.push_back(*much);
    }
    return starts;
}

} // namespace

std::vector<Trait> aimedAt(const BlendQuestion& q) {
    std::vector<Trait> traits;
    std::copy_if(allTraits.begin(), allTraits.end(), std::back_inserter(traits),
                 [&](Trait trait) { return q.aims[trait].has_value(); });
    return traits;
}

Shares bestShares(const BlendQuestion& q, const std::vector<Trait>& aims) {
    Shares best;
    double least = 0;
    for (const Shares& start : startsOf(limitsOf(q))) {
        Shares found = settledFrom(q, aims, start);
        const double miss = missOf(q, aims, found);
        if (best.empty() || miss < least - 1e-12) {
            best = std::move(found);
            least = miss;
        }
    }
    return best;
}

} // namespace staveline::finishing
