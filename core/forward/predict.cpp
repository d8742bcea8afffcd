// SPDX-License-Identifier: GPL-3.0-or-later
#include "forward/predict.h"

#include "brewing/gravity.h"
#include "quantity/acid_base.h"

#include <algorithm>
#include <cmath>

namespace staveline::forward {

using culture::VesselState;

namespace {

culture::AgeConditions conditions(const Plan& plan, Days days) {
    return {days, plan.temperature, plan.oxygenPerYear};
}

/// A refill and the interval after it.
VesselState nextCycle(const VesselState& atDraw, const Composition& fresh, const culture::Inoculum& brought,
                      const Plan& plan, const Parameters& p) {
    return age(refill(atDraw, fresh, plan.refillShare, p.culture, brought), conditions(plan, plan.interval), p.culture);
}

double largestChange(const Scores& a, const Scores& b) {
    double largest = 0;
    for (const Dimension d : allDimensions)
        largest = std::max(largest, std::abs(a[d] - b[d]));
    return largest;
}

} // namespace

Outcome outcomeOf(const VesselState& state, const Parameters& parameters) {
    const Composition& beer = state.beer;
    return {state,          scores(beer, parameters.score), ph(beer),         titratableAcidity(beer),
            beer.alcohol(), brewing::apparentGravity(beer), beer.bitterness()};
}

Composition freshBeer(const brewing::RefillBeer& beer, const Parameters& parameters) {
    if (parameters.beerBuffer == 1)
        return beer.beer;
    const Ph kept = ph(beer.beer);
    Composition fresh = beer.beer;
    fresh.buffer *= parameters.beerBuffer;
    return withPh(fresh, kept);
}

Prediction predict(const Parameters& parameters, const VesselState& state, const brewing::BrewInput& recipe,
                   const Plan& plan) {
    return predict(parameters, state, brew(recipe, parameters.brew), plan);
}

Prediction predict(const Parameters& parameters, const VesselState& state, const brewing::RefillBeer& beer,
                   const Plan& plan) {
    const VesselState atDraw = age(state, conditions(plan, plan.toThisDraw), parameters.culture);
    const VesselState later = nextCycle(atDraw, freshBeer(beer, parameters), inoculumOf(beer), plan, parameters);
    return {outcomeOf(atDraw, parameters), outcomeOf(later, parameters)};
}

Outcome settledOutcome(const Parameters& parameters, const VesselState& start, const brewing::RefillBeer& beer,
                       const Plan& plan, int maxCycles) {
    constexpr double settled = 1e-4; // points
    const Composition fresh = freshBeer(beer, parameters);
    VesselState state = start;
    Scores before = scores(state.beer, parameters.score);
    for (int i = 0; i < maxCycles; ++i) {
        state = nextCycle(state, fresh, inoculumOf(beer), plan, parameters);
        const Scores after = scores(state.beer, parameters.score);
        if (largestChange(before, after) < settled)
            break;
        before = after;
    }
    return outcomeOf(state, parameters);
}

DrawnScores scoresOver(std::span<const Parameters> draws, const VesselState& state, const brewing::BrewInput& recipe,
                       const Plan& plan) {
    DrawnScores out;
    for (const Parameters& p : draws) {
        const Prediction prediction = predict(p, state, recipe, plan);
        out.thisDraw.push_back(prediction.thisDraw.scores);
        out.nextDraw.push_back(prediction.nextDraw.scores);
    }
    return out;
}

} // namespace staveline::forward
