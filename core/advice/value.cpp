// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/value.h"

#include "advice/adviser.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace staveline::advice {
namespace {

struct Node {
    double at, weight;
};
/// Gauss-Hermite for a standard normal: exact to the ninth power.
constexpr std::array<Node, 5> nodes = {{{-2.8569700138728056, .011257411327720688},
                                        {-1.3556261799742659, .22207592200561266},
                                        {0, 8.0 / 15},
                                        {1.3556261799742659, .22207592200561266},
                                        {2.8569700138728056, .011257411327720688}}};
using AtNodes = std::array<double, nodes.size()>;

/// Loss of a plan in one dimension once the taster has found what each node stands for.
AtNodes lossAfter(const Goal& goal, const Weighed& plan, Dimension d, const OneMore& tasting) {
    const double spread = std::sqrt(tasting.now[d] + tasting.error[d]);
    AtNodes loss{};
    for (std::size_t h = 0; h < plan.draws.size(); ++h) {
        const double shift = tasting.tastes[d] && spread > 0 ? plan.withNow[h][d] / spread : 0;
        const double left = plan.draws[h].variance[d] - shift * shift;
        for (std::size_t k = 0; k < nodes.size(); ++k)
            loss[k] += lossAt(goal, d, plan.draws[h].mean[d] + shift * nodes[k].at, left) /
                       static_cast<double>(plan.draws.size());
    }
    return loss;
}

double costNow(const Goal& goal, const Weighed& plan) {
    return total(lossOf(goal, plan.draws)) + plan.penalty;
}

} // namespace

Worth worthOfTasting(const Goal& goal, std::span<const Weighed> plans, const OneMore& tasting) {
    constexpr double never = std::numeric_limits<double>::infinity();
    Worth worth{never, 0};
    std::vector<PerDimension<AtNodes>> after;
    for (const auto& plan : plans) {
        worth.best = std::min(worth.best, costNow(goal, plan));
        after.emplace_back();
        for (auto d : allDimensions)
            after.back()[d] = lossAfter(goal, plan, d, tasting);
    }
    for (std::size_t i = 0; i < nodes.size(); ++i)
        for (std::size_t j = 0; j < nodes.size(); ++j)
            for (std::size_t k = 0; k < nodes.size(); ++k) {
                double least = never;
                for (std::size_t p = 0; p < plans.size(); ++p)
                    least = std::min(least, after[p][Dimension::acidity][i] + after[p][Dimension::funk][j] +
                                                after[p][Dimension::body][k] + plans[p].penalty);
                worth.after += nodes[i].weight * nodes[j].weight * nodes[k].weight * least;
            }
    return worth;
}

TastingValue valueOfTasting(const AdviceInput& input, const Goal& goal, std::span<const Weighed> plans) {
    OneMore tasting{{}, input.oneMoreTaster};
    for (auto d : allDimensions) {
        tasting.now[d] = input.offsets[d].cov[estimate::Offset::now][estimate::Offset::now];
        tasting.tastes[d] = input.seen[d] && !input.tastedToday[d] && !waits(input, d);
    }
    TastingValue found{worthOfTasting(goal, plans, tasting).value(), {}};
    if (found.value <= constants::advice::worthTasting)
        return found;
    double least = std::numeric_limits<double>::infinity();
    for (auto d : allDimensions) {
        auto without = tasting;
        without.tastes[d] = false;
        const double left = worthOfTasting(goal, plans, without).value();
        if (tasting.tastes[d] && left < least) {
            least = left;
            found.dimension = d;
        }
    }
    return found;
}

} // namespace staveline::advice
