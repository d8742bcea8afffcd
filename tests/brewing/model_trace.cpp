// SPDX-License-Identifier: GPL-3.0-or-later
#include "brewing/refill_beer.h"

#include "model_support.h"

#include <cmath>

using namespace staveline;
using namespace staveline::brewing;
using reference::between;
using reference::inputFor;

namespace {

Recipe rampedRye() {
    Recipe recipe = reference::ryeRecipe();
    recipe.path = MashPath::ramp;
    return recipe;
}

} // namespace

TEST_CASE("The trace runs from mash-in to the end in steps of a minute at most", "[brewing][trace]") {
    CHECK_PROPERTY("time axis", [] {
        const Recipe recipe = reference::anyRecipe();
        const MashTrace trace = traceMash(inputFor(recipe));
        double length = 0;
        for (const auto& step : recipe.mash)
            length += step.minutes.min;
        const double rate = recipe.path == MashPath::jump ? 10 : 1;
        length += (recipe.mash.back().temperature.c - recipe.mash.front().temperature.c) / rate;
        RC_ASSERT(trace.minute.front() == 0);
        RC_ASSERT(std::abs(trace.minute.back() - length) < 1e-6);
        for (std::size_t i = 1; i < trace.minute.size(); ++i) {
            const double step = trace.minute[i] - trace.minute[i - 1];
            RC_ASSERT(step > 0 && step < 1 + 1e-6);
        }
    });
}

TEST_CASE("All curves of the trace have a value at every minute", "[brewing][trace]") {
    const MashTrace trace = traceMash(inputFor(rampedRye()));
    for (const auto* curve :
         {&trace.temperature, &trace.fermentable, &trace.dextrin, &trace.ferulic, &trace.betaGlucan})
        CHECK(curve->size() == trace.minute.size());
    // 20 min rest, 21 min of heating, 60 min rest: a point at each end.
    CHECK(trace.minute.size() == 102);
}

TEST_CASE("The temperature curve is the schedule", "[brewing][trace]") {
    const MashTrace trace = traceMash(inputFor(rampedRye()));
    CHECK(trace.temperature[0] == 45);
    CHECK(trace.temperature[20] == 45);
    CHECK(trace.temperature[30] == Approx(55));
    CHECK(trace.temperature[41] == Approx(66));
    CHECK(trace.temperature.back() == 66);
}

TEST_CASE("The trace ends where brew begins", "[brewing][trace]") {
    const BrewInput input = inputFor(rampedRye());
    const MashTrace trace = traceMash(input);
    const RefillBeer beer = brew(input);
    const double extract = trace.fermentable.back() + trace.dextrin.back() + .12;
    CHECK(extract == Approx(beer.conversion).epsilon(3e-4));
    CHECK(trace.fermentable.back() / extract / .8192 == Approx(beer.attenuationLimit).epsilon(3e-4));
    CHECK(trace.betaGlucan.back() == Approx(beer.beer.betaGlucan).epsilon(1e-3));
}

TEST_CASE("Fermentable extract and free ferulic acid only grow in a mash", "[brewing][trace]") {
    CHECK_PROPERTY("monotone curves", [] {
        const MashTrace trace = traceMash(inputFor(reference::anyRecipe(true)));
        for (std::size_t i = 1; i < trace.minute.size(); ++i) {
            RC_ASSERT(trace.fermentable[i] > trace.fermentable[i - 1] - 1e-5);
            RC_ASSERT(trace.ferulic[i] >= trace.ferulic[i - 1]);
            RC_ASSERT(trace.dextrin[i] > -1e-5);
            RC_ASSERT(trace.betaGlucan[i] >= 0);
        }
    });
}

TEST_CASE("Glucan falls in the rest and rises with the heat", "[brewing][trace]") {
    const MashTrace trace = traceMash(inputFor(rampedRye()));
    const auto top = std::max_element(trace.betaGlucan.begin(), trace.betaGlucan.begin() + 20);
    CHECK(trace.betaGlucan[20] < *top);
    CHECK(trace.betaGlucan[101] > 1.5 * trace.betaGlucan[20]);
}
