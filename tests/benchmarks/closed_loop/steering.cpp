// SPDX-License-Identifier: GPL-3.0-or-later
#include "benchmarks/closed_loop/steering.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace staveline::loop {
namespace {

constexpr double deadBand = .5;

/// One step of the lever inside its bounds; false: it is there already.
bool moved(double& lever, double by, double low, double high) {
    const double was = lever;
    lever = std::clamp(lever + by, low, high);
    return lever != was;
}

struct Dial {
    double Handling::*lever;
    std::vector<double> values;
};
std::vector<double> steps(double low, double high, double by) {
    std::vector<double> values;
    for (double v = low; v <= high + 1e-9; v += by)
        values.push_back(v);
    return values;
}
const std::vector<Dial>& dials() {
    static const std::vector<Dial> all = {
        {&Handling::mash, steps(62, 72, 1)},       {&Handling::rest, steps(0, 40, 10)},
        {&Handling::bitterness, steps(0, 25, 5)},  {&Handling::precursor, steps(0, 30, 5)},
        {&Handling::glucan, steps(0, 20, 5)},      {&Handling::sugar, steps(0, 15, 5)},
        {&Handling::gravity, steps(10.5, 14, .5)}, {&Handling::maltotriose, {.1, .75, .95}},
        {&Handling::soured, steps(0, 30, 10)},     {&Handling::draw, steps(20, 60, 10)},
        {&Handling::interval, steps(120, 360, 60)}};
    return all;
}

constexpr int lookedAhead = 4;
constexpr double effort = .004; ///< of a move [squared points]: none is made for nothing

double lossOf(const Occasion& at, const Handling& handling) {
    double sum = 0;
    for (const Scores& scores : drawsAhead(at.vessel, sampledBefore, handling, lookedAhead))
        for (Dimension d : allDimensions)
            sum += (scores[d] - at.vessel.wanted()[d]) * (scores[d] - at.vessel.wanted()[d]) / lookedAhead;
    return sum;
}

} // namespace

Decision RuleOfThumb::decide(const Occasion& at) {
    Handling next = at.inUse;
    const auto tasted = evaluate(at.sitting, tasting::builtInSheet()).dimensions;
    const auto lacks = [&](Dimension d) {
        const double gap = tasted[d] ? at.vessel.wanted()[d] - tasted[d]->mean : 0;
        return std::abs(gap) <= deadBand ? 0 : gap > 0 ? 1 : -1;
    };
    if (const int way = lacks(Dimension::acidity))
        moved(next.mash, 1.5 * way, 62, 72) || moved(next.bitterness, -5 * way, 0, 25) ||
            moved(next.sugar, -5 * way, 0, 15);
    if (const int way = lacks(Dimension::funk))
        moved(next.rest, 10 * way, 0, 40) || moved(next.precursor, 10 * way, 0, 30) ||
            (way < 0 && moved(next.draw, 5, 20, 60));
    if (const int way = lacks(Dimension::body))
        moved(next.glucan, 5 * way, 0, 20) || moved(next.gravity, .5 * way, 10.5, 14);
    return {next};
}

Decision Oracle::decide(const Occasion& at) {
    Handling best = at.inUse;
    double least = lossOf(at, best);
    const auto weigh = [&](const Handling& handling, int moves) {
        const double loss = lossOf(at, handling) + effort * moves;
        if (loss < least) {
            least = loss;
            best = handling;
        }
    };
    for (std::size_t a = 0; a < dials().size(); ++a)
        for (double first : dials()[a].values) {
            Handling one = at.inUse;
            one.*dials()[a].lever = first;
            weigh(one, 1);
            for (std::size_t b = a + 1; b < dials().size(); ++b)
                for (double second : dials()[b].values) {
                    Handling two = one;
                    two.*dials()[b].lever = second;
                    weigh(two, 2);
                }
        }
    return {best};
}

} // namespace staveline::loop
