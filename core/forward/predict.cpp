// SPDX-License-Identifier: GPL-3.0-or-later
#include "forward/predict.h"

#include "brewing/gravity.h"
#include "quantity/acid_base.h"

namespace staveline::forward {

using culture::VesselState;

namespace {

culture::AgeConditions conditions(const Plan& plan, Days days, Day from) {
    return {days, plan.temperature, plan.oxygenPerYear, plan.apart, from};
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
    const auto& culture = parameters.culture;
    const VesselState atDraw = age(state, conditions(plan, plan.toThisDraw, plan.from), culture);
    const VesselState filled = refill(atDraw, freshBeer(beer, parameters), plan.refillShare, culture, inoculumOf(beer));
    const VesselState later = age(filled, conditions(plan, plan.interval, after(plan.from, plan.toThisDraw)), culture);
    return {outcomeOf(atDraw, parameters), outcomeOf(later, parameters)};
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
