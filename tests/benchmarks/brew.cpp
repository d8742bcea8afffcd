// SPDX-License-Identifier: GPL-3.0-or-later
// One refill from grist to vessel: the part of `predict` that a changed recipe makes necessary.
#include "support/bench.h"
#include "support/reference_pantry.h"

using namespace staveline;
using namespace staveline::brewing;

namespace {

/// Median of batches, so that a clock tick does not show; the sum keeps the calls from being left out.
void measure(std::string_view name, const Recipe& recipe) {
    constexpr int batch = 50;
    const BrewInput input = reference::inputFor(recipe);
    double sum = 0;
    const auto times = bench::timesMs(200, [&] {
        for (int i = 0; i < batch; ++i)
            sum += brew(input).beer.ethanol;
    });
    bench::print(name, bench::quantile(times, .5) / batch * 1000, "us", times.size() * batch,
                 fmt::format("\"p95\": {:.4g}, \"ethanol\": {:.4f}", bench::quantile(times, .95) / batch * 1000,
                             sum / (batch * 201.0)));
}

Recipe ramped(Recipe recipe) {
    recipe.path = MashPath::ramp;
    return recipe;
}
Recipe fiveSteps() {
    Recipe recipe = ramped(reference::ryeRecipe());
    recipe.mash = {{{45}, {20}}, {{52}, {10}}, {{63}, {40}}, {{72}, {20}}, {{78}, {5}}};
    return recipe;
}

} // namespace

int main() {
    measure("brew single infusion", reference::baseRecipe());
    measure("brew rest and jump", reference::ryeRecipe());
    measure("brew rest and ramp", ramped(reference::ryeRecipe()));
    measure("brew hot mash", reference::hotRecipe());
    measure("brew five steps, ramped", fiveSteps());
}
