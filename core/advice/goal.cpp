// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/goal.h"

#include <algorithm>
#include <cmath>

namespace staveline::advice {

using tasting::VerdictKind;

namespace {

Aim aimOf(const tasting::TargetWindow& window, const tasting::Verdict& verdict) {
    Aim aim{window.wanted, window.band, false};
    switch (verdict.kind) {
    case VerdictKind::hold:
    case VerdictKind::waitUntil:
        aim.hold = true;
        break;
    case VerdictKind::nudge:
        aim.wanted -= verdict.gap / 2;
        break;
    case VerdictKind::move:
    case VerdictKind::tasteAgain:
    case VerdictKind::faultFirst:
        break;
    }
    return aim;
}

double square(double x) {
    return x * x;
}

/// A share of a kept change that shows after `cycles`, against the settled one.
double reached(double share, std::size_t cycles) {
    return 1 - std::pow(1 - share, static_cast<double>(cycles));
}

double gapOf(const Aim& aim, double score, double alone) {
    const double gap = std::abs(score - aim.wanted);
    return aim.hold ? std::max(gap, std::min(std::abs(alone - aim.wanted), aim.band)) : gap;
}

} // namespace

std::vector<Scores> anchored(const Trajectory& trajectory, const Scores& deviation) {
    std::vector<Scores> draws;
    for (const auto& outcome : trajectory.draws) {
        draws.push_back(outcome.scores);
        for (auto d : allDimensions)
            draws.back()[d] += deviation[d];
    }
    return draws;
}

Goal goalFrom(const AdviceInput& input, Share share, const Trajectory& alone) {
    Goal goal;
    for (auto d : allDimensions) {
        goal.aims[d] = aimOf(input.target.windows[d], input.verdicts[d]);
        goal.deviation[d] = input.combined[d].mean - input.model[d].mean;
    }
    goal.alone = anchored(alone, goal.deviation);
    goal.share = share.of1;
    goal.effortWeight = input.lambda * square(reached(share.of1, goal.alone.size()));
    return goal;
}

double gapCost(const Goal& goal, std::span<const Scores> draws) {
    double sum = 0;
    for (std::size_t h = 0; h < draws.size(); ++h)
        for (auto d : allDimensions)
            sum += square(gapOf(goal.aims[d], draws[h][d], goal.alone[h][d]) / goal.aims[d].band);
    return sum / static_cast<double>(draws.size());
}

double lossCost(const Goal& goal, const Scores& varianceAtNext) {
    double growth = 0;
    for (std::size_t h = 1; h <= goal.alone.size(); ++h)
        growth += square(reached(goal.share, h) / std::max(reached(goal.share, 1), 1e-6));
    double sum = 0;
    for (auto d : allDimensions)
        sum += varianceAtNext[d] / square(goal.aims[d].band);
    return sum * growth / static_cast<double>(goal.alone.size());
}

} // namespace staveline::advice
